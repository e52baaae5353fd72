import type { LeatherNumbers } from "./toe-law.ts";

/** What the two layers of an upper are cut from. */
export const upperLayers = ["upper", "lining"] as const;
export type UpperLayer = (typeof upperLayers)[number];

/** Leathers with usual figures; every one has wide bands until the maker's own strips are read. */
export const knownLeathers = ["goat", "calf", "nappa", "cow", "pig", "lining goat"] as const;
export type KnownLeather = (typeof knownLeathers)[number];

/** Which way a strip is cut: along the direction of least stretch, across it, or at 45 degrees. */
export const stripWays = ["along", "across", "bias"] as const;
export type StripWay = (typeof stripWays)[number];

/** One reading of a loaded strip. Lengths between the two marks, mm. */
export interface StripReading {
  readonly loadN: number;
  readonly lengthMm: number;
  /** One minute after the load was taken off, where it was read. */
  readonly afterMm?: number;
}

/** One strip: its width, the length between its two marks before any load, and what was read on it. */
export interface Strip {
  readonly way: StripWay;
  readonly widthMm: number;
  readonly gaugeMm: number;
  readonly readings: readonly StripReading[];
}

/** Leather of a shoe is so thick, mm (ours; wide, so that only slips and other units are caught). */
export const leatherThickness = { least: 0.2, most: 6 } as const;

/** What the maker says about one leather: the kind it is most like, and what was read on strips of it. */
export interface LeatherSaid {
  readonly known?: KnownLeather;
  /** What she calls it. */
  readonly name?: string;
  /** Thickness of the strips, mm; where the piece is cut thinner or thicker, the leather is taken in proportion. */
  readonly thicknessMm?: number;
  readonly strips?: readonly Strip[];
}

/** A leather as it is reckoned with. Shares: 0.1 is 10 %. */
export interface Leather {
  readonly name: string;
  readonly known: KnownLeather;
  readonly numbers: LeatherNumbers;
  /**
   * How well the numbers are known: standard deviation of the logarithm of the stretch in each way (along, across, bias), and of what
   * they have in common; 0.1 is about 10 %.
   */
  readonly spread: { readonly along: number; readonly across: number; readonly bias: number; readonly common: number };
  readonly thicknessMm: number;
  /** Stretch above which the grain may crack, and at which it tears. */
  readonly grainLimit: number;
  readonly breakLimit: number;
  /** Share of a stretch that is still there after a minute; where it was read. */
  readonly set?: number;
  /** Where the numbers come from, in words. */
  readonly source: string;
}
