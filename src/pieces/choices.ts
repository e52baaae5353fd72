import type { ToplineEdge } from "#shell/settings.ts";

/** Where the upper is opened: at the back; at the inner waist, which leaves the heel clean; or at both sides, into vamp and two quarters. */
export const upperCuts = ["back-seam", "inner-seam", "quarters"] as const;
export type UpperCut = (typeof upperCuts)[number];

/** How two edges are joined: sewn grain to grain and opened; one laid under the other; edge to edge under a zigzag. */
export const seamKinds = ["closed", "lapped", "butted"] as const;
export type SeamKind = (typeof seamKinds)[number];

/** The top of a closed back seam: the fold mirrored in it, snipped out beside it, or a tongue on the outer half, pointing to the inside, that spreads the pull. */
export const backTops = ["mitre", "notch", "dog-tail"] as const;
export type BackTop = (typeof backTops)[number];

/** Vamp lining, quarter linings and a heel pocket without a seam; or one piece. */
export const liningCuts = ["three", "one"] as const;
export type LiningCut = (typeof liningCuts)[number];

export const sockKinds = ["full", "half", "heel"] as const;
export type SockKind = (typeof sockKinds)[number];

/** What may be added to a plain pump. */
export const extras = ["backStrip", "toeCap", "strap", "gore", "bow", "sideLining"] as const;

/** What the maker decides about the parts by word or by yes and no; what is a number has a rule (settings.ts). */
export interface PartChoices {
  readonly cut: UpperCut;
  /** How the inner waist's seam or the side seams are joined. */
  readonly seam: SeamKind;
  /** How the back seam is joined, where there is one. */
  readonly backSeam: Exclude<SeamKind, "lapped">;
  readonly backTop: BackTop;
  readonly lining: LiningCut;
  readonly sock: SockKind;
  /** A strip of leather over the back seam. */
  readonly backStrip: boolean;
  readonly toeCap: boolean;
  readonly strap: boolean;
  readonly gore: boolean;
  readonly bow: boolean;
  readonly sideLining: boolean;
}

export const usualParts: PartChoices = {
  cut: "back-seam",
  seam: "closed",
  backSeam: "closed",
  backTop: "mitre",
  lining: "three",
  sock: "full",
  backStrip: false,
  toeCap: false,
  strap: false,
  gore: false,
  bow: false,
  sideLining: false,
};

/** The usual choices with the maker's own put in place of them. */
export const partsFrom = (own: Partial<PartChoices> = {}): PartChoices => ({ ...usualParts, ...own });

/** What the rules and the pieces depend on beside numbers. */
export interface Chosen extends PartChoices {
  readonly edge: ToplineEdge;
}

/** Whether the topline is turned over, by whatever edge. */
export const isFolded = (edge: ToplineEdge): boolean => edge === "taped" || edge === "folded";
