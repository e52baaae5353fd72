import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { bothOf, type Draft } from "#pieces/draft.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import { edgeLength, edgePoint, netUpper } from "#pieces/net-upper.ts";
import type { NetPanel } from "#pieces/panel.ts";
import type { Xy } from "#pieces/piece.ts";
import { cutUpperPanels, liesOver } from "#pieces/upper/allowances.ts";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { contains } from "#plane/inside.ts";
import { area, perimeter, winding } from "#plane/measure.ts";
import type { Outline } from "#plane/outline.ts";
import { toplineEdges } from "#shell/settings.ts";
import { flatPump } from "../support/flat-pump.ts";
import { chosenFrom, cuts, inner, made, named, ofKind, outer, points, quarters, settingsFor, vamp, waist, whole } from "../support/upper-made.ts";

const ringAway = ({ xy }: Outline, [x, y]: Xy): number => {
  const ring = { xy: Float64Array.of(...xy, xy[0]!, xy[1]!) };
  return nearestOn(ring, arcLengths(ring), x, y).distance;
};

describe("each cut has its pieces, a net card beside each", () => {
  test("names, and the sheet each is drawn in", () => {
    const names = (panels: readonly NetPanel[]) => made(panels).drafts.map((d) => [d.name, d.ground]);
    expect(names([whole])).toEqual([["upper, net", "upper"], ["upper", "upper"]]);
    expect(names(waist)).toEqual([["upper, net", "whole"], ["upper", "whole"]]);
    expect(names(quarters)).toEqual(["vamp", "inner quarter", "outer quarter"].flatMap((n) => [[`${n}, net`, n], [n, n]]));
  });

  test("the whole-cut with all choices as usual is what it always was: area, length and first corner to the last digits", () => {
    // Worked out by the way of drawing it that this one took the place of.
    const smooth = flatPump("right", 0);
    const panel = wholePanel(netUpper(smooth.last, smooth.lines, smooth.flat));
    for (const [edge, size, round, count] of [["taped", 34850.541709997444, 1209.661821714521, 1510], ["raw", 32945.804205360284, 1210.6282338280075, 1494]] as const) {
      const { outline } = named(made([panel], { edge }).drafts, "upper");
      expect(area(outline)).toBeCloseTo(size, 6);
      expect(perimeter(outline)).toBeCloseTo(round, 8);
      expect(points(outline)).toHaveLength(count);
      expect(points(outline)[0]![0]).toBeCloseTo(-230.706377468913, 9);
      expect(points(outline)[0]![1]).toBeCloseTo(-161.96743918441186, 9);
    }
  });

  test("whatever is chosen, no outline crosses itself, marks lie on the piece, and labels inside it", () => {
    const tops = [["closed", "mitre"], ["closed", "notch"], ["closed", "dog-tail"], ["butted", "mitre"]] as const;
    let turn = 0;
    for (const [cut, panels] of Object.entries(cuts)) {
      for (const edge of toplineEdges) {
        for (const [seam, lapFoldMm] of [["closed", 0], ["lapped", 0], ["lapped", 4], ["butted", 0]] as const) {
          // Seven steps on, so that each top meets each edge and each seam.
          const [backSeam, backTop] = tops[(turn += 7) % 4]!;
          const what = [cut, edge, seam, lapFoldMm, backSeam, backTop].join(", ");
          const { drafts, findings } = made(panels, { edge, seam, backSeam, backTop }, { lapFoldMm });
          expect(findings.filter((f) => f.code !== "dog-tail-has-no-place"), what).toEqual([]);
          for (const d of drafts) {
            expect(selfCrossing(d.outline), `${what}: ${d.name}`).toBeUndefined();
            expect(winding(d.outline)).toBe(1);
            for (const m of d.marks) {
              const on = m.kind === "line" ? points(m.line) : m.kind === "arrow" ? [m.from, m.to] : [m.at];
              expect(on.filter((p) => !contains(d.outline, ...p) && ringAway(d.outline, p) > 0.06), `${what}: ${d.name}, ${m.name}`).toEqual([]);
            }
            for (const label of d.labels) expect(contains(d.outline, ...label.at)).toBe(true);
          }
        }
      }
    }
  }, 30_000);

  test("twins are mirrors, and the arrow says the direction", () => {
    for (const draft of made(quarters).drafts) {
      const [right, left] = bothOf(draft, "right");
      expect([left.areaMm2, left.perimeterMm]).toEqual([right.areaMm2, right.perimeterMm]);
      const [arrow] = ofKind(draft, "arrow");
      const angle = (Math.atan2(arrow!.to[1] - arrow!.from[1], arrow!.to[0] - arrow!.from[0]) * 180) / Math.PI;
      expect(Math.abs(((angle - right.directionDeg) % 180) + 0)).toBeLessThan(1e-9);
      // Tight along the topline (common practice, no source): on a quarter within 15 degrees of its chord.
      const top = [vamp, inner, outer].find((p) => p.name === draft.ground && !p.centre)?.edges.find((e) => e.role === "topline");
      if (!top) continue;
      const [a, b] = [edgePoint(top, 0), edgePoint(top, edgeLength(top))];
      const chord = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
      expect(Math.abs(((((chord - right.directionDeg) % 180) + 270) % 180) - 90)).toBeLessThan(15);
    }
  });

  test("what a hand needs stands on each", () => {
    const names = (draft: Draft) => draft.marks.map((m) => m.name);
    const { drafts } = made(quarters);
    expect(names(named(drafts, "vamp"))).toEqual(expect.arrayContaining(["centre line", "toe centre", "throat", "joint line", "joint, inside", "joint, outside", "inner side", "least stretch", "feather line", "fold line of the topline", "side seam, inside", "side seam, outside"]));
    expect(names(named(drafts, "inner quarter"))).toEqual(expect.arrayContaining(["inner side", "back point, inside", "seat, inside", "height at 1/4, inside", "height at 1/2, inside", "least stretch", "back seam, inside", "side seam, inside"]));
    expect(names(named(drafts, "outer quarter"))).toEqual(expect.arrayContaining(["back point, outside", "seat, outside", "height at 1/2, outside", "back seam, outside"]));
    expect(names(named(drafts, "outer quarter"))).not.toContain("inner side");
    expect(names(named(made(waist).drafts, "upper"))).toEqual(expect.arrayContaining(["centre line", "joint line", "inner side", "seat", "back point", "inner seam"]));
    expect(made(waist).drafts.flatMap((d) => names(d)).filter((n) => /medial|lateral|back seam|waist seam/.test(n))).toEqual([]);
  });
});

describe("lasting margin over several panels", () => {
  test("both banks of a seam have one width where they meet, and the zones are those of the whole", () => {
    const chosen = chosenFrom();
    const settings = settingsFor(chosen, { lastingToeMm: 21, lastingToeSidesMm: 17, lastingForepartMm: 18, lastingOuterWaistMm: 16, lastingInnerWaistMm: 20, lastingHeelMm: 19 });
    const parted = cutUpperPanels(quarters, settings, chosen);
    const one = cutUpperPanels([whole], settings, chosen);
    const length = edgeLength(vamp.edges[0]!);
    expect(parted.margin(0, 0)(length)).toBeCloseTo(parted.margin(1, 0)(0), 9);
    expect(parted.margin(0, 0)(0)).toBeCloseTo(parted.margin(2, 0)(edgeLength(outer.edges[0]!)), 9);
    for (const place of whole.places.filter((p) => p.edge === 0)) {
      const k = quarters.findIndex((panel) => panel.places.some((p) => p.name === place.name && p.half === place.half));
      const own = quarters[k]!.places.find((p) => p.name === place.name && p.half === place.half)!;
      expect(parted.margin(k, 0)(own.s), `${place.name} ${place.half ?? ""}`).toBeCloseTo(one.margin(0, 0)(place.s), 6);
    }
    const opened = cutUpperPanels(waist, settings, chosen);
    for (const place of waist[0]!.places.filter((p) => p.edge === 0)) {
      const same = whole.places.find((p) => p.name === place.name && p.half === place.half)!;
      expect(opened.margin(0, 0)(place.s), `${place.name} ${place.half ?? ""}`).toBeCloseTo(one.margin(0, 0)(same.s), 6);
    }
  });
});

test("a notch's mouth lies on the cutting line also where a wavering margin was faired", () => {
  const wild = { lastingToeMm: 28, lastingToeSidesMm: 12, lastingForepartMm: 28, lastingInnerWaistMm: 12, lastingOuterWaistMm: 12, lastingHeelMm: 26 };
  const chosen = chosenFrom();
  const { margin } = cutUpperPanels([whole], settingsFor(chosen, wild), chosen);
  const upper = named(made([whole], {}, wild).drafts, "upper");
  const feather = whole.edges[0]!;
  const off = points(upper.outline).map((p) => nearestOn(feather.line, feather.arc, ...p)).filter(({ s }) => s > 20 && s < edgeLength(feather) - 20).filter(({ distance }) => distance > 8);
  // Guard: it was faired indeed.
  expect(Math.max(...off.map(({ s, distance }) => Math.abs(distance - margin(0, 0)(s))))).toBeGreaterThan(0.2);
  const notches = ofKind(upper, "notch").filter((m) => /inner side|joint|toe/.test(m.name) && !/height|lowest/.test(m.name));
  expect(notches.map((m) => m.name).toSorted()).toEqual(["inner side", "joint, inside", "joint, outside", "toe centre"]);
  for (const m of notches) expect(ringAway(upper.outline, m.at), m.name).toBeLessThan(1e-6);
});

describe("seams", () => {
  const sides = (panel: NetPanel) => panel.edges.flatMap((e, k) => (e.role === "side" || e.role === "inner waist" ? [k] : []));

  test("a lap reaches under by its width all along, and its line lies where the edge over it is turned or cut", () => {
    for (const lapFoldMm of [0, 4.5]) {
      const chosen = chosenFrom({ seam: "lapped" });
      const { panels } = cutUpperPanels(quarters, settingsFor(chosen, { lapUnderMm: 9, lapFoldMm }), chosen);
      for (const half of ["medial", "lateral"] as const) {
        const over = panels[0]!.edges.find((e) => e.net.role === "side" && e.net.half === half)!;
        const under = panels[half === "medial" ? 1 : 2]!.edges.find((e) => e.net.role === "side")!;
        expect(over.finish).toBe(lapFoldMm > 0 ? "fold" : "raw");
        expect(under.finish).toBe("lap");
        // The panels were cut off one whole, so that laid together they share its coordinates.
        const net = under.net.line;
        const inside = points(under.cut).filter((p) => nearestOn(net, arcLengths(net), ...p).s > 12 && nearestOn(net, arcLengths(net), ...p).s < edgeLength(under.net) - 12);
        expect(inside.length).toBeGreaterThan(3);
        for (const p of inside) {
          expect(nearestOn(net, arcLengths(net), ...p).distance).toBeCloseTo(9, 9);
          expect(contains(panels[0]!.outline, ...p)).toBe(true);
        }
        for (const [x, y] of points(over.net.line)) expect(nearestOn(under.line, arcLengths(under.line), x, y).distance).toBeLessThan(1e-9);
        const folded = lapFoldMm > 0 ? over.line : over.cut;
        for (const [x, y] of points(over.net.line)) expect(nearestOn(folded, arcLengths(folded), x, y).distance).toBeLessThan(1e-9);
      }
    }
  });

  test("the bank towards the toe lies over: the vamp over the quarters, the front of an inner seam over its back (common practice, no source)", () => {
    expect([vamp, inner, outer].map((p) => sides(p).map((k) => liesOver(p, k)))).toEqual([[true, true], [false], [false]]);
    const panel = waist[0]!;
    expect(sides(panel).map((k) => [k, liesOver(panel, k)])).toEqual([[1, true], [3, false]]);
  });

  test.each(["closed", "lapped", "butted"] as const)("marks of a %s seam meet: one at a third, two at two thirds from the feather line on both banks", (seam) => {
    const { drafts } = made(quarters, { seam });
    for (const [half, word] of [["medial", "inside"], ["lateral", "outside"]] as const) {
      const along = (panel: NetPanel): readonly number[] => {
        const bank = panel.edges.find((e) => e.role === "side" && e.half === half)!;
        const upward = panel.edges[(panel.edges.indexOf(bank) + panel.edges.length - 1) % panel.edges.length]!.role === "feather";
        const draft = named(drafts, panel.name);
        const at = [
          ...ofKind(draft, "notch").filter((m) => m.name === `side seam, ${word}`).map((m) => m.at),
          ...ofKind(draft, "line").filter((m) => m.use === "place" && m.name === `side seam, ${word}`).map((m) => points(m.line)[0]!),
        ];
        return at.map(([x, y]) => nearestOn(bank.line, bank.arc, x, y).s).map((s) => (upward ? s : edgeLength(bank) - s)).toSorted((a, b) => a - b);
      };
      const [over, under] = [along(vamp), along(half === "medial" ? inner : outer)];
      const length = edgeLength(vamp.edges.find((e) => e.role === "side" && e.half === half)!);
      const wanted = [length / 3, (2 * length) / 3 - 2, (2 * length) / 3 + 2];
      for (const found of [over, under]) {
        expect(found).toHaveLength(3);
        for (const [k, s] of found.entries()) expect(Math.abs(s - wanted[k]!)).toBeLessThan(1e-6);
      }
    }
  });

  test("an edge that stays in sight is not notched, nor is a raw topline", () => {
    const { drafts } = made(quarters, { seam: "lapped", edge: "raw" });
    const notches = ofKind(named(drafts, "vamp"), "notch").map((m) => m.name);
    expect(notches.filter((n) => /seam|throat|lowest|height/.test(n))).toEqual([]);
    // Short lines stand in their stead, inward from the edge.
    for (const edge of ["raw", "bound", "wrapped"] as const) {
      const all = made([whole], { edge }).drafts.find((d) => !d.net)!;
      const ticks = ofKind(all, "line").filter((m) => m.as === "notch");
      expect(ticks.map((m) => m.name)).toEqual(expect.arrayContaining(["throat", "lowest, inside", "lowest, outside", "height at 1/4, inside", "height at 1/2, outside", "height at 3/4, inside"]));
      const [top] = whole.edges.filter((e) => e.role === "topline");
      for (const { line } of ticks) expect(points(line).map((p) => Number(nearestOn(top!.line, top!.arc, ...p).distance.toFixed(1)))).toEqual([0, 4]);
    }
    expect(ofKind(named(drafts, "inner quarter"), "notch").filter((m) => m.name === "side seam, inside")).toHaveLength(3);
  });

  test("no notch reaches the stitch line of a closed seam or the fold line", () => {
    for (const d of made(quarters, {}, { toplineFoldMm: 3, seamMm: 1 }).drafts.filter((x) => !x.net)) {
      for (const line of ofKind(d, "line").filter((m) => m.use === "fold" || (m.use === "stitch" && m.name.startsWith("side")))) {
        for (const m of ofKind(d, "notch")) expect(nearestOn(line.line, arcLengths(line.line), ...m.toward).distance).toBeGreaterThan(0.4);
      }
    }
  });

  test("the dog-tail stands on the outer half and points to the inside (handbook 4.2: 10–12 × 8)", () => {
    const plain = made(quarters);
    const under = made(quarters, { backTop: "dog-tail", backStrip: true });
    expect(under.drafts.flatMap((d) => d.marks.filter((m) => /dog-tail/.test(m.name)))).toEqual([]);
    expect(under.findings.map(explain)).toEqual(["There is no dog-tail: the back strip lies over the top of the seam and takes its work. Your choice is kept."]);
    const tailed = made(quarters, { backTop: "dog-tail" });
    expect(area(named(tailed.drafts, "inner quarter").outline)).toBe(area(named(plain.drafts, "inner quarter").outline));
    const grown = area(named(tailed.drafts, "outer quarter").outline) - area(named(plain.drafts, "outer quarter").outline);
    // Tongue with its fold, less what the seam's allowance had beside it.
    expect(grown).toBeGreaterThan(11 * 8);
    expect(grown).toBeLessThan(12 * (8 + 4.5));
    expect(ofKind(named(tailed.drafts, "outer quarter"), "notch").map((m) => m.name)).toContain("snip below the dog-tail");
    // Its place on the inner half: as long and as wide, on the side of the piece.
    const places = tailed.drafts.flatMap((d) => ofKind(d, "line").filter((m) => m.name === "dog-tail lies here").map((m) => [d.name, m.line] as const));
    expect(places.map(([name]) => name)).toEqual(["inner quarter"]);
    const [low, far, top] = points(places[0]![1]);
    expect(Math.hypot(far![0] - low![0], far![1] - low![1])).toBeCloseTo(11, 1);
    expect(Math.hypot(far![0] - top![0], far![1] - top![1])).toBeCloseTo(8, 9);
    expect(contains(named(tailed.drafts, "inner quarter, net").outline, ...far!)).toBe(true);
  });
});
