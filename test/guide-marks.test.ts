// The guide shows the pages of marks.pdf as they are printed.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { textOf } from "../tools/guide/make.ts";
import { marksPictures, marksPicturesFolder } from "../tools/guide/marks-pages.ts";

test("the pages on marks and gauges are those that the program prints", { timeout: 60_000 }, () => {
  const made = marksPictures();
  expect(made.filter(({ path, text }) => textOf(path) !== text).map(({ path }) => path), "Run `npm run guide`, look at what changed, and commit it.").toEqual([]);
  expect(readdirSync(marksPicturesFolder).map((name) => join(marksPicturesFolder, name)).sort()).toEqual(made.map(({ path }) => path).sort());
});

test("every letter on the drawing is explained beside it", () => {
  const page = readFileSync("docs/guide/marks-and-gauges.md", "utf8");
  const told = new Set([...page.matchAll(/^\| ([A-Z](?:, [A-Z])*) \|/gm)].flatMap(([, letters]) => letters!.split(", ")));
  const drawn = new Set([...textOf(join(marksPicturesFolder, "both-lasts.svg"))!.matchAll(/>([A-P])(?: [\d.]+)?<\/text>/g)].map(([, letter]) => letter!));
  expect([...drawn].sort()).toEqual([...told].sort());
});
