// Every number at nothing, at half of its most and at its most, among all cuts, linings and extras: a pair or a refusal in words, and never a bug.
import { expect, test } from "vitest";
import { backTops, seamKinds, upperCuts } from "#pieces/choices.ts";
import { toplineEdges } from "#shell/settings.ts";
import { extremes, partSets, SweepBench } from "../support/parts-sweep.ts";

/** Sets with extras, by threes: the three values of a number meet all three cuts. */
const setAt = (k: number) => {
  const own = partSets.filter(({ cut }) => cut === upperCuts[k % 3]).filter((_, i) => i % 4 > 0);
  return own[Math.floor(k / 60) % own.length]!;
};

const tried = extremes.map(({ what, own }, k) => {
  // For a while the same, so that only what the number changes is drawn anew.
  const turn = Math.floor(k / 60);
  const edge = toplineEdges[turn % toplineEdges.length]!;
  return { what, edge, own: { ...own, shell: { edge, ...own.shell }, parts: { ...setAt(k), seam: seamKinds[turn % 3]!, backTop: backTops[(turn + 2) % 3]! } } };
});

test.each(upperCuts)("numbers at their ends are drawn or refused in words: %s", (cut) => {
  // Of one cut after another, since its panels need not be laid anew for each.
  const bench = new SweepBench();
  const own = tried.filter(({ own: { parts } }) => parts.cut === cut);
  const broke = own.flatMap(({ what, edge, own }) => {
    const made = bench.run(own);
    return "broke" in made ? [`${what} with ${JSON.stringify(own.parts)}, ${edge}: ${made.broke}`] : [];
  });
  expect(broke).toEqual([]);
  expect(own.length).toBeGreaterThan(extremes.length / 4);
});
