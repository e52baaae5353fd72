import type { GoodId, Measure } from "./goods.ts";

/** What one part takes of a good, net, for one pair; in the good's own measure (mm², mm, mm³, g, pieces). */
export interface NeedOf {
  readonly name: string;
  readonly perPair: number;
  readonly net: number;
  /** Of this very part, mm, where it is not that of the whole good: layers of a heel. */
  readonly thicknessMm?: number;
}

/** What falls away: two meanings of waste, both said. Shares: 0.25 is 25 %. */
export interface Waste {
  /** Of what is bought: 20 of 100. */
  readonly ofBought: number;
  /** On top of the pieces: 25 on 80. */
  readonly onPieces: number;
  /** How it was estimated, in words. */
  readonly why: string;
}

/** What a pair takes of one good. */
export interface Need {
  readonly good: GoodId;
  readonly measure: Measure;
  readonly parts: readonly NeedOf[];
  /** Sum of the parts, for one pair. */
  readonly net: number;
  /** What has to be bought for one pair so that the parts come out of it. */
  readonly gross: number;
  readonly waste?: Waste;
  /** Of leather, board and sheet, mm. */
  readonly thicknessMm?: number;
  /** Leather of which this good is not always made: a stiffener from a shoulder, bought as leather is. */
  readonly ofLeather?: true;
  /** Width of tape or elastic, mm. */
  readonly widthMm?: number;
  /** What a filler fills, both shoes, mm³. */
  readonly volumeMm3?: number;
  /** Bought once and used for pair after pair: tacks that are drawn again, patterns. */
  readonly again?: true;
  /** Of what is used again: for so many pairs it is bought, since they stand on lasts together. One where nothing is said. */
  readonly atOnce?: number;
  /** Kept in hand, bought once for all pairs beside `gross`. */
  readonly spare?: number;
  /** What to ask for in the shop: "goat or calf, firm, 1.0 to 1.1 mm". */
  readonly kind: string;
  /** Why this kind and thickness. */
  readonly reason: string;
  /** The smallest piece of it that still holds the largest part, mm, and for how many such there must be room in a pair; of sheets and skins. */
  readonly holds?: { readonly longMm: number; readonly wideMm: number; readonly count: number };
  /** Where kind and amount come from. */
  readonly source: string;
}

export const glues = ["contact cement", "water-based cement", "latex", "paste"] as const;
export type Glue = (typeof glues)[number];

/** Two faces that are stuck together, on both shoes of one pair. */
export interface Bond {
  readonly name: string;
  readonly glue: Glue;
  /** Of one face, both shoes, mm². */
  readonly areaMm2: number;
  /** How often each face is coated. */
  readonly coats: readonly [number, number];
  /** Wet, one coat, g/m². */
  readonly gPerM2: number;
  /** All coats of both faces. */
  readonly g: number;
  /** Where the area comes from: "outsole", "insole less bottom filler". */
  readonly from: string;
}
