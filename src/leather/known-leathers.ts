// Leathers before anything is known of the maker's own skin.
import type { KnownLeather } from "./leather.ts";
import { numbersGiving } from "./strip-model.ts";
import type { LeatherNumbers } from "./toe-law.ts";

/** What is told of one kind of leather. Stretches in shares, lowest and highest. */
export interface KnownFigures {
  /** Stretch under a firm pull by hand in the direction of least stretch, and across it. */
  readonly tight: readonly [number, number];
  readonly loose: readonly [number, number];
  /** Stretch at which it tears. */
  readonly breaks: readonly [number, number];
  /** Usual thickness, mm. */
  readonly thicknessMm: number;
  readonly source: string;
}

/** The firm pull by hand that the figures speak of, N per mm of width: 20 to 30 N on a strip 20 mm wide, its middle. */
export const firmPull = 25 / 20;
/** Force at which stretch is told, N per mm of width: 10 N on a strip 20 mm wide. */
export const toldPull = 10 / 20;

const memory = "From memory of the trade, low confidence: stretch under a firm pull by hand, 20 to 30 N on a strip 20 mm wide.";

/** Stretch and break: figures of the trade from memory, with low confidence. Thickness: what such uppers and linings usually have. */
export const knownFigures: Readonly<Record<KnownLeather, KnownFigures>> = {
  goat: { tight: [0.04, 0.07], loose: [0.08, 0.14], breaks: [0.4, 0.6], thicknessMm: 0.85, source: memory },
  calf: { tight: [0.03, 0.06], loose: [0.06, 0.12], breaks: [0.4, 0.6], thicknessMm: 1.1, source: memory },
  nappa: { tight: [0.08, 0.15], loose: [0.15, 0.3], breaks: [0.5, 0.8], thicknessMm: 1, source: memory },
  cow: { tight: [0.05, 0.08], loose: [0.1, 0.18], breaks: [0.4, 0.7], thicknessMm: 1.2, source: memory },
  pig: { tight: [0.04, 0.08], loose: [0.08, 0.15], breaks: [0.35, 0.6], thicknessMm: 0.85, source: memory },
  "lining goat": { tight: [0.04, 0.08], loose: [0.08, 0.16], breaks: [0.4, 0.8], thicknessMm: 0.8, source: `${memory} As goat for uppers, a little softer.` },
};

/** How much of the tight way's stretch is gone before the fibres bear, and the stiffness that is there before: ours, no figures were found. */
export const usualToe = 0.4;
export const usualEarly = 0.25;

export const middle = ([low, high]: readonly [number, number]): number => Math.sqrt(low * high);

export function knownNumbers(known: KnownLeather): LeatherNumbers {
  const { tight, loose } = knownFigures[known];
  return numbersGiving({ along: middle(tight), across: middle(loose) }, firmPull, usualToe * middle(tight), usualEarly);
}

/**
 * Standard deviations of the logarithm of the stretch: what the two ways have in common, and of each by itself. The range of the table
 * is taken as one deviation to each side, since it is from memory; a skin that gives more gives more all ways, so three quarters of the
 * square are shared.
 */
export function knownSpread(known: KnownLeather): { readonly common: number; readonly own: number } {
  const { tight, loose } = knownFigures[known];
  const whole = 0.25 * (Math.log(tight[1] / tight[0]) + Math.log(loose[1] / loose[0]));
  return { common: whole * Math.sqrt(0.75), own: whole * Math.sqrt(0.25) };
}
