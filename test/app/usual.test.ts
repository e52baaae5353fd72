import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { onScan, setLines, setParts, setPiece, setSheets, setShell } from "#app/state/edits.ts";
import { rulesOf } from "#app/state/rules-of.ts";
import { holdsUsual, isUsualFile, readUsual, usualFromFile, usualOf, withUsual, writeUsual } from "#app/state/usual.ts";
import { usualWords } from "#app/state/usual-words.ts";

const mine = setShell(setSheets(setParts(setPiece(setLines(defaultJob(), { throatDepthMm: 80 }), "toplineFoldMm", 5), { cut: "quarters", strap: true }), { paper: "A3", barUpMm: 99.5 }), { edge: "folded", springMm: 4 });
const asFile = (raw: unknown): Uint8Array => new TextEncoder().encode(JSON.stringify(raw));
const saved = JSON.parse(new TextDecoder().decode(writeUsual(usualOf(mine)))) as Record<string, unknown>;

describe("the maker's usual numbers", () => {
  test("are her words and numbers of shell, pieces and sheets, and nothing of a last", () => {
    expect(usualOf(mine)).toEqual({ shell: { edge: "folded" }, pieces: { toplineFoldMm: 5 }, parts: { cut: "quarters", strap: true }, sheets: { paper: "A3", barUpMm: 99.5 } });
  });

  test("begin her next pair, whose last and lines stay its own", () => {
    const next = withUsual(onScan(defaultJob(), "old.stl"), usualOf(mine));
    expect(next).toMatchObject({ last: { from: "scan", file: "old.stl" }, lines: {}, parts: { cut: "quarters" }, pieces: { toplineFoldMm: 5 } });
    expect(holdsUsual(next, usualOf(mine))).toBe(true);
    expect(holdsUsual(setPiece(next, "backSeamMm", 2), usualOf(mine))).toBe(false);
    expect(withUsual(next, undefined)).toBe(next);
  });

  test("come back from their file as they went", () => {
    const bytes = writeUsual(usualOf(mine));
    expect(isUsualFile(bytes)).toBe(true);
    expect(isUsualFile(asFile(defaultJob()))).toBe(false);
    expect(usualFromFile("mine.json", bytes)).toEqual(usualOf(mine));
  });

  test("a file that is none, or holds what cannot be, is refused with the field that is wrong", () => {
    const wrong = (raw: unknown) => (): unknown => usualFromFile("mine.json", asFile(raw));
    expect(() => usualFromFile("mine.json", new TextEncoder().encode("no json"))).toThrow(/mine\.json.*no usual numbers/);
    expect(wrong(defaultJob())).toThrow(/no usual numbers/);
    expect(wrong(null)).toThrow(/no usual numbers/);
    expect(wrong({ ...saved, version: 2 })).toThrow(/newer Lastwise/);
    expect(wrong({ ...saved, pieces: { toplineFoldMm: "wide" } })).toThrow(/pieces → toplineFoldMm must be a number/);
    expect(wrong({ ...saved, pieces: { heelHeightMm: 3 } })).toThrow(/heelHeightMm/);
    expect(wrong({ ...saved, parts: { cut: "in half" } })).toThrow(/parts → cut must be one of/);
    expect(wrong({ ...saved, sheets: { barUpMm: 10 } })).toThrow(/barUpMm must be 95 mm or more/);
    expect(wrong({ ...saved, lines: { throatDepthMm: 3 } })).toThrow(/lines/);
  });

  test("what is not named in a file follows the rules", () => {
    expect(readUsual("mine.json", { format: "lastwise usual numbers", version: 1 })).toEqual({ shell: {}, pieces: {}, parts: {}, sheets: {} });
  });

  test("are told in words", () => {
    const rules = rulesOf(new Pipeline().run(defaultJob(), new Map()));
    const words = usualWords(usualOf(mine), rules);
    for (const part of ["cut as vamp and two quarters", "with an instep strap", "topline folded without a tape", "fold at the topline 5\u00a0mm", "A3", "bars 100 across and 99.5 up"]) expect(words).toContain(part);
    expect(usualWords({ shell: {}, pieces: {}, parts: {}, sheets: {} }, rules)).toBe("everything as the rules say");
  });
});
