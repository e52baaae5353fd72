import type { Finding } from "#base/findings.ts";
import type { Side } from "#last/last.ts";
import type { TracedPhoto } from "#photo/trace-photo.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { Xy } from "./ring.ts";

export type TapedHalfName = "medial" | "lateral";

/** One of the job's pictures and what was traced in it. */
export interface TracedPicture {
  readonly photo: string;
  readonly traced: TracedPhoto;
}

/** A named point of a traced outline: where it lies in its picture, and whether the maker put it there, it was found, or it stands at an estimated place. */
export interface TapedPoint {
  /** On the card's plane of the picture, mm. */
  readonly at: Xy;
  readonly how: "said" | "found" | "estimated";
}

/** A slit of the feather edge that lies open on the table. Places on the card's plane of the picture, mm. */
export interface Slit {
  readonly from: Xy;
  readonly to: Xy;
  readonly tip: Xy;
  readonly openMm: number;
  readonly deepMm: number;
  /** Where it stands along the half's feather edge, mm from the seat point; nothing where it is cut into another edge. */
  readonly along?: number;
}

/**
 * One half of the taped upper. The edges lie in the shell's frame, seen from outside as on a right last: origin at the toe point,
 * centre line from the throat to the toe along +x, medial +y; slits are bridged straight. mm.
 */
export interface TapedHalf {
  readonly half: TapedHalfName;
  readonly photo: string;
  /** Which of the picture's outlines it is. */
  readonly outline: number;
  readonly points: Readonly<Record<"toe" | "throat" | "back" | "seat" | "joint", TapedPoint>>;
  readonly slits: readonly Slit[];
  /** Seat point to toe point. */
  readonly feather: Polyline;
  /** Seat point to back point. */
  readonly back: Polyline;
  /** Back point to throat. */
  readonly topline: Polyline;
  /** Toe point to throat, as it was cut. */
  readonly centre: Polyline;
  readonly lengths: TapedLengths;
  /** Running length of the joint point along `feather`, from the seat point. */
  readonly jointAlong: number;
}

/** Lengths along one half, mm. */
export interface TapedLengths {
  /** Along the feather edge, less what the slits stand open: what the last's own edge measures. */
  readonly feather: number;
  readonly back: number;
  readonly topline: number;
  /** Throat depth: toe point to throat, straight. */
  readonly centre: number;
  /** How far the cut centre bows off the straight line at most; + where it bulges away from its half. */
  readonly centreBow: number;
  /** What the slits of the feather edge stand open, together. */
  readonly slitsOpen: number;
  /** From the toe point along the feather edge to the joint point, less open slits. */
  readonly toeToJoint: number;
  /** The same from the seat point. */
  readonly seatToJoint: number;
}

/** The bottom traced round the last: origin at the seat point, toe point on +x, as on a right last seen from above (medial +y); mm. */
export interface TapedBottom {
  readonly photo: string;
  readonly outline: number;
  /** Counter-clockwise from the seat point. */
  readonly edge: Outline;
  readonly toePoint: Xy;
  readonly jointMedial: Xy;
  readonly jointLateral: Xy;
  readonly points: Readonly<Record<"toe" | "seat" | "jointMedial" | "jointLateral", TapedPoint>>;
  readonly lengthMm: number;
  readonly ballWidthMm: number;
  readonly seatWidthMm: number;
  /** Along the edge from the seat point over either side. */
  readonly halves: Readonly<Record<TapedHalfName, { readonly toJoint: number; readonly toToe: number }>>;
}

/** The two halves at a quarter of the topline: how far the mirrored outer one lies from the inner one. */
export interface HalvesApart {
  /** Share of the topline from the back point. */
  readonly share: number;
  readonly apartMm: number;
}

/** The maker's own taped pattern: both halves of the upper, laid to one centre line, and the bottom where it was traced. */
export interface TapedShell {
  /** The last that was taped. */
  readonly side: Side;
  readonly medial: TapedHalf;
  readonly lateral: TapedHalf;
  readonly bottom?: TapedBottom;
  /** Length of the last, tape along the bottom: of the traced bottom, or estimated from the halves. */
  readonly length: { readonly mm: number; readonly how: "traced" | "estimated" };
  readonly apart: readonly HalvesApart[];
  readonly findings: readonly Finding[];
}

/** A length that both halves have, as their mean, mm. */
export const meanLength = ({ medial, lateral }: Pick<TapedShell, "medial" | "lateral">, of: "centre" | "back"): number => (medial.lengths[of] + lateral.lengths[of]) / 2;
