import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { usualParts } from "#pieces/choices.ts";
import { edgeLength } from "#pieces/net-upper.ts";
import type { NetPanel } from "#pieces/panel.ts";
import { pieceRulesFor } from "#pieces/rules.ts";
import { toplineEdges } from "#shell/settings.ts";
import { chosenFrom, cuts, inner, made, pump, quarters, settingsFor, whole } from "../support/upper-made.ts";

describe("numbers of the handbook", () => {
  // Shared handbook 4.2 to 4.4; [S63] and [S64] are sources it opened, the rest is tagged common practice there.
  test.each([
    ["toplineFoldMm", 3.5, 6.5], ["toplineBagMm", 3, 4], ["backSeamMm", 1, 1.5], ["seamMm", 1, 1.5], ["lapUnderMm", 6, 10], ["dogTailLongMm", 10, 12], ["dogTailWideMm", 8, 8], ["stitchInMm", 1.2, 1.5],
    ["skiveFoldMoreMm", 1, 2], ["skiveLapMm", 8, 10], ["skiveRawMm", 3, 4], ["skiveSeamMm", 5, 6], ["skiveToeMm", 12, 15],
    ["foldTapeMm", 3, 4], ["seamTapeMm", 14, 16], ["bindingBoundMm", 12, 16], ["bindingWrappedMm", 18, 20], ["bindingThickMm", 0.6, 0.7],
  ] as const)("%s stands between %f and %f mm, which its range holds", (key, low, high) => {
    const rule = pieceRulesFor(pump.last)[key];
    expect(rule.value).toBeGreaterThanOrEqual(low);
    expect(rule.value).toBeLessThanOrEqual(high);
    expect(rule.min).toBeLessThanOrEqual(low);
    expect(rule.max).toBeGreaterThanOrEqual(high);
    expect(rule.why.length * rule.source.length).toBeGreaterThan(0);
  });

  test("only a folded topline has a fold, and each other says why not", () => {
    for (const edge of toplineEdges) {
      const { toplineFoldMm } = pieceRulesFor(pump.last, edge);
      expect(toplineFoldMm.max > 0).toBe(edge === "taped" || edge === "folded");
      expect(toplineFoldMm.why).not.toBe("");
    }
  });

  test("a default fold is skived over 8 to 11 mm: twice the fold and a little", () => {
    const { toplineFoldMm, skiveFoldMoreMm } = settingsFor(chosenFrom());
    expect(2 * toplineFoldMm + skiveFoldMoreMm).toBeGreaterThanOrEqual(8);
    expect(2 * toplineFoldMm + skiveFoldMoreMm).toBeLessThanOrEqual(11);
  });
});

describe("strips", () => {
  const length = (panels: readonly NetPanel[], role: string): number => panels.flatMap((p) => p.edges).filter((e) => e.role === role).reduce((sum, e) => sum + edgeLength(e), 0);

  test("tape along the fold, over each closed or butted seam once, or the binding; each as long as its edge and 10 mm more at either end", () => {
    const usual = made(quarters).strips;
    expect(usual.map((s) => [s.name, s.widthMm, s.perPair])).toEqual([["fold tape", 3.5, 2], ["seam tape", 14, 2], ["seam tape", 14, 2], ["seam tape", 14, 2]]);
    expect(usual[0]!.lengthMm).toBeCloseTo(length([whole], "topline") + 20, 1);
    expect(usual[1]!.lengthMm).toBeCloseTo(length([inner], "back") + 20, 9);
    expect(usual[2]!.lengthMm).toBeCloseTo(length([inner], "side") + 20, 9);
    expect(made([whole], { edge: "folded" }).strips.map((s) => s.name)).toEqual(["seam tape"]);
    const bound = made([whole], { edge: "bound", backSeam: "butted" }).strips;
    // A butted seam has nothing else to hold it but its stitches (handbook 4.4: wide tape inside the back seam and other seams).
    expect(bound.map((s) => [s.name, s.material, s.widthMm])).toEqual([["seam tape", "tape", 14], ["topline binding", "upper leather", 14]]);
    const seamTapes = (seam: "closed" | "butted" | "lapped") => made(quarters, { seam }).strips.filter((s) => s.name === "seam tape").length;
    expect([seamTapes("closed"), seamTapes("butted"), seamTapes("lapped")]).toEqual([3, 3, 1]);
    expect(made([whole], { edge: "wrapped" }).strips.find((s) => s.name === "topline binding")!.widthMm).toBe(19);
    expect(made(quarters, { seam: "lapped" }, { lapFoldMm: 4 }).strips.filter((s) => s.name === "fold tape")).toHaveLength(3);
  });
});

describe("rules that contradict each other are told with their number", () => {
  const told = (...args: Parameters<typeof made>): readonly string[] => made(...args).findings.map(explain);

  test("a lap wider than half the vamp's wing", () => expect(told(quarters, { seam: "lapped" }, { lapUnderMm: 70 })).toEqual(expect.arrayContaining([expect.stringContaining("lap at the side seam, inside is 70.0 mm")])));
  test("notches deeper than a margin", () => expect(told([whole], {}, { lastingToeMm: 3 })).toEqual([expect.stringContaining("3.0 mm deep, but the margin is only 3.0 mm")]));
  test("a dog-tail wider than a third of the back", () => expect(told([whole], { backTop: "dog-tail" }, { dogTailWideMm: 25 })).toEqual([expect.stringContaining("25.0 mm wide")]));
  test("a dog-tail where none can be", () => {
    expect(told([whole], { backTop: "dog-tail", backSeam: "butted" })).toEqual([expect.stringContaining("zigzag")]);
    expect(told([whole], { backTop: "dog-tail", edge: "bagged" })).toEqual([expect.stringContaining("bagged")]);
  });
  test("what is skived past the middle of the leather", () => {
    expect(told([whole], {}, { skiveToeMm: 100 })).toEqual([expect.stringMatching(/^Along the lasting margin the upper would be skived \d+ mm in, past the middle of the leather/)]);
    expect(told(quarters, { seam: "lapped" }, { skiveRawMm: 60 })).toEqual(expect.arrayContaining([expect.stringMatching(/^Along the side seam, inside the vamp would be skived 60 mm in/)]));
  });
  test("nothing at the usual choices", () => {
    expect(usualParts.backTop).toBe("mitre");
    for (const panels of Object.values(cuts)) expect(told(panels)).toEqual([]);
  });
});
