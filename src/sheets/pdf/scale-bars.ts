import { textWidth } from "../lettering.ts";
import type { PageInk } from "./page-ink.ts";

/** Names by which the bars are found again in the file. */
export const barNames = { across: "scale-across", up: "scale-up" } as const;
const wordsOf = (barMm: number): string => `must measure ${barMm} mm`;

/** A bar of `barMm`, in hundreds, to the right of (x, y), ticks upward every 10 mm, its words in a gap of the line of figures above. */
export function barAcross(ink: PageInk, x: number, y: number, barMm: number): void {
  ink.style(0.5);
  ink.named(barNames.across, () => ink.line(x, y, x + barMm, y));
  ink.style(0.25);
  for (let mm = 0; mm <= barMm; mm += 10) ink.line(x + mm, y, x + mm, y + (mm % 50 === 0 ? 3 : 1.6));
  for (let mm = 0; mm <= barMm; mm += 100) ink.text(String(mm), mm < barMm ? x + mm + 0.7 : x + mm - 0.7 - textWidth(String(mm), 1.8), y + 2.1, 1.8);
  ink.text(wordsOf(barMm), x + 25 - textWidth(wordsOf(barMm), 2.5) / 2, y + 1.9, 2.5);
}

/** The same upward from (x, y), ticks to the left. */
export function barUp(ink: PageInk, x: number, y: number, barMm: number): void {
  ink.style(0.5);
  ink.named(barNames.up, () => ink.line(x, y, x, y + barMm));
  ink.style(0.25);
  for (let mm = 0; mm <= barMm; mm += 10) ink.line(x, y + mm, x - (mm % 50 === 0 ? 3 : 1.6), y + mm);
  for (let mm = 0; mm <= barMm; mm += 100) ink.text(String(mm), x - 2.1, mm < barMm ? y + mm + 0.7 : y + mm - 0.7 - textWidth(String(mm), 1.8), 1.8, { angleDeg: 90 });
  ink.text(wordsOf(barMm), x - 2.2, y + 25 - textWidth(wordsOf(barMm), 2.5) / 2, 2.5, { angleDeg: 90 });
}
