import { existsSync, readFileSync, readdirSync } from "node:fs";
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

/** A file's text, or none; a checkout may have put other ends to its lines. */
export const textOf = (path: string): string | undefined => (existsSync(path) ? readFileSync(path, "utf8").replaceAll("\r\n", "\n") : undefined);

export const pagesIn = (folder: string): readonly PageText[] => readdirSync(folder).filter((name) => name.endsWith(".md")).sort().map((file) => ({ file, text: textOf(join(folder, file))! }));

/** All that is made of the pages on the parts: every picture, and each page with its tables. Same program, same bytes. */
export function guideParts(pages: readonly PageText[], pairs: Pairs = examplePairs()): readonly Made[] {
  const drawn = [...pictures(pairs)].map(([name, text]) => ({ path: join(partsFolder, "pictures", `${name}.svg`), text }));
  const small = [...smallPictures(pairs)].map(([name, text]) => ({ path: join(partsFolder, "pictures", "small", `${name}.svg`), text }));
  return [...drawn, ...small, ...pages.map((page) => ({ path: join(partsFolder, page.file), text: filled(page, pairs, pages) }))];
}
