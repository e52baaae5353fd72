// How much solvent a room's air would hold; method, sources and limits: docs/method/vapour.md.
import { must } from "#base/bug.ts";
import type { Limit } from "./caution.ts";
import { limitsOf } from "./limits.ts";
import { solvents, type SolventId } from "./solvents.ts";

/** Molar gas constant, J/(mol K): exact since 2019 (SI; Avogadro's and Boltzmann's constants multiplied). */
const gasConstant = 8.31446261815324;
/** Standard atmosphere, Pa. */
const atmospherePa = 101_325;
const kelvin = 273.15;

/** Volume of one mole of a gas, l/mol: R T / p, of an ideal gas. */
export function molarVolume(atC: number, pressurePa: number = atmospherePa): number {
  return (1000 * gasConstant * (atC + kelvin)) / pressurePa;
}

/** Parts by volume in a million that `mgPerM3` of a vapour make up. `molarMass` in g/mol. */
export function ppmOf(mgPerM3: number, molarMass: number, atC: number): number {
  return (mgPerM3 * molarVolume(atC)) / molarMass;
}

/** What is in the air of a closed room, evenly spread, and how that stands to each limit. */
export interface RoomEstimate {
  readonly mgPerM3: number;
  readonly ppm: number;
  readonly against: readonly { readonly limit: Limit; readonly side: "above" | "below" }[];
}

/**
 * `g` grams of a solvent evaporated into a room of `roomM3` m³ without any change of air, evenly spread: mg/m³ and ppm at 20 °C, beside
 * the limits over eight hours. Near the open tin it is many times as much; with air coming in it is less.
 */
export function roomEstimate(substance: SolventId, g: number, roomM3: number): RoomEstimate {
  must(g >= 0 && roomM3 > 0, `a room of ${roomM3} m³ with ${g} g of vapour`);
  const mgPerM3 = (1000 * g) / roomM3;
  const ppm = ppmOf(mgPerM3, solvents[substance].molarMass, 20);
  return { mgPerM3, ppm, against: limitsOf(substance).map((limit) => ({ limit, side: ppm >= limit.ppm ? "above" : "below" })) };
}
