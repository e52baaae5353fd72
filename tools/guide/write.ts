import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { carePages } from "./care-page.ts";
import { guideParts, pagesIn, partsFolder, textOf } from "./make.ts";
import { marksPictures } from "./marks-pages.ts";
import { stripPictures } from "./strips.ts";

// Writes what changed, and takes away pictures that are no longer made.
const made = [...guideParts(pagesIn(partsFolder)), ...stripPictures(), ...marksPictures(), ...carePages()];
let written = 0;
for (const { path, text } of made) {
  if (textOf(path) === text) continue;
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  written++;
}
const paths = new Set(made.map(({ path }) => path));
const stale = (readdirSync(join(partsFolder, "pictures"), { recursive: true }) as string[]).map((name) => join(partsFolder, "pictures", name)).filter((path) => path.endsWith(".svg") && !paths.has(path));
for (const path of stale) rmSync(path);
console.log(`${made.length} pages and pictures made, ${written} of them new or changed, ${stale.length} taken away.`);
