import type { Half } from "#lines/feather.ts";
import { toeReachMm } from "./margins.ts";
import type { PlaceName } from "./panel.ts";
import { halfWords } from "./words.ts";

/** One pull of the pincers: its number in the maker's order and the place of the feather line where it is taken. */
export interface Draft {
  readonly number: number;
  readonly name: string;
  readonly place: PlaceName & ("toe" | "seat" | "breast" | "joint" | "waist");
  readonly half?: Half;
  /** Running length from the place away from the lateral seat, mm. */
  readonly onMm?: number;
}

/**
 * The order of the drafts: toe, both its corners, back, both seat sides where the heel drops into the waist, both joints (a shoemaking
 * textbook's eight pulls; that the last two are the joints is common practice); then the waists are closed.
 */
export const draftOrder: readonly Draft[] = [
  { number: 1, name: "toe centre", place: "toe" },
  { number: 2, name: "toe corner, inside", place: "toe", onMm: toeReachMm },
  { number: 3, name: "toe corner, outside", place: "toe", onMm: -toeReachMm },
  { number: 4, name: "back", place: "seat" },
  ...pulls(5, "seat side", "breast"),
  ...pulls(7, "joint", "joint"),
  ...pulls(9, "waist", "waist"),
];

function pulls(first: number, name: string, place: Draft["place"]): readonly Draft[] {
  return (["medial", "lateral"] as const).map((half, k) => ({ number: first + k, name: `${name}, ${halfWords[half]}`, place, half }));
}
