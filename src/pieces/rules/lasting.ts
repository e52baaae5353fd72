import type { Rule } from "#lines/lines.ts";
import { mm } from "./mm.ts";

/** How far the upper reaches under the feather line, by zone; mm. */
export interface LastingSettings {
  readonly lastingToeMm: number;
  readonly lastingToeSidesMm: number;
  readonly lastingForepartMm: number;
  readonly lastingOuterWaistMm: number;
  readonly lastingInnerWaistMm: number;
  readonly lastingHeelMm: number;
}

const handLasting = "common practice of hand lasting, no source; notes on a factory shoemaking manual of 1957 give 9.5 to 16 mm for machines";

/** `most` is what a margin may be before those of both sides would meet in the middle of the bottom, `mostAtHeel` the same at the seat. */
export const lastingRules = (most: number, mostAtHeel: number): Readonly<Record<keyof LastingSettings, Rule>> => ({
  lastingToeMm: mm("Lasting margin at the toe", 20, 12, most, 0.5,
    "The pincers need a full grip at the first pull over the toe. It is trimmed to 10 to 12 mm once it is stuck down.", handLasting),
  lastingToeSidesMm: mm("Lasting margin beside the toe", 18, 12, most, 0.5,
    "Here the pleats are made. Too much leather makes them thick, too little slips out of the pincers.", handLasting),
  lastingForepartMm: mm("Lasting margin to the joint", 18, 12, most, 0.5,
    "Enough for the pincers where the upper is pulled across the forepart.", handLasting),
  lastingOuterWaistMm: mm("Lasting margin, outer waist", 18, 12, most, 0.5,
    "The outer waist is nearly straight, so it asks for no more than the pincers do.", handLasting),
  lastingInnerWaistMm: mm("Lasting margin, inner waist", 20, 12, most, 0.5,
    "The inner waist is hollow: the leather has farther to go under the arch before it reaches the insole.", handLasting),
  lastingHeelMm: mm("Lasting margin at the heel", 18, 12, mostAtHeel, 0.5,
    "The heel is pleated round the seat over the stiffener, which takes up a little of the margin.", handLasting),
});
