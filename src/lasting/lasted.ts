import type { Finding } from "#base/findings.ts";
import type { Half } from "#lines/feather.ts";

/** How hard a pull with lasting pincers is, in words of the bench; newtons stand behind them (from memory, ours). */
export const pullWords = ["light", "firm", "strong"] as const;
export type PullWord = (typeof pullWords)[number];
/** Above this a pull is strong, N. */
export const strongFromN = 30;
export const pullWord = (pullN: number): PullWord => (pullN <= 12 ? "light" : pullN <= strongFromN ? "firm" : "strong");

/** One draft after the upper has come to rest. */
export interface DraftEnd {
  /** Number and name in the order in which drafts are taken, as on the pieces. */
  readonly number: number;
  readonly name: string;
  readonly half?: Half;
  /** Where it is taken: point of the feather line, and running length from the seat point along its half, mm. */
  readonly at: readonly [number, number, number];
  readonly alongMm: number;
  /** Pull of the pincers that it took, and what holds it at the end, N. */
  readonly pullN: number;
  readonly heldN: number;
  readonly word: PullWord;
  /** How far the topline still stood above its mark when the draft was tacked, mm: left out where it had come down to it, or there is none. */
  readonly shortMm?: number;
  /** How far the net edge has come over the feather line (below 0: stays short of it), and what is left of the margin inside it, mm. */
  readonly overMm: number;
  readonly marginMm: number;
}

/** Where the topline ends, as a tape measures it on the last, mm. */
export interface Ends {
  readonly throatDepthMm: number;
  readonly backHeightMm: number;
  /** Heights above the feather line at 25, 50 and 75 % of each flank, and at the lowest place. */
  readonly sideMm: Readonly<Record<Half, readonly [number, number, number]>>;
  readonly lowestMm: Readonly<Record<Half, number>>;
}

/** A place of the upper that stands off, is gathered into pleats, or is stretched beyond what the leather bears. */
export interface Trouble {
  readonly kind: "stands off" | "pleats" | "grain" | "tears";
  readonly at: readonly [number, number, number];
  /** mm for standing off, a share for all others. */
  readonly by: number;
  /** A flank that stands off no farther than a taut thread does over the last's hollow there. */
  readonly spans?: true;
}

/** One picture of the pull-over: where the vertices are after a draft or a part of it. */
export interface Frame {
  /** "laid on", "draft 1, toe centre", …, "at rest". */
  readonly what: string;
  readonly positions: Float32Array;
}

/** The upper after it was pulled over the last. */
export interface Lasted {
  /** Corners of the sheet, and x y z of each of its vertices, mm. */
  readonly triangles: Uint32Array;
  readonly positions: Float64Array;
  /** For each vertex its number in the shell. */
  readonly source: Uint32Array;
  /** Larger and smaller principal stretch of each triangle, flat → last; and the same along and across the leather's direction. */
  readonly most: Float64Array;
  readonly least: Float64Array;
  readonly along: Float64Array;
  readonly across: Float64Array;
  /** Height of each vertex over the surface that it should lie on, mm, never below 0. */
  readonly standOff: Float64Array;
  readonly drafts: readonly DraftEnd[];
  readonly ends: Ends;
  /** What was asked for on the last. */
  readonly asked: Ends;
  readonly troubles: readonly Trouble[];
  readonly frames: readonly Frame[];
  /** Whether it came to rest, and where not how far it was: a finding says why. */
  readonly settled: boolean;
  readonly steps: number;
  readonly moveMm: number;
  readonly residualN: number;
  readonly findings: readonly Finding[];
}

/** A number with its band: 80 of 100 leathers of this kind lie between low and high. */
export interface Banded {
  readonly target: number;
  readonly predicted: number;
  readonly low: number;
  readonly high: number;
}

/** Half-width of such a band in standard deviations of a normal spread. */
export const band80 = 1.2816;

/** The ends with bands, mm. */
export interface BandedEnds {
  readonly throatDepthMm: Banded;
  readonly backHeightMm: Banded;
  readonly innerHeightMm: Banded;
  readonly outerHeightMm: Banded;
}
