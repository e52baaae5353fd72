// The pages on the parts say and show what the program makes: pictures and tables, byte by byte, and no rule is left out.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { pieceKeys } from "#pieces/rules.ts";
import { filled, rulesOn } from "../tools/guide/pages.ts";
import { guideParts, pagesIn, partsFolder, textOf, type Made } from "../tools/guide/make.ts";
import { examplePairs, type Pairs } from "../tools/guide/pairs.ts";

const remake = "docs/guide/parts is not what the program makes now. Run `npm run guide`, look at what changed, and commit it.";
const pages = pagesIn(partsFolder);
const perPage = 60_000;

describe("pages on the parts", { timeout: 180_000 }, () => {
  let pairs: Pairs;
  let made: readonly Made[];
  beforeAll(() => {
    pairs = examplePairs();
    made = guideParts(pages, pairs);
  }, 180_000);

  test("pictures and tables are those that the program makes", () => {
    const differ = made.filter(({ path, text }) => textOf(path) !== text).map(({ path }) => path);
    expect(differ, remake).toEqual([]);
  });

  test("no picture lies there that is not made, none is heavy, and every one is shown", () => {
    const drawn = made.filter(({ path }) => path.endsWith(".svg"));
    expect(drawn.length).toBeGreaterThan(40);
    const there = (readdirSync(join(partsFolder, "pictures"), { recursive: true }) as string[]).filter((name) => name.endsWith(".svg")).map((name) => join(partsFolder, "pictures", name));
    expect(there.sort(), remake).toEqual(drawn.map(({ path }) => path).sort());
    expect(drawn.filter(({ text }) => text.length >= perPage).map(({ path }) => path)).toEqual([]);
    const shown = new Set(pages.flatMap(({ text }) => [...text.matchAll(/\]\((pictures\/[^)]+\.svg)\)/g)].map((m) => join(partsFolder, m[1]!))));
    expect(drawn.filter(({ path }) => !shown.has(path)).map(({ path }) => path)).toEqual([]);
  });

  test("every rule of pieces and shell is on a page", () => {
    const told = new Set(pages.flatMap(({ text }) => rulesOn(text)));
    expect([...pieceKeys, ...Object.keys(pairs.usual.shellRules)].filter((key) => !told.has(key)), "rules that no page of docs/guide/parts shows: name them in its `<!-- made: rules … -->`").toEqual([]);
  });

  test("every page is in the index, and says from what, how to cut and how to tell that it is right", () => {
    const index = pages.find(({ file }) => file === "README.md")!.text;
    for (const { file, text } of pages) {
      if (file === "README.md") continue;
      expect(index, file).toContain(`(${file})`);
      expect(text, file).toContain("## Right when");
      expect(text, file).toContain("## Where beginners fail");
      expect(text, file).toMatch(/pictures\/|made: strips/);
    }
  });

  test("a number changed by hand is put right, and what is not known is refused", () => {
    const page = pages.find(({ file }) => file === "stiffener.md")!;
    const wrong = { ...page, text: page.text.replace("**13 mm**", "**31 mm**") };
    expect(wrong.text).not.toBe(page.text);
    expect(filled(wrong, pairs, pages)).toBe(page.text);
    const asking = (words: string) => ({ file: "x.md", text: `<!-- made: ${words} -->\n<!-- end -->` });
    expect(() => filled(asking("rules noSuchRule"), pairs, pages)).toThrow('There is no rule "noSuchRule"');
    expect(() => filled(asking("marks nothing"), pairs, pages)).toThrow("no picture of whole pieces");
    expect(() => filled(asking("index nowhere"), pairs, pages)).toThrow("nowhere.md");
    expect(() => filled(asking("something"), pairs, pages)).toThrow("something");
  });
});
