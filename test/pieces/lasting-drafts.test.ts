import { describe, expect, test } from "vitest";
import { Boxed } from "#pieces/boxed.ts";
import { usualParts } from "#pieces/choices.ts";
import { blockOutline } from "#pieces/labels.ts";
import { lastingDrafts } from "#pieces/lasting-drafts.ts";
import { transferPricks } from "#pieces/pricks.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import { netUpper } from "#pieces/net-upper.ts";
import type { Mark } from "#pieces/piece.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { lengthOf } from "#plane/measure.ts";
import { segmentsMeet } from "#plane/crossing.ts";
import { flatPump } from "../support/flat-pump.ts";
import { quartersOf } from "../support/split-panels.ts";

const pump = flatPump("right");
const net = netUpper(pump.last, pump.lines, pump.flat);
const whole = wholePanel(net);
const quarters = quartersOf(net, { feather: net.places.jointMedial + 40, topline: net.places.throat - 45 }, { feather: net.places.jointLateral - 20, topline: net.places.throat + 55 });
const settings = pieceSettingsFrom(pieceRulesFor(pump.last));

const drawn = [[whole], quarters].flatMap((panels) => {
  const { drafts } = upperPieces({ panels, settings, chosen: { ...usualParts, edge: "taped" }, labels: { title: "Practice pair", size: "38" } });
  return panels.map((panel) => {
    const piece = drafts.find((d) => d.ground === panel.name && !d.net)!;
    // What a piece is given for its drafts before they are drawn on it.
    const marks = piece.marks.filter((m) => !(m.kind === "line" && m.as === "grip"));
    return { panel, piece, marks, grips: lastingDrafts(panel, piece.outline, marks) };
  });
});
const numbersOf = (k: number): readonly number[] => drawn[k]!.grips.labels.map((l) => Number(l.lines[0]!.text));

describe("drafts of lasting", () => {
  // A shoemaking textbook's order: toe, its corners, back seam, seat sides, joints; the waists are closed after them.
  test("in the maker's order: toe, corners, back at both edges of its seam, seat sides, joints, waists", () => {
    expect(numbersOf(0)).toEqual([1, 2, 3, 4, 4, 5, 6, 7, 8, 9, 10]);
    expect(drawn[0]!.grips.marks.map((m) => m.name)).toEqual([
      "draft 1, toe centre", "draft 2, toe corner, inside", "draft 3, toe corner, outside", "draft 4, back", "draft 4, back",
      "draft 5, seat side, inside", "draft 6, seat side, outside", "draft 7, joint, inside", "draft 8, joint, outside", "draft 9, waist, inside", "draft 10, waist, outside",
    ]);
  });

  test("vamp and quarters share them: none is lost, none is drawn twice but the back's", () => {
    expect([1, 2, 3].flatMap(numbersOf).sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 4, 5, 6, 7, 8, 9, 10]);
  });

  test("inside is inside, and each grip lies along the feather line, half-way out in the margin", () => {
    for (const { panel, piece, grips } of drawn) {
      const cut = new Boxed(piece.outline);
      const feather = panel.edges.find((e) => e.role === "feather")!;
      for (const mark of grips.marks) {
        if (mark.kind !== "line") throw new Error("a line expected");
        const [ax, ay, bx, by] = mark.line.xy;
        if (mark.name.endsWith("inside")) expect(ay! + by!).toBeGreaterThan(0);
        if (mark.name.endsWith("outside")) expect(ay! + by!).toBeLessThan(0);
        expect(lengthOf(mark.line)).toBeCloseTo(9, 9);
        const [x, y] = [(ax! + bx!) / 2, (ay! + by!) / 2];
        const foot = nearestOn(feather.line, feather.arc, x, y);
        // Beside a seam the piece's nearest edge is the seam's.
        if (Math.min(foot.s, feather.arc[feather.arc.length - 1]! - foot.s) < 20) continue;
        const out = cut.nearest(x, y).mm;
        expect(Math.abs(out - foot.distance)).toBeLessThan(1);
        expect(out).toBeGreaterThan(7);
      }
    }
  });

  test("numbers stand in the piece, clear of every line and of each other", () => {
    for (const { piece, marks, grips } of drawn) {
      const boxes = grips.labels.map(blockOutline);
      const cut = new Boxed(piece.outline);
      const lines = [...marks, ...grips.marks].flatMap((m: Mark) => (m.kind === "line" ? [m.line.xy] : m.kind === "notch" ? [Float64Array.of(...m.at, ...m.toward)] : []));
      boxes.forEach(({ xy }, k) => {
        for (let i = 0; i < xy.length; i += 2) expect(cut.holds(xy[i]!, xy[i + 1]!)).toBe(true);
        for (const other of [...lines, ...boxes.filter((_, j) => j !== k).map((b) => b.xy)]) expect(crosses(xy, other)).toBe(false);
      });
    }
  });

  test("where the margin is hardly there no grip is drawn", () => {
    expect(lastingDrafts(whole, { xy: Float64Array.of(...ringOf(whole)) }, [])).toEqual({ marks: [], labels: [] });
  });
});

describe("pricks of the awl", () => {
  test("both ends of every fold line and its crossings with the seams, each once, and none beside one that is there", () => {
    for (const { marks, panel } of drawn) {
      const pricks = transferPricks(marks);
      const seams = marks.flatMap((m) => (m.kind === "line" && m.use === "stitch" && m.name.startsWith("side seam") ? [m.line] : []));
      const onSeam = pricks.filter((m) => m.kind === "prick" && seams.some((line) => nearestOn(line, arcLengths(line), ...m.at).distance < 1e-6));
      if (panel.name === "vamp") expect(onSeam.length).toBeGreaterThanOrEqual(2);
      for (const { name } of pricks) expect(marks.map((m) => m.name)).toContain(name);
      const all = [...marks, ...pricks].flatMap((m) => (m.kind === "prick" ? [m.at] : []));
      const added = pricks.flatMap((m) => (m.kind === "prick" ? [m.at] : []));
      for (const a of added) expect(all.filter((b) => Math.hypot(a[0] - b[0], a[1] - b[1]) < 2.99)).toEqual([a]);
      for (const fold of marks) {
        if (fold.kind !== "line" || fold.use !== "fold") continue;
        const { xy } = fold.line;
        for (const end of [[xy[0]!, xy[1]!], [xy[xy.length - 2]!, xy[xy.length - 1]!]]) expect(Math.min(...all.map(([x, y]) => Math.hypot(x - end[0]!, y - end[1]!)))).toBeLessThan(3);
      }
      expect(transferPricks([...marks, ...pricks])).toEqual([]);
    }
  });

  test("a strap's place: its corners, 1.5 mm inside, so that the strap hides them", () => {
    const strap = { kind: "line", name: "place of the strap", use: "place", line: { xy: Float64Array.of(0, 0, 12, 0, 12, 30, 0, 30, 0, 0) } } as const;
    const pricks = transferPricks([strap]).map((m) => (m.kind === "prick" ? m.at : [0, 0]));
    expect(pricks).toHaveLength(4);
    for (const [x, y] of pricks) {
      expect(x! > 0 && x! < 12 && y! > 0 && y! < 30).toBe(true);
      expect(Math.min(...[[0, 0], [12, 0], [12, 30], [0, 30]].map(([cx, cy]) => Math.hypot(cx! - x!, cy! - y!)))).toBeCloseTo(1.5, 6);
    }
  });

  test("grips of the drafts are not pricked: they lie in the margin; nor is what stands for a notch, or has pricks of its own", () => {
    expect(transferPricks(drawn[0]!.grips.marks)).toEqual([]);
    const line = { kind: "line", name: "side seam", use: "place", line: { xy: Float64Array.of(0, 0, 0, 4) } } as const;
    expect(transferPricks([line])).toHaveLength(1);
    for (const as of ["notch", "own pricks"] as const) expect(transferPricks([{ ...line, as }])).toEqual([]);
  });

  test("a grip beside a slanting seam moves away from it until the leather fills the jaws", () => {
    // A margin of 20 mm whose cutting line the seam's allowance cuts off at 45 degrees, out to 20 mm inside the feather line's end.
    const feather = { line: { xy: Float64Array.of(0, 0, 50, 0, 100, 0) }, arc: Float64Array.of(0, 50, 100), role: "feather" } as const;
    const outline = { xy: Float64Array.of(20, -20, 100, -20, 100, 60, 0, 60, 0, 0) };
    const panel = { name: "vamp", edges: [feather], places: [{ name: "toe", edge: 0, s: 2 }] } as const;
    const [grip] = lastingDrafts(panel, outline, []).marks;
    const { xy } = (grip as Extract<Mark, { kind: "line" }>).line;
    const cut = new Boxed(outline);
    for (const i of [0, 2]) expect(cut.holds(xy[i]!, xy[i + 1]!)).toBe(true);
    expect(Math.min(xy[0]!, xy[2]!)).toBeGreaterThan(8 - 4.5);
  });
});

function crosses(a: Float64Array, b: Float64Array): boolean {
  for (let i = 0; i + 3 < a.length; i += 2) {
    for (let j = 0; j + 3 < b.length; j += 2) if (segmentsMeet(a[i]!, a[i + 1]!, a[i + 2]!, a[i + 3]!, b[j]!, b[j + 1]!, b[j + 2]!, b[j + 3]!)) return true;
  }
  return false;
}

function ringOf(panel: typeof whole): readonly number[] {
  return panel.edges.flatMap(({ line: { xy } }) => [...xy.subarray(0, xy.length - 2)]);
}
