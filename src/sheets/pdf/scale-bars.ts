import { textWidth } from "../lettering.ts";
import type { PageInk } from "./page-ink.ts";

export const barMm = 100;
/** Names by which the bars are found again in the file. */
export const barNames = { across: "scale-across", up: "scale-up" } as const;
const words = "must measure 100 mm";

/** A bar of 100 mm to the right of (x, y), ticks upward every 10 mm, its words in a gap of the line of figures above. */
export function barAcross(ink: PageInk, x: number, y: number): void {
  ink.style(0.5);
  ink.named(barNames.across, () => ink.line(x, y, x + barMm, y));
  ink.style(0.25);
  for (let i = 0; i <= 10; i++) ink.line(x + 10 * i, y, x + 10 * i, y + (i % 5 === 0 ? 3 : 1.6));
  ink.text("0", x + 0.7, y + 2.1, 1.8);
  ink.text("100", x + barMm - 0.7 - textWidth("100", 1.8), y + 2.1, 1.8);
  ink.text(words, x + (barMm - textWidth(words, 2.5)) / 2 - 25, y + 2.2, 2.5);
}

/** A bar of 100 mm upward from (x, y), ticks to the left. */
export function barUp(ink: PageInk, x: number, y: number): void {
  ink.style(0.5);
  ink.named(barNames.up, () => ink.line(x, y, x, y + barMm));
  ink.style(0.25);
  for (let i = 0; i <= 10; i++) ink.line(x, y + 10 * i, x - (i % 5 === 0 ? 3 : 1.6), y + 10 * i);
  ink.text("0", x - 2.1, y + 0.7, 1.8, { angleDeg: 90 });
  ink.text("100", x - 2.1, y + barMm - 0.7 - textWidth("100", 1.8), 1.8, { angleDeg: 90 });
  ink.text(words, x - 2.2, y + (barMm - textWidth(words, 2.5)) / 2 - 25, 2.5, { angleDeg: 90 });
}
