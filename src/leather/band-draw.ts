import { chance } from "#base/seeded.ts";
import { toldPull } from "./known-leathers.ts";
import type { Leather, StripWay } from "./leather.ts";
import { alike, stiffestBias, stiffnessGiving } from "./strip-model.ts";
import type { LeatherNumbers } from "./toe-law.ts";
import { stretchAt } from "./uniaxial.ts";

/** How many times as much a strip of each way stretches. */
export type MoreByWay = { readonly [W in StripWay]: number };

/**
 * One leather out of the band, as likely as the next: how much each way stretches is drawn log-normally, partly for all ways together.
 * Draw `k` of a `seed` is always the same, and always a possible leather.
 */
export function drawLeather({ numbers, spread }: Leather, seed: number, k: number): LeatherNumbers {
  const { normal } = chance(seed, k);
  // Beyond three deviations lie 3 draws of 1000; they would be leathers that nobody has.
  const drawn = (): number => Math.max(-3, Math.min(3, normal()));
  const common = spread.common * drawn();
  const more = (own: number): number => Math.exp(common + own * drawn());
  return givingMoreByWay(numbers, { along: more(spread.along), across: more(spread.across), bias: more(spread.bias) });
}

/**
 * A leather whose strips stretch so many times as much under 10 N on 20 mm, each way by its own factor. The soft beginning gets as much
 * longer as the stretch along; how much narrower a strip becomes, both ways taken together, stays.
 */
export function givingMoreByWay(numbers: LeatherNumbers, more: MoreByWay): LeatherNumbers {
  const stretch = (way: StripWay): number => more[way] * (stretchAt(numbers, way, toldPull) - 1);
  const toe = numbers.toe * more.along;
  const along = stiffnessGiving(stretch("along"), toldPull, toe, numbers.early);
  const across = stiffnessGiving(stretch("across"), toldPull, toe, numbers.early, along);
  const poisson = numbers.poisson * Math.sqrt(((along / across) * numbers.across) / numbers.along);
  const bias = Math.min(stiffnessGiving(stretch("bias"), toldPull, toe, numbers.early, along), stiffestBias(along, across, poisson));
  return alike({ along, across, bias, poisson, toe, early: numbers.early });
}
