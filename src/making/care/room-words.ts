import type { Limit } from "./caution.ts";
import type { SolventId } from "./solvents.ts";
import { roomEstimate } from "./vapour.ts";

/** What a room is reckoned for. */
export interface RoomAsked {
  /** Contact cement taken from the tin for one pair, wet, g: with what dries on brush and pot. */
  readonly cementG: number;
  /** How many pairs are coated at one time at the bench; one where nothing is said. */
  readonly pairs?: number;
  /** The solvent of the example. */
  readonly substance?: SolventId;
  /** Its share of the wet cement, by mass. */
  readonly share?: number;
  /** The closed room, m³. */
  readonly roomM3?: number;
}

/** A share that a cement may well have: a safety data sheet of 1996 (USA) told 10 to 20 % of toluene. An example, never your product. */
export const exampleShare = 0.2;
/** A small kitchen, 12 m² and 2.5 m high. */
export const exampleRoomM3 = 30;

/** Two figures that say something, without a decimal that nobody knows. */
function about(value: number): string {
  if (value >= 100) return String(Math.round(value / 10) * 10);
  return value >= 10 ? String(Math.round(value)) : String(Math.round(value * 10) / 10);
}

const limitName = ({ jurisdiction, ppm, date }: Limit): string => `the limit of ${jurisdiction === "European Union" ? "the " : ""}${jurisdiction} (${ppm} ppm; ${date})`;

/** Why this pair's cement wants moving air, in sentences with its grams; none where no contact cement is used. Told is which limits are passed, never that one is not. */
export function roomWords({ cementG, pairs = 1, substance = "toluene", share = exampleShare, roomM3 = exampleRoomM3 }: RoomAsked): readonly string[] {
  if (!(cementG > 0)) return [];
  const allG = cementG * pairs, g = allG * share;
  const { mgPerM3, ppm, against } = roomEstimate(substance, g, roomM3);
  const passed = against.filter(({ limit, side }) => side === "above" && limit.kind !== "recommendation").map(({ limit }) => limitName(limit));
  return [
    `One pair takes about ${about(cementG)} g of contact cement from the tin, with what dries on brush and pot${pairs > 1 ? `; ${pairs} pairs coated at one time at the bench take ${about(allG)} g` : ""}. Most of that is solvent, and it goes into the air while the cement dries.`,
    `An example: if ${about(share * 100)} % of it were ${substance}, that would be ${about(g)} g. How much it is in yours, its safety data sheet tells.`,
    `In a closed room of ${about(roomM3)} m³ with no air coming in, it would make about ${about(mgPerM3)} mg/m³ (${about(ppm)} ppm).${passed.length > 0 ? ` That is above ${passed.join("; and above ")}.` : ""}`,
    "Over the open tin and the wet leather, where your nose is, it is many times as much, and the other solvents come on top.",
    "So let the air move out before you open the tin. Limits were set for grown people at work, not for a kitchen, a child or a pregnancy; no limit means that a little less does no harm, and you ventilate whatever the figures are.",
  ];
}
