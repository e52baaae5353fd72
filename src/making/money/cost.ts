import type { GoodId } from "../goods.ts";
import type { Phase } from "../steps/step.ts";

/** What has to be bought of one good for all pairs; in its own measure. */
export interface ToBuy {
  readonly good: GoodId;
  /** With what falls away and what is kept in hand; once for all pairs where it is used again. */
  readonly needed: number;
  readonly onShelf: number;
  /** Needed less what is on the shelf, never below nothing. */
  readonly short: number;
  /** What has to be bought whole: skins, spools, tins, where the size of one is known. */
  readonly whole?: { readonly count: number; readonly each: number; readonly words: string };
  /** What is paid in the shop this time, where there is a price; of whole packs where they have to be bought whole. */
  readonly paid?: number;
  /** What is left over of shelf and shopping when all pairs are made, and is not cut for another good. */
  readonly left: number;
  /** What of it is cut out of what another good's skins leave over, and so is not bought. */
  readonly outOf?: { readonly good: GoodId; readonly amount: number };
  /** What to look at before buying: pieces of skin on the shelf are counted by their area alone. */
  readonly caution?: string;
}

/** Parts of a shoe that money goes into. */
export const costParts = ["upper", "lining", "stiffening", "insole", "sole and heel", "closing", "cement and nails", "work", "overhead"] as const;
export type CostPart = (typeof costParts)[number];

export interface CostLine {
  readonly good: GoodId;
  readonly part: CostPart;
  /** What one pair uses, with what falls away; of what is used again as much as a pair takes. */
  readonly amount: number;
  /** Of what is used again a pair's share. Nothing where no price is said. */
  readonly cost?: number;
}

/** What one pair costs; money in the maker's currency. */
export interface Cost {
  readonly currency: string;
  readonly lines: readonly CostLine[];
  /** Goods without a price: the sums leave them out. */
  readonly unpriced: readonly GoodId[];
  /** Goods that the steps use and that are not counted, since nothing was drawn to count them by. */
  readonly uncounted: readonly GoodId[];
  readonly material: number;
  /** Of the material, a pair's share of what serves other pairs too: tacks, card. */
  readonly reused: number;
  /** By phase; of the pattern, which is made once for all pairs, a pair's share. */
  readonly work: readonly { readonly phase: Phase; readonly minutes: number; readonly cost?: number }[];
  readonly minutes: number;
  readonly rate?: number;
  readonly workCost: number;
  readonly overhead: number;
  /** Material, work and overhead. */
  readonly total: number;
  /** Where the money goes, the largest first; shares add up to 1. */
  readonly shares: readonly { readonly part: CostPart; readonly cost: number; readonly share: number }[];
  /** What is paid in the shop this time, for all pairs; without the goods that have no price. */
  readonly shopping: number;
  readonly asked?: number;
  /** Asked less total. */
  readonly left?: number;
  /** What an hour earns at the price asked, after material and overhead. */
  readonly anHour?: number;
  /** When skins (leather of upper, lining and sock) cost a tenth more; asked: what leaves the same. */
  readonly skinsDearer: { readonly more: number; readonly total: number; readonly asked?: number; readonly goods: readonly GoodId[] };
}
