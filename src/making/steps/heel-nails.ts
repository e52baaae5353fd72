import { nailWithin } from "../needs/nails.ts";
import type { Facts } from "./facts.ts";
import { listed, mm } from "./words.ts";

/** What is nailed of a heel on one shoe. */
export interface NailedLift {
  readonly name: string;
  readonly count: number;
  /** Nothing where none ends inside and still holds. */
  readonly nailMm?: number;
}

/** Every layer that has places for nails, and the nail that ends inside through it, all layers above it, sole and boards. */
export function nailedLifts({ made, cut, settings: s }: Pick<Facts, "made" | "cut" | "settings">): readonly NailedLift[] {
  let roomMm = s.soleMm + s.secondBoardMm + s.firstBoardMm;
  return (made?.heel?.layers ?? []).flatMap(({ name, backMm, breastMm }) => {
    roomMm += Math.min(backMm, breastMm);
    const count = cut.find((piece) => piece.name === name)?.marks.filter((mark) => mark.kind === "prick" && mark.name === "nails").length ?? 0;
    if (count === 0) return [];
    const nailMm = nailWithin(roomMm, Math.max(backMm, breastMm));
    return [{ name, count, ...(nailMm !== undefined && { nailMm }) }];
  });
}

export function heelNailWords(facts: Facts): string {
  const { settings: s } = facts;
  const lifts = nailedLifts(facts);
  if (!facts.made?.heel) {
    const nailMm = nailWithin(s.liftMm + s.soleMm + s.secondBoardMm + s.firstBoardMm, s.liftMm);
    return `Nails well inside the edge, none over another, heads sunk${nailMm === undefined ? "" : `; through the first lift no longer than ${mm(nailMm)}, or they come through the insole`}.`;
  }
  if (lifts.length === 0) return "No nails: cement alone holds so low a heel.";
  const words = lifts.map(({ name, count, nailMm }) => (nailMm === undefined ? `none in ${name}, where none would end inside` : `${count} of ${mm(nailMm)} in ${name}`));
  return `Nails at the crosses, to a shoe: ${listed(words)}. No longer ones: they would come through the insole. Sink the heads; the top piece is cemented alone.`;
}
