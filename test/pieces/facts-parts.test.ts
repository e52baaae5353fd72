// Facts of the trade that rules and guide stand by, each with its source.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { completeMeasures } from "#last/measures-by-size.ts";
import { lineRulesFor } from "#lines/rules.ts";
import { pieceRulesFor } from "#pieces/rules.ts";

const inch = 25.4;
const lastOf = (sizeEu: number) => lastFromMeasures(completeMeasures({ sizeEu, toe: "round" }).measures, "a made last", unwatched);
const rules = pieceRulesFor(lastOf(38));
const guide = (page: string): string => readFileSync(`docs/guide/${page}`, "utf8");

describe("throat", () => {
  // An early handbook for cordwainers, 1813: from opening to toe 2 to 3 inches for women's slippers.
  test.each([36, 37, 38, 39, 40])("EU %i: the usual depth lies between 2 and 3 inches, and both may be asked for", (sizeEu) => {
    const { throatDepthMm } = lineRulesFor(lastOf(sizeEu));
    expect(throatDepthMm.value).toBeGreaterThanOrEqual(2 * inch);
    expect(throatDepthMm.value).toBeLessThanOrEqual(3 * inch);
    expect(throatDepthMm.min).toBeLessThanOrEqual(Math.ceil(2 * inch));
    expect(throatDepthMm.max).toBeGreaterThanOrEqual(3 * inch);
  });

  // About 75 mm from the toe on one adult's last (common practice, no source; its size is not told, so the larger usual ones are taken).
  test("about 75 mm on a larger last", () => {
    for (const sizeEu of [39, 40]) expect(Math.abs(lineRulesFor(lastOf(sizeEu)).throatDepthMm.value - 75)).toBeLessThanOrEqual(2);
  });
});

describe("what is cut from", () => {
  const within = (key: keyof typeof rules, least: number, most: number): void => {
    expect(rules[key].value, key).toBeGreaterThanOrEqual(least);
    expect(rules[key].value, key).toBeLessThanOrEqual(most);
    // All of it may be asked for without a word.
    expect(rules[key].min, key).toBeLessThanOrEqual(least);
    expect(rules[key].max, key).toBeGreaterThanOrEqual(most);
  };

  // Common practice, no source: upper 1.0 to 1.1 mm, lining 0.8 to 1.0 mm.
  test("upper and lining", () => {
    within("upperThicknessMm", 1, 1.1);
    within("liningThicknessMm", 0.8, 1);
  });

  // Common practice, no source: 4 to 5 mm of bend. A factory manual of 1957: an iron is 1/48 inch, so 8 and 9 irons.
  test("sole", () => {
    within("soleMm", 4, 5);
    within("soleMm", (8 * inch) / 48, (9 * inch) / 48);
  });

  // Common practice, no source: 3 to 4 mm in every fold, 14 or 16 mm over closed seams.
  test("tapes", () => {
    within("foldTapeMm", 3, 4);
    within("seamTapeMm", 14, 16);
    expect((16 - rules.seamTapeMm.min) % rules.seamTapeMm.step).toBe(0);
  });
});

describe("what the guide tells", () => {
  // Common practice, no source: a knife's tip of 30°.
  test("the knife's tip", () => expect(guide("cutting-and-marking.md")).toMatch(/Knife\..*tip .*30°/));

  // One workshop of fine heels: needle 90, thread 60/3, stitches 1.1 mm long. A ticket is 3000 / tex (from memory): 60 is about tex 50.
  test("needle and thread", () => expect(guide("parts/edges.md")).toMatch(/1\.1 mm long with a needle of 90 and thread 60/));

  // A factory rule of 2014 for low-cut shoes: back 1.0, throat 1.0 to 1.5, toe cap 1.6, back seam off upright 1.5 mm.
  test("by how much both shoes may differ", () => {
    expect(guide("cutting-and-marking.md")).toMatch(/within 1 mm at throat and back .*1\.0 and 1\.0 to 1\.5 mm/);
    expect(guide("parts/edges.md")).toMatch(/within 1 mm at throat and back/);
    expect(guide("parts/toe-cap.md")).toMatch(/equally long within 1\.6 mm/);
    expect(guide("parts/back-strip.md")).toMatch(/upright, within 1\.5 mm/);
    expect(guide("parts/outsole.md")).toMatch(/on both shoes, within 0\.5 mm/);
  });
});
