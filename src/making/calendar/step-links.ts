import { must } from "#base/bug.ts";
import type { Step } from "../steps/step.ts";
import { dealt, lastedSteps, type Share } from "./lasts-rounds.ts";
import { grouped, ordered, type Links, type Most } from "./work-links.ts";

/** What is planned: the steps of one pair, how many pairs and lasts there are, minutes by step's id, and by step's place when it can begin. */
export interface WorkAsked {
  readonly steps: readonly Step[];
  readonly pairs: number;
  readonly lasts: number;
  readonly minutesOf: ReadonlyMap<string, number>;
  readonly soonest: readonly number[];
}

/** How the steps of one pair hang together, by their places. */
export interface StepLinks {
  readonly before: Links;
  readonly next: readonly Most[];
  readonly groups: Links;
  /** Steps that a pair goes through while it has its lasts; of these alone there are rounds. None where every pair has its own lasts. */
  readonly lasted: ReadonlySet<number>;
  readonly shares: readonly Share[];
}

/** What comes before what, what must be done in one go, and what has to be done in rounds for want of lasts. */
export function stepLinks({ steps, pairs, lasts }: Pick<WorkAsked, "steps" | "pairs" | "lasts">): StepLinks {
  const at = new Map(steps.map((step, k) => [step.id, k]));
  must(at.size === steps.length, "two steps with one id");
  const before = steps.map((step) => [...new Set(step.after)].map((id) => at.get(id) ?? -1));
  must(before.every((list) => list.every((k) => k >= 0)), "a step comes after one that is not in the plan");
  const order = ordered(before);
  const next = steps.map(({ wait }, k): Most => {
    const j = wait?.mostMin === undefined ? undefined : order.find((other) => before[other]!.includes(k));
    return j === undefined ? undefined : { min: wait!.mostMin!, next: j };
  });
  const groups = grouped(before, next);
  const lasted = lasts < pairs ? lastedSteps(steps, before, groups) : new Set<number>();
  return { before, next, groups, lasted, shares: lasted.size > 0 ? dealt(pairs, lasts) : [] };
}

/** The least that all rounds take with rests, minutes: each its longest way from the first step on the lasts to the last one. */
export function leastInRounds({ steps, minutesOf }: WorkAsked, { before, lasted, shares }: StepLinks): number {
  const ends = steps.map(() => 0);
  const few = Math.min(...shares.map(({ pairs }) => pairs));
  for (const k of ordered(before)) if (lasted.has(k)) ends[k] = before[k]!.reduce((begin, j) => (lasted.has(j) ? Math.max(begin, ends[j]! + restAfter(steps[j]!)) : begin), 0) + few * (minutesOf.get(steps[k]!.id) ?? steps[k]!.minutes);
  return shares.length * Math.max(0, ...ends);
}

/** Rest that is planned after a step, whole minutes. */
export const restAfter = ({ wait }: Step): number => (wait ? Math.ceil(Math.min(wait.wellMin, wait.mostMin ?? Infinity)) : 0);
