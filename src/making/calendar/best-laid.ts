import type { Span } from "./bench-time.ts";
import { minutesADay } from "./dates.ts";
import { layWork, type Laid, type Manner, type Batches } from "./fit-work.ts";
import { allMinutes, minutesOf, restBetween, type WorkPlan } from "./work-plan.ts";

/**
 * Tries some manners of laying the work and keeps the one that is ready on the earliest day, then with the fewest stretches, then
 * earliest. One of them does step after step and waits idle: what is ready later than that is never chosen. Nothing where the sessions do
 * not hold the work.
 */
export function bestLaid(plan: WorkPlan, batches: Batches, sessions: readonly Span[]): readonly Laid[] | undefined {
  if (allMinutes(plan) > sessions.reduce((sum, { from, to }) => sum + to - from, 0)) return undefined;
  const inOrder = plan.steps.map((_, k) => -k);
  const urgencies = [tails(plan), inOrder];
  const manners: Manner[] = [
    { next: "idle", urgency: inOrder, whole: false },
    ...urgencies.flatMap((urgency) => (["urgent", "soonest"] as const).flatMap((next) => [true, false].map((whole) => ({ next, urgency, whole })))),
  ];
  const tried = manners.flatMap((manner) => {
    const parts = layWork(plan, batches, sessions, manner);
    return parts ? [{ parts, idle: manner.next === "idle", ready: readyAt(plan, parts) }] : [];
  });
  const bound = tried.find((t) => t.idle)?.ready ?? Infinity;
  const dayOfReady = (ready: number): number => Math.floor(ready / minutesADay);
  const [best] = tried.filter((t) => t.ready <= bound).toSorted((a, b) => dayOfReady(a.ready) - dayOfReady(b.ready) || a.parts.length - b.parts.length || a.ready - b.ready);
  return best?.parts;
}

/** The longest way from each step's begin to the end of all work, rests with it. */
function tails(plan: WorkPlan): readonly number[] {
  const tail = plan.steps.map(() => 0);
  for (const group of plan.groups.toReversed()) {
    for (const k of group.toReversed()) tail[k] = minutesOf(plan, k) + plan.after[k]!.reduce((most, j) => Math.max(most, restBetween(plan, k, j) + tail[j]!), plan.rest[k]!);
  }
  return tail;
}

/** When the last step is over, its rest with it. */
export const readyAt = (plan: WorkPlan, parts: readonly Laid[]): number => parts.reduce((ready, { to, step }) => Math.max(ready, to + plan.rest[step]!), -Infinity);

