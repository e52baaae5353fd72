import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { barAcrossMm, barMm } from "./card.ts";

/** What the maker says about the printed card. */
export interface SaidOfCard {
  /** What her own rule reads on the upright bar (printed 200 mm long). */
  readonly barMm?: number;
  /** The same on the lying bar (printed 100 mm long), where she measured it too. */
  readonly barAcrossMm?: number;
}

/** True millimetres to a printed one, across and up, and what is to be said of them. */
export interface PrintScale {
  readonly across: number;
  readonly up: number;
  readonly findings: readonly Finding[];
}

/** A printer that is farther off than this was told to fit the page, or the bar was misread; put right up to the second. */
const printedTruly = 0.01;
const greatestPrintError = 0.1;

/**
 * How large the card was printed, from what the maker's rule reads on its bars.
 * @throws Refusal for a reading that no printer makes
 */
export function printScaleOf({ barMm: bar, barAcrossMm: lying }: SaidOfCard): PrintScale {
  const findings: Finding[] = [];
  const ratio = (read: number, printed: number): number => {
    const r = read / printed;
    if (!(Math.abs(r - 1) <= greatestPrintError)) throw new Refusal(finding("photo-bar-off", { barMm: read, printedMm: printed }));
    if (Math.abs(r - 1) > printedTruly) findings.push(finding("photo-printed-off", { barMm: read, printedMm: printed, percent: 100 * (r - 1) }));
    return r;
  };
  if (bar === undefined && lying === undefined) findings.push(finding("photo-bar-not-measured", { printedMm: barMm }));
  const upright = bar === undefined ? undefined : ratio(bar, barMm);
  const level = lying === undefined ? undefined : ratio(lying, barAcrossMm);
  return { up: upright ?? level ?? 1, across: level ?? upright ?? 1, findings };
}
