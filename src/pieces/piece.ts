import type { Side } from "#last/last.ts";
import type { Outline, Polyline } from "#plane/outline.ts";

export const materials = [
  "card", "upper leather", "lining leather", "stiffener", "toe puff", "side lining", "insole board", "second board", "shank", "filler", "sole leather", "heel leather", "sock leather", "tape", "elastic",
] as const;
export type Material = (typeof materials)[number];
export type Xy = readonly [number, number];

/**
 * What is drawn inside a piece. All in the piece's own flat coordinates, mm.
 * notch: `at` lies on the cutting line, `toward` is its inner end; a snip only frees a corner and meets none. prick: a hole of the awl.
 * A line with `as` is drawn for itself and no prick carries it over: it stands for a notch on an edge that stays in sight, shows where the
 * pincers bite, or has pricks of its own. arrow: along the direction of least stretch, which has no sense, so it is drawn with a head at both ends. text: `at` is the middle of the text, along and across; `heightMm` is the
 * height of a capital; `angleDeg` turns it counter-clockwise from +x and is in [-90, 90), so that it reads on both twins.
 */
export type Mark =
  | { readonly kind: "line"; readonly name: string; readonly use: "fold" | "net" | "stitch" | "centre" | "joint" | "heel" | "skive" | "place"; readonly line: Polyline; readonly as?: "notch" | "grip" | "own pricks" }
  | { readonly kind: "notch"; readonly name: string; readonly use?: "snip"; readonly at: Xy; readonly toward: Xy }
  | { readonly kind: "prick"; readonly name: string; readonly at: Xy }
  | { readonly kind: "arrow"; readonly name: string; readonly from: Xy; readonly to: Xy }
  | { readonly kind: "text"; readonly text: string; readonly at: Xy; readonly heightMm: number; readonly angleDeg: number };

/**
 * One flat piece as it is cut. `outline` is the cutting line, allowances included (`net` says when there are none);
 * the upper and its lining are seen from outside (the upper's grain side, the lining's flesh side, since its grain lies against the
 * foot), bottom pieces from above as the foot stands on them. A right piece and its left twin are exact
 * mirrors in the x axis; only their texts are set anew so that they read.
 */
export interface Piece {
  /** Plain trade name, e.g. "upper", "upper, net", "lining", "insole", "outsole", "sock". */
  readonly name: string;
  readonly side: Side;
  readonly material: Material;
  /** How many of this very outline one pair needs (a mirrored twin is a piece of its own). */
  readonly perPair: number;
  readonly net: boolean;
  readonly outline: Outline;
  readonly marks: readonly Mark[];
  /** Direction of least stretch, degrees from the piece's +x. */
  readonly directionDeg: number;
  readonly areaMm2: number;
  readonly perimeterMm: number;
  /** The flat sheet in whose coordinates a right piece is drawn, by which its place on the last is found; none for strips and such. */
  readonly ground?: GroundName;
}

/** A flat sheet that has a place on the last: upper, lining, heel without a seam (drawn together for the pocket, or as it is for the stiffener), bottom, or a panel of the upper by itself. */
export type GroundName = "upper" | "lining" | "heel" | "stiffener" | "bottom" | "whole" | "vamp" | "inner quarter" | "outer quarter";

/** Corners of a sheet on the last, x y z …, and on the flat, x y … (as of a right one), mm. */
export interface Ground {
  readonly name: GroundName;
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly uv: Float64Array;
}

/** What is cut off a roll by length: tape, elastic, binding. */
export interface Strip {
  readonly name: string;
  readonly material: Material;
  readonly widthMm: number;
  /** Of one strip, with what is left over at both ends. */
  readonly lengthMm: number;
  readonly perPair: number;
  /** Where it is laid. */
  readonly where: string;
}
