import { describe, expect, test } from "vitest";
import { backTops, liningCuts, seamKinds, sockKinds, upperCuts, usualParts, type Chosen } from "#pieces/choices.ts";
import { pieceKeys, pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { toplineEdges } from "#shell/settings.ts";
import { addedWords, choiceNames } from "#app/state/piece-choices.ts";
import { pieceLimits } from "#app/state/piece-limits.ts";
import { checkSettings } from "#pieces/check.ts";
import { pieceGroups } from "#app/state/piece-group.ts";
import { keysOf, ofPiece, partsOf, sentencesFor } from "#app/state/piece-sentences.ts";
import { fallbackWords, pieceWords } from "#app/state/piece-words.ts";

const rules = pieceRulesFor({ measures: { ballWidth: 80, seatWidth: 55 } });
const named = (key: string): string => rules[key as keyof PieceSettings].name;
const usual: Chosen = { ...usualParts, edge: "taped" };

/** Every way to choose, but for the extras, which are all in or all out. */
const everyChoice = upperCuts.flatMap((cut) => seamKinds.flatMap((seam) => (["closed", "butted"] as const).flatMap((backSeam) => backTops.flatMap((backTop) => liningCuts.flatMap((lining) => sockKinds.flatMap((sock) => toplineEdges.flatMap((edge) => [false, true].map((extra): Chosen =>
  ({ cut, seam, backSeam, backTop, lining, sock, edge, backStrip: extra, toeCap: extra, strap: extra, gore: extra, bow: extra, sideLining: extra })))))))));

describe("sentences of the pieces", () => {
  test("every number stands in some sentence for some choice, and never in two at once", () => {
    const met = new Set<string>();
    for (const chosen of everyChoice) {
      const keys = sentencesFor(chosen, pieceKeys, named).flatMap(keysOf);
      expect(keys).toHaveLength(new Set(keys).size);
      for (const key of keys) met.add(key);
    }
    expect([...pieceKeys].filter((key) => !met.has(key))).toEqual([]);
  });

  test("speak of numbers that there are, and each has a name of its own", () => {
    const keys = pieceWords.flatMap(({ words }) => partsOf(words).flatMap((p) => (typeof p === "string" ? [] : [p.key])));
    expect(keys.filter((key) => !(pieceKeys as readonly string[]).includes(key))).toEqual([]);
    expect(new Set(pieceWords.map((s) => s.name)).size).toBe(pieceWords.length);
    expect(pieceWords.every((s) => pieceGroups.includes(s.group))).toBe(true);
  });

  test("a number that nobody has worded yet has a plain sentence in its group", () => {
    const with_ = sentencesFor(usual, [...pieceKeys, "liningGlueMm"], (key) => (key === "liningGlueMm" ? "width of the glue" : named(key)));
    const plain = with_.find((s) => keysOf(s).includes("liningGlueMm"))!;
    expect(plain.group).toBe("lining");
    expect(plain.parts).toEqual(["Width of the glue: ", { key: "liningGlueMm" }, "."]);
    expect(fallbackWords("anythingMm", "anything").group).toBe("topline and seams");
  });

  test("say nothing that the choice makes idle", () => {
    const keys = (chosen: Partial<Chosen>): readonly string[] => sentencesFor({ ...usual, ...chosen }, pieceKeys, named).flatMap(keysOf);
    expect(keys({ cut: "quarters", seam: "lapped" })).toContain("lapUnderMm");
    expect(keys({ cut: "quarters", seam: "closed" })).not.toContain("lapUnderMm");
    expect(keys({ cut: "back-seam", seam: "lapped" })).not.toContain("lapUnderMm");
    expect(keys({ cut: "inner-seam" })).not.toContain("backSeamMm");
    expect(keys({ edge: "raw" })).not.toContain("toplineFoldMm");
    expect(keys({ strap: true })).toContain("strapWidthMm");
    expect(keys({ strap: false })).not.toContain("strapWidthMm");
  });

  test("a number that is refused or spoken of stands there whatever was chosen", () => {
    const chosen: Chosen = { ...usual, cut: "inner-seam" };
    expect(sentencesFor(chosen, pieceKeys, named, new Set(["backSeamMm", "lastingToeMm"])).flatMap(keysOf).filter((k) => k === "backSeamMm" || k === "lastingToeMm").sort()).toEqual(["backSeamMm", "lastingToeMm"]);
  });

  test("those of the piece that is picked come first, and the two lists make the whole", () => {
    const all = sentencesFor(usual, pieceKeys, named);
    const { own, rest } = ofPiece(all, { name: "lining", group: "lining" });
    expect(own.flatMap(keysOf)).toContain("liningTrimMm");
    expect(own.flatMap(keysOf)).not.toContain("soleFinishHeelMm");
    expect(own.length + rest.length).toBe(all.length);
    expect(ofPiece(all, { name: "upper, net", group: "card to try on the last" }).own.flatMap(keysOf)).not.toContain("toplineFoldMm");
    for (const other of ["strap lining", "inner side lining"]) expect(ofPiece(all, { name: other, group: "extras" }).own.flatMap(keysOf), other).not.toContain("liningTrimMm");
    for (const part of ["vamp lining", "outer quarter lining", "heel pocket"]) expect(ofPiece(all, { name: part, group: "lining" }).own.flatMap(keysOf), part).toContain("liningTrimMm");
    expect(ofPiece(all, undefined).rest).toEqual(all);
  });

  test("every choice has a name for the words of its change, and whatever may be added has its words", () => {
    expect(Object.keys(choiceNames).sort()).toEqual(Object.keys(usualParts).sort());
    expect(Object.entries(usualParts).filter(([, v]) => typeof v === "boolean").map(([k]) => k).sort()).toEqual(Object.keys(addedWords).sort());
  });

  test("what no shoe has may not be typed, what is unusual may", () => {
    for (const key of pieceKeys) {
      const limits = pieceLimits(key, rules[key]);
      expect(limits.least, key).toBeLessThanOrEqual(rules[key].min);
      expect(limits.most, key).toBeGreaterThan(rules[key].max);
      expect(limits.most, key).toBeLessThan(1000);
    }
  });

  test("what may be typed is just what the core takes, and one over it is refused with the same range", () => {
    const settings = pieceSettingsFrom(rules);
    for (const key of pieceKeys) {
      const { least, most } = pieceLimits(key, rules[key]);
      for (const value of [least, most]) expect(() => checkSettings(rules, { ...settings, [key]: value }), key).not.toThrow();
      for (const value of [least - 0.1, most + 0.1]) expect(() => checkSettings(rules, { ...settings, [key]: value }), key).toThrow(expect.objectContaining({ finding: { code: "piece-setting-impossible", data: { name: rules[key].name, value, least, most } } }));
    }
  });
});
