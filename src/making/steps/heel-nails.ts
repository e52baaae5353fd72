import { listed } from "#base/listed.ts";
import { nailedLifts, nailWithin } from "../needs/nailed-lifts.ts";
import type { Facts } from "./facts.ts";
import { mm } from "./words.ts";

export function heelNailWords(facts: Facts): string {
  const { settings: s } = facts;
  const lifts = nailedLifts(facts.cut, facts);
  if (!facts.made?.heel) {
    const nailMm = nailWithin(s.liftMm + s.soleMm + s.secondBoardMm + s.firstBoardMm, s.liftMm);
    return `Nails well inside the edge, none over another, heads sunk${nailMm === undefined ? "" : `; through the first lift no longer than ${mm(nailMm)}, or they come through the insole`}.`;
  }
  if (lifts.length === 0) return "No nails: cement alone holds so low a heel.";
  const words = lifts.map(({ name, count, nailMm }) => (nailMm === undefined ? `none in ${name}, where none would end inside` : `${count} of ${mm(nailMm)} in ${name}`));
  return `Nails at the crosses, to a shoe: ${listed(words)}. No longer ones: they would come through the insole. Sink the heads; the top piece is cemented alone.`;
}
