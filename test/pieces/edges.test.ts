import { describe, expect, test } from "vitest";
import { usualCorner } from "#pieces/edges/corner-kind.ts";
import { cutPanel, type CutPanel } from "#pieces/edges/cut-panel.ts";
import { cutNet, evenAllowance, finishes, type Allowance } from "#pieces/edges/allowance.ts";
import { edgeOf } from "#pieces/net-upper.ts";
import type { EdgeRole, NetEdge, NetPanel } from "#pieces/panel.ts";
import type { Xy } from "#pieces/piece.ts";
import { arcLengths, joined, nearestOn } from "#plane/along.ts";
import { contains } from "#plane/inside.ts";
import { reflect } from "#plane/join.ts";
import { area, lengthOf, perimeter } from "#plane/measure.ts";
import type { Polyline } from "#plane/outline.ts";

const straight = (a: Xy, b: Xy, n = 20): Polyline => ({ xy: Float64Array.from(Array.from({ length: n + 1 }, (_, i) => [a[0] + ((b[0] - a[0]) * i) / n, a[1] + ((b[1] - a[1]) * i) / n]).flat()) });
const arc = ([cx, cy]: Xy, r: number, from: number, to: number, n = 400): Polyline => ({ xy: Float64Array.from(Array.from({ length: n + 1 }, (_, i) => [cx + r * Math.cos(from + ((to - from) * i) / n), cy + r * Math.sin(from + ((to - from) * i) / n)]).flat()) });
const edge = (line: Polyline, role: EdgeRole = "side"): NetEdge => ({ ...edgeOf(line), role });
const panel = (...edges: readonly NetEdge[]): NetPanel => ({ name: "vamp", edges, places: [] });

/** A rectangle of four edges from the origin, counter-clockwise from its lower edge. */
const rectangle = (a: number, b: number): NetPanel =>
  panel(edge(straight([0, 0], [a, 0])), edge(straight([a, 0], [a, b])), edge(straight([a, b], [0, b])), edge(straight([0, b], [0, 0])));

/** A rectangle grown by a radius, its four edges meeting amid its straight sides; shared data, checks.md PL-03 for 100 × 60 and 5. */
function rounded(a: number, b: number, r: number): NetPanel {
  const middles: readonly Xy[] = [[a / 2, -r], [a + r, b / 2], [a / 2, b + r], [-r, b / 2]];
  const centres: readonly Xy[] = [[a, 0], [a, b], [0, b], [0, 0]];
  return panel(...centres.map((centre, k) => {
    const turn = arc(centre, r, ((k - 1) * Math.PI) / 2, (k * Math.PI) / 2);
    const start: Xy = [turn.xy[0]!, turn.xy[1]!];
    const end: Xy = [turn.xy[turn.xy.length - 2]!, turn.xy[turn.xy.length - 1]!];
    return edge(joined([straight(middles[k]!, start), turn, straight(end, middles[(k + 1) % 4]!)]));
  }));
}

const all = ({ edges }: NetPanel, make: (e: NetEdge) => Allowance): readonly Allowance[] => edges.map(make);
const grown = (of: NetPanel, mm: number): CutPanel => cutPanel(of, all(of, (e) => evenAllowance(e, "trim", mm)));

describe("allowances are exact offsets", () => {
  test("mitred corners: a rectangle of 100 × 60 grown by 12 has 124 × 84 (checks.md PL-04)", () => {
    expect(Math.abs(area(grown(rectangle(100, 60), 12).outline) - 10416)).toBeLessThan(1e-9);
    expect(Math.abs(perimeter(grown(rectangle(100, 60), 12).outline) - 416)).toBeLessThan(1e-9);
  });

  test("Steiner's formula, from the shape of PL-03 to that of PL-02: A + P·d + πd² and P + 2πd", () => {
    const shape = rounded(100, 60, 5);
    const [small, large] = [grown(shape, 0), grown(shape, 7)];
    for (const [cut, wantedArea, wantedLength] of [[small, 7678.539816, 351.4159265], [large, 10292.38934, 395.3982237]] as const) {
      expect(Math.abs(area(cut.outline) / wantedArea - 1)).toBeLessThan(2e-4);
      expect(Math.abs(perimeter(cut.outline) / wantedLength - 1)).toBeLessThan(2e-4);
    }
    // Of the polygon itself it holds closer than of the round shape that it stands for.
    const [a0, p0] = [area(small.outline), perimeter(small.outline)];
    expect(Math.abs(area(large.outline) - (a0 + p0 * 7 + Math.PI * 49))).toBeLessThan(0.01);
  });

  test("an open arc of radius 80 over 90°, moved by 12 to either side (PL-05)", () => {
    const slice = panel(edge(arc([0, 0], 80, 0, Math.PI / 2, 1500)), edge(straight([0, 80], [0, 0])), edge(straight([0, 0], [80, 0])));
    for (const [mm, wanted] of [[12, 144.5133], [-12, 106.8142]] as const) {
      const cut = cutPanel(slice, [evenAllowance(slice.edges[0]!, "trim", mm), cutNet(slice.edges[1]!), cutNet(slice.edges[2]!)]);
      expect(Math.abs(lengthOf(cut.edges[0]!.cut) - wanted)).toBeLessThan(1e-4);
    }
  });

  test("a closed way round grows by 2π times what lies beneath (PL-06)", () => {
    const shape = rounded(100, 60, 5);
    const inner = perimeter(grown(shape, 0).outline);
    for (const [t, wanted] of [[1, 6.2832], [1.2, 7.5398], [1.3, 8.1681], [1.5, 9.4248], [2.2, 13.823]] as const) {
      expect(Math.abs(perimeter(grown(shape, t).outline) - inner - wanted)).toBeLessThan(1e-4);
    }
  });

  test("nothing added leaves the net bit for bit, whatever the finish", () => {
    const shape = rounded(100, 60, 5);
    for (const finish of finishes.filter((f) => f !== "fold" && f !== "lasting")) {
      const cut = cutPanel(shape, all(shape, (e) => evenAllowance(e, finish, 0)));
      expect(cut.outline.xy).toEqual(cutPanel(shape, all(shape, (e) => cutNet(e))).outline.xy);
    }
  });
});

/** A piece with its topline on y = 50 and a back edge on its left that comes up to it at a slant or in a bow; the fold is edge 2. */
function withBack(back: Polyline): NetPanel {
  const top: Xy = [back.xy[0]!, back.xy[1]!];
  const foot: Xy = [back.xy[back.xy.length - 2]!, back.xy[back.xy.length - 1]!];
  return panel(edge(straight(foot, [100, 0]), "feather"), edge(straight([100, 0], [100, 50])), edge(straight([100, 50], top), "topline"), edge(back, "back"));
}
const slanted = withBack(straight([-8, 50], [6, 0]));
const bowed = withBack(arc([60, 25], Math.hypot(60, 25), Math.PI - Math.atan2(25, 60), Math.PI + Math.atan2(25, 60), 60));
const allowed = (of: NetPanel, finish: "seam" | "lap", mm: number): readonly Allowance[] => [cutNet(of.edges[0]!), cutNet(of.edges[1]!), evenAllowance(of.edges[2]!, "fold", 4.5), evenAllowance(of.edges[3]!, finish, mm)];
const points = ({ xy }: { readonly xy: Float64Array }): readonly Xy[] => Array.from({ length: xy.length / 2 }, (_, i): Xy => [xy[2 * i]!, xy[2 * i + 1]!]);
const away = (line: Polyline, [x, y]: Xy): number => nearestOn(line, arcLengths(line), x, y).distance;

describe("seam and fold: the fold comes down on the seam", () => {
  test.each([["slanted", "seam", 1.5], ["bowed", "seam", 1.5], ["slanted", "lap", 8], ["bowed", "lap", 8]] as const)("%s, %s", (shape, finish, mm) => {
    const of = shape === "slanted" ? slanted : bowed;
    const cut = cutPanel(of, allowed(of, finish, mm));
    const seam = cut.edges[3]!;
    const beyond = points(seam.cut).filter(([, y]) => y > 50 + 1e-9);
    expect(beyond.length).toBeGreaterThan(0);
    // Mirrored by hand in the fold line y = 50, each lies on the cutting edge below it.
    for (const [x, y] of beyond) expect(away(seam.cut, [x, 100 - y])).toBeLessThan(1e-9);
    expect(Math.max(...beyond.map(([, y]) => y))).toBeCloseTo(54.5, 9);
    // The stitch or lap line is mirrored as well, the fold line ends on the cutting edge.
    for (const [x, y] of points(seam.line).filter(([, v]) => v > 50 + 1e-9)) expect(away(seam.line, [x, 100 - y])).toBeLessThan(1e-9);
    const end = points(cut.edges[2]!.line).at(-1)!;
    expect(end[1]).toBeCloseTo(50, 9);
    expect(away(seam.cut, end)).toBeLessThan(1e-9);
    // Where lines meet is the net corner.
    expect(Math.hypot(cut.corners[2]![0] - of.edges[3]!.line.xy[0]!, cut.corners[2]![1] - 50)).toBeLessThan(1e-9);
  });

  test("by hand: a back at a slant of 14 in 50 with 1.5 mm, fold 4.5", () => {
    const cut = cutPanel(slanted, allowed(slanted, "seam", 1.5));
    const out = 1.5 * Math.hypot(14, 50) / 50;
    const tip = points(cut.edges[2]!.cut).at(-1)!;
    expect(tip[0]).toBeCloseTo(-8 - out + (4.5 * 14) / 50, 9);
    expect(tip[1]).toBeCloseTo(54.5, 9);
  });

  test("snipped: nothing of the fold lies over the seam, and it is cut down to the fold line there", () => {
    const cut = cutPanel(slanted, allowed(slanted, "seam", 1.5), (k) => (k === 2 ? { kind: "snip" } : undefined));
    const ring = points(cut.outline);
    for (const [x, y] of ring.filter(([, v]) => v > 50 + 1e-9 && v < 54.5 - 1e-9)) {
      const [fx, fy] = reflect([x, y], [0, 50], [1, 0]);
      expect(contains({ xy: Float64Array.from(slanted.edges.flatMap((e) => Array.from(e.line.xy))) }, fx, fy)).toBe(true);
    }
    // What is missing beside the mirrored corner: the seam's allowance over the fold, a strip as wide as it lies along the topline.
    const mirrored = cutPanel(slanted, allowed(slanted, "seam", 1.5));
    expect(area(mirrored.outline) - area(cut.outline)).toBeCloseTo((4.5 * 1.5 * Math.hypot(14, 50)) / 50, 9);
    expect(ring.some(([x, y]) => Math.hypot(x + 8, y - 50) < 1e-9)).toBe(true);
  });

  test("walked the other way round the corner is the same", () => {
    const flipped = panel(...slanted.edges.toReversed().map((e): NetEdge => ({ ...e, ...edgeOf({ xy: Float64Array.from(points(e.line).toReversed().flatMap(([x, y]) => [-x, y])) }) })));
    const mirror = cutPanel(flipped, allowed(slanted, "seam", 1.5).toReversed());
    expect(area(mirror.outline)).toBeCloseTo(area(cutPanel(slanted, allowed(slanted, "seam", 1.5)).outline), 9);
  });
});

test("two folds meet in a mitre: by hand each loses half the square of its width", () => {
  const of = rectangle(100, 60);
  const [low, right, top, left] = of.edges as readonly [NetEdge, NetEdge, NetEdge, NetEdge];
  const cut = cutPanel(of, [evenAllowance(low, "fold", 4), evenAllowance(right, "fold", 6), cutNet(top), cutNet(left)]);
  const wanted = 6000 + 4 * 100 - 8 + 6 * 60 - 18;
  expect(Math.abs(area(cut.outline) - wanted)).toBeLessThan(1e-9);
  // The net corner lies on the outline, so that both turn down without a tuck.
  expect(points(cut.outline).some(([x, y]) => Math.hypot(x - 100, y) < 1e-9)).toBe(true);
});

test("a dog-tail reaches 11 mm beyond the stitch line and 8 mm down from the fold line, and keeps the fold", () => {
  const square = withBack(straight([0, 50], [0, 0]));
  const tail = { kind: "dog-tail", longMm: 11, wideMm: 8 } as const;
  const cut = cutPanel(square, allowed(square, "seam", 1.5), (k) => (k === 2 ? tail : undefined));
  const tongue = points(cut.outline).filter(([x]) => x < -1.5 - 1e-9);
  expect(Math.min(...tongue.map(([x]) => x))).toBeCloseTo(-11, 9);
  expect([Math.min(...tongue.map(([, y]) => y)), Math.max(...tongue.map(([, y]) => y))].map((v) => Math.round(v * 1e9) / 1e9)).toEqual([42, 54.5]);
  // By hand: the tongue beyond the net, its lower corner rounded by 3 mm, less the seam's allowance that ends below it.
  const plain = 100 * 50 + 4.5 * 100 + 1.5 * 42;
  expect(Math.abs(area(cut.outline) - (plain + 11 * 12.5 - (1 - Math.PI / 4) * 9))).toBeLessThan(0.06);
  expect(cut.snips).toHaveLength(1);
  expect([cut.snips[0]!.at, cut.snips[0]!.toward].map(([x, y]) => [x, y].map((v) => Math.round(v * 1e9) / 1e9))).toEqual([[-1.5, 42], [0, 42]]);
});

test("what meets decides the corner: lasting runs on, folds mirror what they meet, two folds mitre", () => {
  for (const a of finishes) {
    for (const b of finishes) {
      const wanted = a === "lasting" || b === "lasting" || (a !== "fold" && b !== "fold") ? "run on" : a === b ? "mitre" : "mirror";
      expect(usualCorner(a, b).kind).toBe(wanted);
    }
  }
});

test("the skived band lies inside the cutting line by its width and ends on the outline", () => {
  const cut = cutPanel(slanted, [cutNet(slanted.edges[0]!), cutNet(slanted.edges[1]!), evenAllowance(slanted.edges[2]!, "fold", 4.5, 10.5), evenAllowance(slanted.edges[3]!, "lap", 8, 9)]);
  const fold = points(cut.edges[2]!.skive!);
  for (const [, y] of fold) expect(y).toBeCloseTo(54.5 - 10.5, 9);
  const ring = { xy: Float64Array.of(...cut.outline.xy, cut.outline.xy[0]!, cut.outline.xy[1]!) };
  for (const end of [fold[0]!, fold.at(-1)!, points(cut.edges[3]!.skive!)[0]!, points(cut.edges[3]!.skive!).at(-1)!]) expect(away(ring, end)).toBeLessThan(1e-9);
});
