import { tacksOfInsole } from "../needs/nails.ts";
import type { Facts } from "./facts.ts";
import type { Said } from "./plan.ts";
import { mm } from "./words.ts";

/** A tack stays so far from the steel, and from the insole's edges, mm; the seat's no farther from the back than it needs, the toe's so far from the tip (our own). */
const clearOfSteelMm = 5, aheadOfSteelMm = 8, leastFromEdgeMm = 8, usualFromBackMm = 18;
export const fromTipMm = 40;

/** Where the tack of the seat and the middle one go, from the insole's back edge along its middle, mm. No `seatMm`: behind the shank is no room for it. */
export function tackPlaces({ made, settings: { insoleInMm } }: Pick<Facts, "made" | "settings">): { readonly seatMm?: number; readonly middleMm: number } | undefined {
  if (!made) return undefined;
  const { fromSeatMm, lengthMm } = made.shank;
  const seatMm = Math.min(usualFromBackMm, Math.floor(fromSeatMm - insoleInMm - clearOfSteelMm - 1e-9));
  return { ...(seatMm >= leastFromEdgeMm && { seatMm }), middleMm: Math.ceil(fromSeatMm + lengthMm + aheadOfSteelMm) };
}

function placeWords(facts: Facts): string {
  const places = tackPlaces(facts);
  const beside = `beside the shank, ${mm(facts.settings.shankWideMm / 2 + clearOfSteelMm)} or more from its line`;
  if (!places) return `Seat: ${mm(clearOfSteelMm)} or more behind the shank's square end. Middle: ${mm(aheadOfSteelMm)} ahead of its round end. Toe: ${mm(fromTipMm)} behind the tip.`;
  const { seatMm, middleMm } = places;
  return `Seat: ${seatMm === undefined ? beside : `${mm(seatMm)} from the insole's back edge`}. Middle: ${mm(middleMm)} from that edge, ahead of the steel. Toe: ${mm(fromTipMm)} behind the tip.`;
}

export function tackInsoles(facts: Facts): Said {
  return {
    title: "Tack the insoles to the lasts",
    todo: [
      "Dust both lasts with French chalk.",
      `Prick the places of ${tacksOfInsole} tacks on each, along its middle, clear of the steel shank between the boards. ${placeWords(facts)}`,
      "Drive them through the pricks, upright. Leave the heads standing so that they can be drawn.",
      `Write ${2 * tacksOfInsole} on the bench: so many have to come out again.`,
      "Look that the marks on both lasts can still be read.",
    ],
    needs: { goods: ["insole tacks"], tools: ["lasts", "lasting hammer", "awl", "steel rule", "French chalk", "pencil"] },
    right: ["The insole's edge follows the feather line all round; a finger feels no step outward."],
    fails: ["Driven onto the steel: the tack bends, or flies.", "Tacks at the edge: they stand in the way of the margin.", "Heads driven home: they are forgotten, and the foot finds them."],
    minutes: 8,
    shoes: "together",
    hazards: ["hammer and nails"],
  };
}
