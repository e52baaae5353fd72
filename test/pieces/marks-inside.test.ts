// Every mark of every piece lies in its piece, and every choice brings the pieces it should: all cuts, linings and extras on the example.
import { describe, expect, test } from "vitest";
import { usualParts, seamKinds, backTops, type PartChoices } from "#pieces/choices.ts";
import type { Piece } from "#pieces/piece.ts";
import { toplineEdges } from "#shell/settings.ts";
import { marksOutside } from "../support/marks-outside.ts";
import { namesOf, partSets, SweepBench } from "../support/parts-sweep.ts";

const bench = new SweepBench();
/** Edges, seams and tops go round among the sets, so that each meets several of them. */
const sets = partSets.map((parts, k) => ({
  edge: toplineEdges[k % toplineEdges.length]!,
  parts: { ...parts, seam: seamKinds[(k + (k >> 3)) % 3]!, backTop: backTops[(k >> 1) % 3]!, ...(parts.cut !== "inner-seam" && k % 5 === 0 && { backSeam: "butted" as const }) },
}));

const rightOnes = (edge: (typeof toplineEdges)[number], parts: Partial<PartChoices>): readonly Piece[] => {
  const made = bench.run({ shell: { edge }, parts });
  if (!("pair" in made)) throw new Error(JSON.stringify(made));
  return made.pair.pieces.filter(({ side }) => side === "right");
};

describe("all cuts, linings and extras", () => {
  test.each(sets.map(({ edge, parts }) => [[edge, ...Object.entries(parts).map(([key, value]) => (value === true ? key : String(value)))].join(", "), edge, parts] as const))("%s", (_, edge, parts) => {
    const pieces = rightOnes(edge, parts);
    expect(pieces.flatMap(marksOutside)).toEqual([]);
    expect(pieces.map(({ name }) => name).sort()).toEqual([...namesOf({ ...usualParts, ...parts })].sort());
  });

  test("a mark that lies outside is told with its piece, its name and how far", () => {
    const [card] = rightOnes("taped", {});
    const away = { kind: "prick", name: "far away", at: [1000, 0] } as const;
    expect(marksOutside({ ...card!, marks: [...card!.marks, away] })).toEqual([expect.stringMatching(/^upper, net: prick far away \d+\.\d\d mm outside$/)]);
  });
});
