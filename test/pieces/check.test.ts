import { describe, expect, test } from "vitest";
import { explain, severityOf, type Finding, type FindingCode } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { checkBack, checkSettings } from "#pieces/check.ts";
import { checkParts } from "#pieces/check-parts.ts";
import { usualParts } from "#pieces/choices.ts";
import { cutLining } from "#pieces/lining/one.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import { netUpper } from "#pieces/net-upper.ts";
import { foldLeftOut, pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { flatPump, type FlatPump } from "../support/flat-pump.ts";
import { cutUpper } from "../support/whole-cut.ts";

const chosen = { ...usualParts, edge: "taped" } as const;
const labels = { title: "Practice pair", size: "38" };
function findingsOf(own: Partial<PieceSettings> = {}, pump: FlatPump = flatPump("right"), edge: ToplineEdge = "taped"): readonly Finding[] {
  const rules = pieceRulesFor(pump.last, edge);
  const settings = pieceSettingsFrom(rules, own);
  const unusual = checkSettings(rules, settings);
  const net = netUpper(pump.last, pump.lines, pump.flat);
  const panels = [wholePanel(net)];
  const drafts = [...upperPieces({ panels, settings, chosen: { ...usualParts, edge }, labels }).drafts, cutLining(net, settings, labels)];
  return [...unusual, ...checkBack(net), ...checkParts({ panels, drafts, settings, chosen: { ...usualParts, edge } })];
}
const codes = (chosen: Partial<PieceSettings> = {}, pump?: FlatPump): FindingCode[] => findingsOf(chosen, pump).map((f) => f.code);

/** The pump with flat points moved; the last keeps its places. */
function bent(pump: FlatPump, move: (x: number, y: number) => readonly [number, number]): FlatPump {
  const uv = pump.flat.uv.slice();
  for (let i = 0; i < uv.length; i += 2) uv.set(move(uv[i]!, uv[i + 1]!), i);
  return { ...pump, flat: { ...pump.flat, uv } };
}

describe("findings of the pieces", () => {
  test("the practice pump with the usual settings has nothing to look at, only the hint for the hollow fold", () => {
    const findings = findingsOf();
    expect(findings.filter((f) => severityOf(f) !== "note")).toEqual([]);
    expect(findings.map((f) => f.code)).toEqual(["fold-needs-notches"]);
    // 4.5 mm over the fixture's throat of about 27 mm: above a tenth.
    expect(explain(findings[0]!)).toMatch(/radius 2[5-9] mm/);
  });

  test("a margin under 15 mm is named with its zone", () => {
    const found = findingsOf({ lastingInnerWaistMm: 13 });
    expect(found.map((f) => f.code)).toContain("lasting-margin-narrow");
    expect(found.map(explain).join()).toContain("inner waist is 13.0 mm");
    expect(codes({ lastingInnerWaistMm: 15 })).not.toContain("lasting-margin-narrow");
  });

  test("a fold too wide for the hollow of the throat", () => {
    const narrow = bent(flatPump("right"), (x, y) => [x, x > -130 && x < -70 ? y * 0.35 : y]);
    expect(codes({}, narrow)).toContain("fold-too-tight");
    expect(codes({ toplineFoldMm: 0 }, narrow).filter((c) => c.startsWith("fold"))).toEqual([]);
  });

  test("a lining as large as its upper is not yet outside, one that reaches beyond is", () => {
    const equal = { liningBackInTopMm: 0, liningBackInMiddleMm: 0, liningBackInFeatherMm: 0, liningLastingShorterMm: 0, liningToeInMm: 0 };
    expect(codes(equal)).not.toContain("lining-outside-upper");
    const pump = flatPump("right");
    const net = netUpper(pump.last, pump.lines, pump.flat);
    const settings = pieceSettingsFrom(pieceRulesFor(pump.last));
    const beyond = { ...settings, liningLastingShorterMm: -2, liningToeInMm: 0, liningBackInTopMm: -1, liningBackInMiddleMm: -1, liningBackInFeatherMm: -1 };
    const found = checkParts({ panels: [wholePanel(net)], drafts: [cutUpper(net, settings, labels), cutLining(net, beyond, labels)], settings, chosen }).filter((f) => severityOf(f) === "look");
    expect(found.map((f) => f.code)).toEqual(["lining-outside-upper", "lining-outside-upper"]);
    expect(found.map(explain).join()).toMatch(/(2\.[0-9]|3\.0) mm beyond .* lasting margin.*1\.0 mm beyond .* back seam/);
  });

  test("an outline that crosses itself is named", () => {
    const pump = flatPump("right");
    const net = netUpper(pump.last, pump.lines, pump.flat);
    const settings = pieceSettingsFrom(pieceRulesFor(pump.last));
    const draft = cutUpper(net, settings, labels);
    const crossed = { ...draft, marks: [], outline: { xy: Float64Array.of(0, 0, 10, 10, 10, 0, 0, 10) } };
    expect(checkParts({ panels: [], drafts: [crossed], settings, chosen })).toEqual([{ code: "piece-crosses-itself", data: { piece: "upper" } }]);
  });

  test("back edges that differ are told with their difference and made equal", () => {
    const longer = bent(flatPump("right"), (x, y) => (y > 0 && x < -225 ? [x - 0.5 * Math.max(0, y - 95) / 51, y + 0.8 * Math.max(0, y - 95) / 51] : [x, y]));
    const found = findingsOf({}, longer);
    expect(found.map((f) => f.code)).toContain("back-edges-differ");
    expect(found.map(explain).join()).toContain("inside one is longer");
  });

  test("a throat that is not square to the centre line", () => {
    const skew = bent(flatPump("right"), (x, y) => [x + (Math.abs(y) < 30 && x < -60 && x > -120 ? 0.08 * y : 0), y]);
    expect(codes({}, skew)).toContain("throat-not-square");
  });

  test("what is no number is refused in words, what is unusual is noted", () => {
    for (const bad of [Number.NaN, Infinity, -3, 500]) {
      expect(() => findingsOf({ lastingHeelMm: bad })).toThrow(Refusal);
      expect(() => findingsOf({ lastingHeelMm: bad })).toThrow(/Lasting margin at the heel/);
    }
    expect(codes({ toplineFoldMm: 9 })).toContain("piece-setting-unusual");
    expect(codes({ sockInMm: -0.5 })).not.toContain("piece-setting-unusual");
  });

  test("a raw topline has no fold: an own one is left out, said so and kept, and no range of nothing is told", () => {
    const rules = pieceRulesFor(flatPump("right").last, "raw");
    expect(pieceSettingsFrom(rules, { toplineFoldMm: 5, backSeamMm: 2 })).toMatchObject({ toplineFoldMm: 0, backSeamMm: 2 });
    const found = findingsOf({ toplineFoldMm: 5 }, flatPump("right"), "raw");
    expect(found.map((f) => f.code)).not.toContain("piece-setting-unusual");
    expect(foldLeftOut("raw", { toplineFoldMm: 5 }).map(explain)).toEqual([expect.stringMatching(/^A raw topline is cut net, so your fold of 5\.0 mm is left out\./)]);
    for (const [edge, own] of [["raw", {}], ["raw", { toplineFoldMm: 0 }], ["folded", { toplineFoldMm: 5 }], [undefined, { toplineFoldMm: 5 }]] as const) expect(foldLeftOut(edge, own)).toEqual([]);
  });

  test("a left last gives the same findings", () => {
    expect(findingsOf({}, flatPump("left"))).toEqual(findingsOf({}, flatPump("right")));
  });
});
