import type { Side } from "#last/last.ts";
import type { Ends } from "./lasted.ts";

/** What is measured on a finished shoe and was asked for on the last. */
export const endNames = ["throatDepthMm", "backHeightMm", "innerHeightMm", "outerHeightMm"] as const;
export type EndName = (typeof endNames)[number];

/** All four ends, mm. */
export type EndsByName = Readonly<Record<EndName, number>>;

/** The ends as they are named in the log. */
export const byName = ({ throatDepthMm, backHeightMm, lowestMm }: Ends): EndsByName => ({ throatDepthMm, backHeightMm, innerHeightMm: lowestMm.medial, outerHeightMm: lowestMm.lateral });

/** Where the topline is asked to end, mm: what is not asked is left out. Side heights at the lowest place of each side. */
export type Asked = { readonly [K in EndName]?: number };

/** What was measured on one shoe after lasting; what was not measured is left out. Lengths as a tape lies over the lasted upper, mm. */
export interface Measured {
  readonly throatDepthMm?: number;
  readonly backHeightMm?: number;
  /** At the lowest place of each side. */
  readonly innerHeightMm?: number;
  readonly outerHeightMm?: number;
  /** Lasting margin left inside the feather line, by number of the draft. */
  readonly marginsMm?: Readonly<Record<string, number>>;
  /** How far the sole stands out, and the height of the heel. */
  readonly soleMarginMm?: number;
  readonly heelHeightMm?: number;
}

/** The throat as it was foretold for one shoe. */
export interface ThroatForetold {
  readonly throatDepthMm: number;
  /** By how much it moves for a leather that gives a tenth more, mm; below 0 it comes nearer to the toe. */
  readonly perTenthMm: number;
  /** How many times as much as its strips say the leather was taken to give; 1 where nothing had been learned yet. */
  readonly factor?: number;
}

/** One shoe of the log, with what it was made from and what had been foretold of it when it was written down. */
export interface ShoeEntry {
  /** 1 for the first pair that is written down, and so on. */
  readonly pair: number;
  readonly side: Side;
  readonly last: string;
  readonly leather: string;
  readonly measured: Measured;
  readonly foretold?: ThroatForetold;
  /** What was asked of it when it was made. */
  readonly asked?: Asked;
  /** By how much the tape reads more over its upper than on the bare last, mm. Where it is left out, the bare last was measured. */
  readonly overMm?: { readonly [K in EndName]?: number };
  readonly note?: string;
}

/** What is asked of a shoe that is written down, from the ends asked for on the last. */
export const askedFrom = byName;
