import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { brokenIntoLines, pdfString, plainLetters, shortenedTo, textWidth } from "#sheets/lettering.ts";

describe("letters", () => {
  test("accents that the plain faces lack are dropped, the letter stays", () => {
    expect(plainLetters("Ągnieszka Łódź č ő")).toBe("Agnieszka Lódz c o".replace("ó", "ó"));
    expect(plainLetters("Größe 38½ – €")).toBe("Größe 38½ – €");
    expect(plainLetters("靴")).toBe("?");
  });

  test("any text can be measured and written", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 60 }), (text) => {
        expect(textWidth(text, 5)).toBeGreaterThanOrEqual(0);
        expect(pdfString(text)).toMatch(/^<[0-9A-F]*>$/);
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  // Widths of the standard face as its maker publishes them (font metrics file): "A" 667, digits 556 thousandths of the size.
  test("widths are those of the face", () => {
    expect(textWidth("A", 0.718)).toBeCloseTo(0.667, 6);
    expect(textWidth("00", 0.718)).toBeCloseTo(1.112, 6);
  });

  test("broken and shortened texts fit", () => {
    for (const line of brokenIntoLines("the quick brown fox jumps over the lazy dog", 2.5, 30)) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(30);
    expect(textWidth(shortenedTo(20, "a long name of a piece", 2.5), 2.5)).toBeLessThanOrEqual(20);
  });
});
