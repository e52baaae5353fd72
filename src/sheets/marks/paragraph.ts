import { brokenIntoLines } from "../lettering.ts";
import type { PageInk } from "../pdf/page-ink.ts";

const letterMm = 2.2;
const lineMm = 3.7;

/** How high a paragraph of this width is, mm. */
export const paragraphHigh = (text: string, width: number): number => 2.5 + lineMm * brokenIntoLines(text, letterMm, width).length;

/** A paragraph of small print from `top` down; returns where the next may begin. */
export function paragraph(ink: PageInk, text: string, x: number, top: number, width: number): number {
  let y = top - 2.5;
  for (const line of brokenIntoLines(text, letterMm, width)) {
    ink.text(line, x, y, letterMm);
    y -= lineMm;
  }
  return y;
}
