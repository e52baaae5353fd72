// What is drawn on a piece lies on it: every mark, whatever is chosen.
import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import type { Files } from "#job/files.ts";
import { Pipeline } from "#job/pipeline.ts";
import { extras as allExtras, type PartChoices } from "#pieces/choices.ts";
import { extraPieces } from "#pieces/extras/extras.ts";
import { linesInside, onPiece } from "#pieces/inside-piece.ts";
import type { Mark, Piece, Xy } from "#pieces/piece.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { contains } from "#plane/inside.ts";
import { lengthOf } from "#plane/measure.ts";
import { toplineEdges, type ToplineEdge } from "#shell/settings.ts";
import { strapOn } from "../support/tube-last.ts";
import { chosenFrom, cuts, labels, points, settingsFor } from "../support/upper-made.ts";

type Drawn = Exclude<Mark, { kind: "text" }>;
const square = { xy: Float64Array.of(0, 0, 100, 0, 100, 100, 0, 100) };
const line = (...xy: readonly number[]): Drawn => ({ kind: "line", name: "l", use: "place", line: { xy: Float64Array.from(xy) } });
const notch = (at: Xy, toward: Xy): Drawn => ({ kind: "notch", name: "n", at, toward });

const outside = ({ outline, marks }: Pick<Piece, "outline" | "marks">): readonly string[] => {
  const ring = { xy: Float64Array.of(...outline.xy, outline.xy[0]!, outline.xy[1]!) };
  const arc = arcLengths(ring);
  return marks.flatMap((m) => {
    const on = m.kind === "line" ? points(m.line) : m.kind === "arrow" ? [m.from, m.to] : m.kind === "notch" ? [m.at, m.toward] : [m.at];
    return on.some((p) => !contains(outline, ...p) && nearestOn(ring, arc, ...p).distance > 0.06) ? [m.kind === "text" ? m.text : m.name] : [];
  });
};

describe("marks as far as they lie on a piece", () => {
  test("a line ends at the cutting line, in one part or several; one inside is left as it is", () => {
    const within = line(10, 10, 90, 90);
    expect(onPiece(square, [within])[0]).toBe(within);
    expect(onPiece(square, [line(-50, 50, 50, 50)])).toEqual([line(0, 50, 50, 50)]);
    expect(onPiece(square, [line(50, -20, 50, 40, 60, 40, 60, -20)])).toEqual([line(50, 0, 50, 40, 60, 40, 60, 0)]);
    expect(linesInside(square, { xy: Float64Array.of(20, 20, 20, 120, 80, 120, 80, 20) }).map(lengthOf)).toEqual([80, 80]);
    expect(onPiece(square, [line(0, 120, 100, 120)])).toEqual([]);
  });
  test("a notch keeps its place; near its edge its mouth is brought to it; one that a corner has taken away is left out", () => {
    const sound = notch([50, 0], [50, 3]);
    expect(onPiece(square, [sound])).toEqual([sound]);
    expect(onPiece(square, [notch([50, -0.3], [50, 2.7])])).toEqual([notch([50, 0], [50, 2.7])]);
    for (const lost of [notch([50, 2.4], [50, 5.4]), notch([50, -2.4], [50, 0.6]), notch([50, -4], [50, -1])]) expect(onPiece(square, [lost])).toEqual([]);
  });
  test("pricks and arrows beside the piece are left out", () => {
    expect(onPiece(square, [{ kind: "prick", name: "p", at: [101, 5] }, { kind: "arrow", name: "a", from: [5, 5], to: [101, 5] }])).toEqual([]);
  });
});

describe("every mark lies in its piece", () => {
  // Ends of the rules' ranges, and beyond them what is still drawn.
  const numbers = [{}, { lapUnderMm: 12, lapFoldMm: 6, dogTailLongMm: 12 }, { toplineFoldMm: 7, backSeamMm: 3, seamMm: 3, stitchInMm: 3 }, { strapWidthMm: 8, strapFoldMm: 6, goreWideMm: 24, goreDeepMm: 30, goreLapMm: 12, toeCapFoldMm: 6, toeCapBowMm: 14, knotWideMm: 22 }, { skiveToeMm: 100, skiveRawMm: 60, goreDeepMm: 100 }];
  const strap = strapOn(85);
  test.each(Object.entries(cuts))("%s, with everything added", (cut, panels) => {
    const added = Object.fromEntries(allExtras.map((name) => [name, true]));
    let turn = 0;
    for (const edge of toplineEdges) {
      for (const [seam, backTop, backStrip] of [["closed", "mitre", true], ["lapped", "dog-tail", false], ["butted", "notch", false]] as const) {
        // Two of five each, so that all numbers meet all edges and seams.
        for (const own of [numbers[turn++ % 5]!, numbers[turn++ % 5]!]) {
          const chosen = chosenFrom({ ...added, edge, seam, backTop, backStrip });
          const settings = settingsFor(chosen, { ...own, ...(edge === "taped" || edge === "folded" ? {} : { toplineFoldMm: 0 }) });
          const upper = upperPieces({ panels, settings, chosen, labels }).drafts;
          const parts = extraPieces({ panels, upper, onLast: strap, settings, chosen, labels });
          for (const draft of [...parts.upper, ...parts.drafts]) expect(outside(draft), [cut, edge, seam, backTop, JSON.stringify(own), draft.name].join(", ")).toEqual([]);
        }
      }
    }
  }, 60_000);
});

describe("the example pair, all parts of it", () => {
  const pipeline = new Pipeline();
  const added = Object.fromEntries(allExtras.map((name) => [name, true]));
  const made = (parts: Partial<PartChoices>, edge: ToplineEdge) => pipeline.run({ ...defaultJob(), parts: { ...added, ...parts }, shell: { edge } }, {} as Files, { triangles: 1500 }).pieces;
  const choices = [["back-seam", "three", "closed", "bagged"], ["inner-seam", "three", "lapped", "taped"], ["quarters", "three", "lapped", "bound"], ["inner-seam", "one", "butted", "wrapped"], ["quarters", "one", "closed", "bagged"]] as const;

  test.each(choices)("cut with %s, lined in %s, seams %s, topline %s: every mark lies in its piece", (cut, lining, seam, edge) => {
    for (const piece of made({ cut, lining, seam }, edge)) expect(outside(piece), `${piece.name}, ${piece.side}`).toEqual([]);
  }, 30_000);

  test("a lining bears the gore's mark and pricks for it, in whatever pieces it is cut; the heel pocket, which does not lie there, bears none", () => {
    for (const lining of ["three", "one"] as const) {
      const linings = made({ cut: "back-seam", lining }, "taped").filter((p) => p.side === "right" && p.material === "lining leather" && !/strap|bow/.test(p.name));
      const bearing = (half: string) => linings.filter((p) => p.marks.some((m) => m.kind === "line" && m.name === `cut out for the gore, ${half}`));
      for (const half of ["inside", "outside"]) {
        expect(bearing(half).length, `${lining} ${half}`).toBeGreaterThan(0);
        for (const p of bearing(half)) expect(p.marks.some((m) => m.kind === "prick" && m.name === `cut out for the gore, ${half}`), p.name).toBe(true);
      }
      expect(linings.find((p) => p.name === "heel pocket")?.marks.some((m) => m.kind !== "text" && m.name.includes("gore")) ?? false).toBe(false);
    }
  }, 30_000);
});
