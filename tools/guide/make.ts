import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { filled, type PageText } from "./pages.ts";
import { examplePairs, type Pairs } from "./pairs.ts";
import { pictures, smallPictures } from "./pictures.ts";

export const partsFolder = join("docs", "guide", "parts");

export interface Made {
  /** Path from the project's root. */
  readonly path: string;
  readonly text: string;
}

export const pagesIn = (folder: string): readonly PageText[] => readdirSync(folder).filter((name) => name.endsWith(".md")).sort().map((file) => ({ file, text: readFileSync(join(folder, file), "utf8") }));

/** All that is made of the pages on the parts: every picture, and each page with its tables. Same program, same bytes. */
export function guideParts(pages: readonly PageText[], pairs: Pairs = examplePairs()): readonly Made[] {
  const drawn = [...pictures(pairs)].map(([name, text]) => ({ path: join(partsFolder, "pictures", `${name}.svg`), text }));
  const small = [...smallPictures(pairs)].map(([name, text]) => ({ path: join(partsFolder, "pictures", "small", `${name}.svg`), text }));
  return [...drawn, ...small, ...pages.map((page) => ({ path: join(partsFolder, page.file), text: filled(page, pairs, pages) }))];
}
