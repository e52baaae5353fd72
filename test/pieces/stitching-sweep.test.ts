// Lines of stitches among all cuts, linings, edges and extras: each has a length, and together they hold upper and lining.
import { describe, expect, test } from "vitest";
import { seamKinds, type PartChoices } from "#pieces/choices.ts";
import { toplineEdges, type ToplineEdge } from "#shell/settings.ts";
import { extremes, partSets } from "../support/parts-sweep.ts";
import { pairOf, usualBench } from "../support/sewn.ts";

describe("whatever is chosen", () => {
  /** Whether the parts hold together by their seams. */
  function oneWhole(names: readonly string[], joins: readonly (readonly string[])[]): boolean {
    const held = new Set(names.slice(0, 1));
    for (let k = 0; k < names.length; k++) for (const some of joins) if (some.some((name) => held.has(name))) for (const name of some) if (names.includes(name)) held.add(name);
    return held.size === names.length;
  }

  const sets = partSets.map((own, k) => ({ own, k }));

  test.each(sets)("every line has a length, and every piece of the upper is held: $own", ({ own: set, k }) => {
    // Half of the edges with each set, the others with the sets beside it.
    toplineEdges.forEach((edge, e) => {
      if ((k + e) % 2 === 0) return;
      const parts = { ...set, seam: seamKinds[(k + e) % 3]!, backSeam: (k + e) % 4 === 1 ? ("closed" as const) : ("butted" as const), backTop: (k + e) % 8 === 1 ? ("dog-tail" as const) : ("mitre" as const) };
      held(parts, edge);
    });
  });

  const numbers = ["stitchInMm", "toplineFoldMm", "toplineBagMm", "lapUnderMm", "lapFoldMm", "goreWideMm", "goreDeepMm", "strapWidthMm", "strapFoldMm", "backStripFoldMm", "toeCapBowMm", "bindingWrappedMm", "dogTailWideMm", "liningLapMm"];
  test.each(numbers)("at nothing, half of its most and its most, %s leaves every line a length of its own, or the pair is refused in words", (key) => {
    const outcomes = extremes.filter(({ what }) => what.startsWith(`${key} `)).flatMap(({ own }) =>
      (["taped", "bagged"] as const).map((edge, k) => usualBench.run({ ...own, shell: { edge }, parts: { cut: "quarters", seam: seamKinds[k]!, backTop: "dog-tail", lining: k === 1 ? "one" : "three", toeCap: true, backStrip: k === 1, strap: true, gore: true, bow: true } })),
    );
    expect(outcomes.length).toBe(6);
    expect(outcomes.filter((outcome) => "broke" in outcome)).toEqual([]);
    const pairs = outcomes.flatMap((outcome) => ("pair" in outcome ? [outcome.pair] : []));
    expect(pairs.length).toBeGreaterThan(0);
    for (const { stitching } of pairs) for (const { name, lengthMm, stackMm } of stitching) expect(lengthMm > 0 && lengthMm < 900 && stackMm > 0 && stackMm < 20, `${name}: ${lengthMm}, ${stackMm}`).toBe(true);
  });

  function held(parts: Partial<PartChoices>, edge: ToplineEdge): void {
    const pair = pairOf({ parts, shell: { edge } });
    const names = pair.stitching.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, lengthMm, rows, plies, stackMm, joins } of pair.stitching) {
      expect(Number.isFinite(lengthMm) && lengthMm > 1 && lengthMm < 700, `${edge}, ${name}: ${lengthMm}`).toBe(true);
      expect(rows === 1 || rows === 2, name).toBe(true);
      expect(stackMm > 0.5 && stackMm < 6 && plies.every(({ mm, count }) => mm > 0 && count > 0), name).toBe(true);
      // Names of pieces, or of the strip that binds the edge.
      for (const joined of joins) expect([...pair.pieces, ...pair.strips].some((piece) => piece.name === joined), `${name} joins ${joined}`).toBe(true);
    }
    const own = pair.pieces.filter(({ side, net }) => side === "right" && !net);
    const upper = own.filter(({ name }) => ["upper", "vamp", "inner quarter", "outer quarter"].includes(name)).map(({ name }) => name);
    const lining = own.filter(({ material, ground }) => material === "lining leather" && ground).map(({ name }) => name);
    const closed = pair.stitching.filter(({ name }) => !name.startsWith("topline"));
    expect(oneWhole(upper, closed.map(({ joins }) => joins)), "upper").toBe(true);
    expect(oneWhole(lining, closed.map(({ joins }) => joins)), "lining").toBe(true);
    expect(oneWhole([...upper, ...lining], pair.stitching.map(({ joins }) => joins)), "upper and lining").toBe(true);
    // Every seam that has two banks is there, by its kind.
    expect(names.includes("back seam")).toBe(parts.cut !== "inner-seam");
    expect(names.filter((name) => name.endsWith("side seam")).length).toBe(parts.cut === "quarters" ? 2 : 0);
    expect(names.includes("inner seam")).toBe(parts.cut === "inner-seam");
    expect(pair.stitching.some(({ stitch }) => stitch === "zigzag")).toBe((parts.cut !== "inner-seam" && parts.backSeam === "butted") || (parts.cut !== "back-seam" && parts.seam === "butted"));
  }
});
