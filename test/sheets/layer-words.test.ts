import { expect, test } from "vitest";
import { withoutCutWords } from "#sheets/layer-words.ts";

test("files without cutting lines say so and what they hold; others say nothing", () => {
  expect(withoutCutWords(["text", "cut"])).toBeUndefined();
  expect(withoutCutWords(["text", "mark", "fold"])).toBe("pattern.svg and pattern.dxf hold no cutting lines, only marks, fold lines and words: that is what you chose. The PDF has everything.");
  expect(withoutCutWords(["fold"])).toBe("pattern.svg and pattern.dxf hold no cutting lines, only fold lines: that is what you chose. The PDF has everything.");
});
