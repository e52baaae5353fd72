import type { CardPaper } from "#photo/card.ts";
import { inkCardSheet } from "./card-sheet.ts";
import { inkCardGuide } from "./card-guide.ts";
import { papers } from "./paper.ts";
import { bindPdf } from "./pdf/document.ts";
import { PageInk } from "./pdf/page-ink.ts";
import { truePage } from "./print-paper.ts";

/** The card that lies in every photograph of a taped pattern or a drawing: its two sheets, and a page on how to use it. */
export async function cardPdf(name: CardPaper): Promise<Uint8Array> {
  const paper = papers[name];
  const page = truePage(paper);
  const pages = [new PageInk(page), new PageInk(page), new PageInk(page)] as const;
  inkCardSheet(pages[0], paper, name, "left");
  inkCardSheet(pages[1], paper, name, "right");
  inkCardGuide(pages[2], paper, name);
  return bindPdf("Card for photographs", pages);
}
