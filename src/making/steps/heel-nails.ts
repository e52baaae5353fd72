import { listed } from "#base/listed.ts";
import { nailedLifts, nailWithin, soldMm, underFootMm, type NailedLift } from "../needs/nailed-lifts.ts";
import type { Facts } from "./facts.ts";
import { mm } from "./words.ts";

/** Whether any nail is driven into this heel. Without a last nobody knows its layers: there it may be. */
export const heelNailed = (facts: Facts): boolean => !facts.made?.heel || nailedLifts(facts.cut, facts).some(({ nailMm }) => nailMm !== undefined);

/** What is driven, and how long it may be. */
export function heelNailWords(facts: Facts): string {
  const { settings: s } = facts;
  if (!facts.made?.heel) {
    const nailMm = nailWithin(s.liftMm + s.soleMm + s.secondBoardMm + s.firstBoardMm, s.liftMm);
    return `Nails well inside the edge, none over another, heads sunk${nailMm === undefined ? "" : `; through the first lift no longer than ${mm(nailMm)}, or the foot finds them`}.`;
  }
  const lifts = nailedLifts(facts.cut, facts), driven = lifts.filter(({ nailMm }) => nailMm !== undefined);
  if (driven.length === 0) return "No nails: cement alone holds so low a heel.";
  const none = lifts.filter(({ nailMm }) => nailMm === undefined).map(({ name }) => name);
  const tooLong = driven.filter(reachesFoot).map(({ name }) => name);
  const without = none.length > 0 ? `; none in ${listed(none)}, where one that ends inside would not hold` : "";
  const most = tooLong.length === 0 ? "" : `${tooLong.length === driven.length ? "No" : `In ${listed(tooLong)} no`} longer ones: the foot would find them. `;
  return `Nails at the crosses, to a shoe: ${drivenWords(driven)}${without}. ${most}Sink the heads; the top piece is cemented alone.`;
}

/** Lifts that take the same nails are told together: "5 of 13 mm in lift 2 and lift 3 each". */
function drivenWords(driven: readonly NailedLift[]): string {
  const named = new Map<string, readonly string[]>();
  for (const { name, count, nailMm } of driven) {
    const what = `${count} of ${mm(nailMm!)}`;
    named.set(what, [...(named.get(what) ?? []), name]);
  }
  return [...named].map(([what, names]) => `${what} in ${names.length > 1 ? `each of ${listed(names)}` : names[0]!}`).join("; ");
}

/** The next longer nail that is sold would end too near the foot. */
function reachesFoot({ nailMm, roomMm }: NailedLift): boolean {
  const next = soldMm.find((one) => one > nailMm!);
  return next !== undefined && next > roomMm - underFootMm;
}
