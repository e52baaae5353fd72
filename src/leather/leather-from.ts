import { fitStrips } from "./fit-strips.ts";
import type { KnownLeather, Leather, LeatherSaid, UpperLayer } from "./leather.ts";
import { thicker } from "./toe-law.ts";

/** What a layer is taken to be cut from where nothing is said. */
export const usualLeather: Readonly<Record<UpperLayer, KnownLeather>> = { upper: "goat", lining: "lining goat" };

/**
 * The leather that a layer is reckoned with: from the maker's strips, or the known one with its wide band.
 * @param thicknessMm of the piece; where it differs from the strips', the leather is taken to resist in proportion
 */
export function leatherFrom(said: LeatherSaid | undefined, layer: UpperLayer, thicknessMm: number): Leather {
  const { leather } = fitStrips({ ...said, known: said?.known ?? usualLeather[layer] });
  return { ...leather, numbers: thicker(leather.numbers, thicknessMm / leather.thicknessMm), thicknessMm };
}
