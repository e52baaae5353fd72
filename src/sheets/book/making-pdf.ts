import type { HazardId } from "#making/care/hazards.ts";
import type { Step } from "#making/steps/step.ts";
import { gaugesFor } from "../marks/marks-pdf.ts";
import { bindPdf } from "../pdf/document.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { headingOf, type BoundPages } from "../pdf/pattern-pdf.ts";
import { marksPage, type PrintPaper } from "../print-paper.ts";
import type { SheetInput } from "../input.ts";
import type { Drawn } from "./block.ts";
import { stepAnchor, type Book, type PagedBook } from "./book.ts";
import { calendarChapter } from "./calendar.ts";
import { cautionsChapter } from "./cautions.ts";
import { costChapter } from "./cost.ts";
import { coverChapter } from "./cover.ts";
import { anchorsOf, bookPages as laidOut, type BookPage, type Chapter } from "./flow.ts";
import { marksChapter } from "./marks.ts";
import { materialsChapter } from "./materials.ts";
import { notesChapter } from "./notes.ts";
import { bookRoom, inkBookPage } from "./page.ts";
import { piecesChapter } from "./piece-index.ts";
import { stepPictures } from "./step-pictures/step-picture.ts";
import { stepsChapter } from "./steps.ts";
import { toolsChapter } from "./tools.ts";

/** The bench book of one pair: all that is needed to make it, on pages to hang up and to write on. Same pair, same bytes. */
export async function bookPdf(input: SheetInput, printed: PrintPaper): Promise<BoundBook> {
  const { inks, drawn } = bookPages(input, printed);
  return { bytes: await bindPdf(`${headingOf(input)}: bench book`, inks), pages: inks.map((ink) => ink.page), drawn };
}

/** A finished book, with what is drawn to scale on each page. */
export interface BoundBook extends BoundPages {
  readonly drawn: readonly (readonly Drawn[])[];
}

/** Chapters in their order; the steps alone tell pages of other chapters. */
const beforeSteps = [coverChapter, piecesChapter, materialsChapter, toolsChapter, marksChapter] as const;
const afterSteps = [calendarChapter, cautionsChapter, costChapter, notesChapter] as const;

/** Its pages as they are drawn. */
export function bookPages(input: SheetInput, printed: PrintPaper): { readonly inks: readonly PageInk[]; readonly drawn: readonly (readonly Drawn[])[] } {
  const page = marksPage(printed), room = bookRoom(page);
  const gauges = input.from === "last" ? { gauges: gaugesFor(input) } : {};
  const book = { input, ...gauges, page, room }, pictures = stepPictures(book);
  const written = (chapters: readonly ((book: Book) => Chapter | undefined)[]) => chapters.flatMap((chapter) => chapter(book) ?? []);
  const [before, after] = [written(beforeSteps), written(afterSteps)];
  const pages = settled(input.making.steps, (paged) => laidOut([...before, ...[stepsChapter({ ...book, ...paged, pictures }) ?? []].flat(), ...after], room));
  return {
    inks: pages.map((laid, i) => inkBookPage(page, room, laid, { title: input.title, size: input.size, page: i + 1, pages: pages.length })),
    drawn: pages.map(({ placed }) => placed.flatMap(({ block }) => block.drawn ?? [])),
  };
}

/** Pages point to one another: they are laid out again until every number is right, and every page tells each of its cautions once in full. */
function settled(steps: readonly Step[], lay: (paged: Pick<PagedBook, "pageOf" | "inFull">) => readonly BookPage[]): readonly BookPage[] {
  let known: ReadonlyMap<string, number> = new Map(), full: ReadonlySet<string> = new Set();
  for (let tries = 0; ; tries++) {
    const pages = lay({ pageOf: (anchor) => String(known.get(anchor) ?? 99), inFull: (id, hazard) => full.has(fullKey(id, hazard)) });
    const found = anchorsOf(pages), wanted = firstOnPages(steps, found);
    const told = wanted.every((key) => full.has(key)) && (tries >= freeTries || full.size === wanted.length);
    if (tries > mostTries || (told && [...found].every(([anchor, page]) => known.get(anchor) === page))) return pages;
    known = found;
    // Where words in full push steps to and fro, what was told in full once stays so: it only becomes more, and comes to an end.
    full = new Set(tries < freeTries ? wanted : [...full, ...wanted]);
  }
}

const freeTries = 6;
const mostTries = 24;
const fullKey = (id: string, hazard: HazardId): string => `${id} ${hazard}`;

/** The first step of each page at which each danger is met. */
function firstOnPages(steps: readonly Step[], pageOf: ReadonlyMap<string, number>): readonly string[] {
  const met = new Set<string>();
  return steps.flatMap(({ id, hazards }) =>
    hazards.flatMap((hazard) => {
      const here = `${pageOf.get(stepAnchor(id))} ${hazard}`;
      if (met.has(here)) return [];
      met.add(here);
      return [fullKey(id, hazard)];
    }),
  );
}
