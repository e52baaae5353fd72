import { bindPdf } from "../pdf/document.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { headingOf, type BoundPages } from "../pdf/pattern-pdf.ts";
import { marksPage, type PrintPaper } from "../print-paper.ts";
import type { SheetInput } from "../input.ts";
import type { Book } from "./book.ts";
import { coverChapter } from "./cover.ts";
import { anchorsOf, bookPages as laidOut, type BookPage, type Chapter } from "./flow.ts";
import { bookRoom, inkBookPage } from "./page.ts";
import { piecesChapter } from "./piece-index.ts";

/** The bench book of one pair: all that is needed to make it, on pages to hang up and to write on. Same pair, same bytes. */
export async function bookPdf(input: SheetInput, printed: PrintPaper): Promise<BoundPages> {
  const inks = bookPages(input, printed);
  return { bytes: await bindPdf(`${headingOf(input)}: bench book`, inks), pages: inks.map((ink) => ink.page) };
}

const chapters: readonly ((book: Book) => Chapter | undefined)[] = [coverChapter, piecesChapter];

/** Its pages as they are drawn. */
export function bookPages(input: SheetInput, printed: PrintPaper): readonly PageInk[] {
  const page = marksPage(printed), room = bookRoom(page);
  const pages = settled((pageOf) => laidOut(chapters.flatMap((chapter) => chapter({ input, page, room, pageOf }) ?? []), room));
  return pages.map((laid, i) => inkBookPage(page, room, laid, { title: input.title, size: input.size, page: i + 1, pages: pages.length }));
}

/** Pages point to one another: they are laid out again until every number is right. */
function settled(lay: (pageOf: Book["pageOf"]) => readonly BookPage[]): readonly BookPage[] {
  let known: ReadonlyMap<string, number> = new Map();
  for (let tries = 0; ; tries++) {
    const pages = lay((anchor) => String(known.get(anchor) ?? 99));
    const found = anchorsOf(pages);
    if (tries > 3 || [...found].every(([anchor, page]) => known.get(anchor) === page)) return pages;
    known = found;
  }
}
