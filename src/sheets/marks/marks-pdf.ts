import { gaugesOf, mirroredGauges, type Gauges } from "#lasting/gauges.ts";
import { correctedMargins, correctedWords, marginWords } from "../corrected.ts";
import type { LastInput, SheetInput } from "../input.ts";
import { bindPdf } from "../pdf/document.ts";
import { inkFrame } from "../pdf/page-frame.ts";
import { PageInk } from "../pdf/page-ink.ts";
import { headingOf, type BoundPages } from "../pdf/pattern-pdf.ts";
import { marksPage, type PageSize, type PrintPaper } from "../print-paper.ts";
import { inkCardPage } from "./card-page.ts";
import { inkLastPage } from "./last-page.ts";
import { shoePages, type DrawnPage } from "./shoe-page.ts";
import type { Strip } from "./strips.ts";

/**
 * What is marked on both lasts. On a last: a page with drawings and all lengths, and for each of the two a page of strips and gauges to
 * cut out, one the mirror of the other. On a taped pattern one page with what can be told of it.
 */
export async function marksPdf(input: SheetInput, printed: PrintPaper): Promise<BoundPages & { readonly strips: readonly Strip[] }> {
  const { inks, strips } = marksPages(input, printed);
  return { bytes: await bindPdf(`${headingOf(input)}: marks on both lasts`, inks), pages: inks.map((ink) => ink.page), strips };
}

/** Its pages as they are drawn, and what each strip on them is read back by. */
export function marksPages(input: SheetInput, printed: PrintPaper): { readonly inks: readonly PageInk[]; readonly strips: readonly Strip[] } {
  const page = marksPage(printed);
  const drawn = input.from === "last" ? lastPages(input, page) : [{ shows: bothLasts, draw: (ink: PageInk) => inkCardPage(ink, input) }];
  const strips: Strip[] = [];
  const inks = drawn.map(({ shows, draw }, i) => {
    const ink = new PageInk(page);
    inkFrame(ink, { title: input.title, size: input.size, page: i + 1, pages: drawn.length, shows });
    strips.push(...draw(ink));
    return ink;
  });
  return { inks, strips };
}

const bothLasts = "marks on both lasts";

function lastPages(input: LastInput, page: PageSize): readonly { readonly shows: string; readonly draw: DrawnPage }[] {
  const gauges = gaugesFor(input);
  const first = (ink: PageInk): readonly Strip[] => {
    inkLastPage(ink, { last: input.last, lines: input.lines, gauges }, input.corrected ? [correctedWords(input.corrected), "The marks stay where they are."] : []);
    return [];
  };
  const own = rightFirst(gauges).flatMap((of) => shoePages(page, of, input.corrected ? marginWords(of) : "").map((draw) => ({ shows: `strips for the ${of.side} last`, draw })));
  return [{ shows: bothLasts, draw: first }, ...own];
}

/** The gauges of the last that the pair was made on. */
export const gaugesFor = ({ last, lines, pieceSettings, shellSettings, beneath, seams, foretold, corrected }: LastInput): Gauges => {
  const gauges = gaugesOf({ last, lines, settings: pieceSettings, shell: shellSettings, beneath, ...(seams && { seams }), ...(foretold && { foretold }) });
  return corrected ? correctedMargins(gauges) : gauges;
};

const rightFirst = (gauges: Gauges): readonly Gauges[] => {
  const both = [gauges, mirroredGauges(gauges)];
  return gauges.side === "right" ? both : both.reverse();
};
