import type { Step } from "../steps/step.ts";
import { groupLinks, reached, turned, type Links } from "./work-links.ts";

/** Which of the pairs go through a step together: so many from the first one on, counted from 0. */
export interface Share {
  readonly first: number;
  readonly pairs: number;
  /** On the lasts, where these do not do for all pairs at once; from 0. */
  readonly round?: number;
}

/** So many pairs dealt to as few rounds as `most` at a time let, as evenly as it goes. */
export function dealt(pairs: number, most: number, from = 0): readonly Share[] {
  const count = Math.ceil(pairs / most);
  const few = Math.floor(pairs / count), more = pairs - few * count;
  return Array.from({ length: count }, (_, round) => ({ first: from + round * few + Math.min(round, more), pairs: few + (round < more ? 1 : 0), round }));
}

/** Steps that a pair goes through while it has its lasts, from the first on them to the last: those on them, what lies between, and what goes with these in one session. */
export function lastedSteps(steps: readonly Pick<Step, "onLast">[], before: Links, groups: Links): ReadonlySet<number> {
  const links = groupLinks(groups, before);
  const ahead = reached(links), after = reached(turned(links));
  const on = groups.map((group) => group.some((k) => steps[k]!.onLast));
  const isOn = (g: number): boolean => on[g]!;
  return new Set(groups.filter((_, g) => on[g] || ([...ahead[g]!].some(isOn) && [...after[g]!].some(isOn))).flat());
}

/** A step for some of the pairs, and what comes before it, by place in the list of all works. */
export interface Work {
  readonly step: number;
  readonly share: Share;
  readonly before: readonly number[];
}

/**
 * Steps for all pairs together, and those on the lasts round by round: a round begins on the lasts when the one before has left them. What comes
 * before the lasts stands first in the list, what comes after them last.
 */
export function inRounds(before: Links, lasted: ReadonlySet<number>, shares: readonly Share[], together: Share): readonly Work[] {
  const ahead = reached(before), after = reached(turned(before));
  const all = before.map((_, k) => k);
  const isLater = (k: number): boolean => [...ahead[k]!].some((j) => lasted.has(j));
  const chain = all.filter((k) => lasted.has(k));
  const begins = chain.filter((k) => !chain.some((j) => ahead[k]!.has(j))), ends = chain.filter((k) => !chain.some((j) => after[k]!.has(j)));
  const whole = (step: number): { step: number; share: Share } => ({ step, share: together });
  const list = [
    ...all.filter((k) => !lasted.has(k) && !isLater(k)).map(whole),
    ...shares.flatMap((share) => chain.map((step) => ({ step, share }))),
    ...all.filter((k) => !lasted.has(k) && isLater(k)).map(whole),
  ];
  const placesOf = new Map<string, number>(list.map(({ step, share }, k) => [`${step} ${share.round ?? ""}`, k]));
  const places = (step: number, round?: number): readonly number[] =>
    lasted.has(step) ? (round === undefined ? shares : shares.slice(round, round + 1)).map((s) => placesOf.get(`${step} ${s.round}`)!) : [placesOf.get(`${step} `)!];
  return list.map(({ step, share }) => {
    const own = before[step]!.flatMap((j) => places(j, share.round));
    const freed = share.round !== undefined && share.round > 0 && begins.includes(step) ? ends.flatMap((j) => places(j, share.round! - 1)) : [];
    return { step, share, before: [...own, ...freed] };
  });
}
