import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { usualSheets, type SheetChoices } from "#sheets/choices.ts";
import { textWidth } from "#sheets/lettering.ts";
import { shownIn } from "#sheets/pdf/page-head.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { pdfLines } from "../support/pdf-lines.ts";
import { samplePair } from "../support/sample-pair.ts";
import { samplePiece } from "../support/sample-pieces.ts";

/** Twelve small pieces with long names, more than one line of a head takes: invented sizes, names of the trade. */
const names = ["outer quarter lining", "inner quarter lining", "second insole board", "instep strap", "heel pocket", "shank bend"];
const small = (["right", "left"] as const).flatMap((side) => names.map((name, k) => samplePiece(name, side, "lining leather", [[0, 0], [60 + k, 0], [60 + k, 40], [0, 40]])));

async function pagesOf(change: Partial<SheetChoices>) {
  const files = await sheetsOf(samplePair({ pieces: small, choices: { ...usualSheets, ...change } }), unwatched);
  return (await pdfLines(files.find((f) => f.name === "pattern.pdf")!.bytes)).map((p) => p.text);
}

describe("head of a page", () => {
  test.each(["A4", "Letter", "A3", "A2", "roll"] as const)("%s: names every piece in whole words and cuts nothing short", async (paper) => {
    const pages = (await pagesOf({ paper })).filter((text) => text.some((t) => t.startsWith("cutting set, size ")));
    expect(pages.length).toBeGreaterThan(0);
    const told = pages.flat().join(" ");
    for (const name of names) expect(told).toMatch(new RegExp(`${name}, (both|right|left)`));
    expect(told).not.toContain("…");
  });

  test("takes the larger letters where they do, and keeps every line within its width", () => {
    const shows = names.map((n) => `${n}, both`).join("; ");
    const wide = shownIn(shows, [220, 80, 80]), narrow = shownIn(shows, [110, 40, 40]);
    expect(wide.heightMm).toBeGreaterThan(narrow.heightMm);
    for (const [{ lines, heightMm }, widths] of [[wide, [220, 80, 80]], [narrow, [110, 40, 40]]] as const) {
      expect(lines.join(" ")).toBe(shows);
      lines.forEach((line, i) => expect(textWidth(line, heightMm, true)).toBeLessThanOrEqual(widths[i]!));
    }
  });

  test("counts what it has no room for, by whole names", () => {
    const { lines } = shownIn(names.map((n) => `${n}, both`).join("; "), [60, 30, 30]);
    const told = lines.join(" ");
    const more = Number(/; and (\d+) more, see the index$/.exec(told)![1]);
    expect(told.startsWith("outer quarter lining, both")).toBe(true);
    expect(told.split("; ").length - 1 + more).toBe(names.length);
    expect(shownIn("a, left; b, left", [0, 0, 0]).lines).toEqual(["2 pieces, see the index"]);
  });
});
