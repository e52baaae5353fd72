import { must } from "#base/bug.ts";
import type { Step } from "../steps/step.ts";

/** The steps as the calendar sees them, by their index in the plan; minutes. */
export interface WorkPlan {
  readonly steps: readonly Step[];
  readonly pairs: number;
  /** Hands-on, for one pair; not rounded. */
  readonly minutes: readonly number[];
  /** Rest that is planned after a step. */
  readonly rest: readonly number[];
  /** When a step can begin at the soonest, minutes since 1970. */
  readonly soonest: readonly number[];
  readonly before: readonly (readonly number[])[];
  readonly after: readonly (readonly number[])[];
  /** By when, counted from a step's end, the first step that follows must have begun; that step's index stands beside it. */
  readonly most: readonly ({ readonly min: number; readonly next: number } | undefined)[];
  /** Steps that go together, each group in its order and the groups in theirs: one step, or a chain that has to be done in one session. */
  readonly groups: readonly (readonly number[])[];
}

/** Sorts the steps of a plan into what can be done one by one and what must be done in one go. */
export function workPlan(steps: readonly Step[], pairs: number, minutesOf: ReadonlyMap<string, number>, soonest: readonly number[]): WorkPlan {
  const at = new Map(steps.map((step, k) => [step.id, k]));
  must(at.size === steps.length, "two steps with one id");
  const before = steps.map((step) => [...new Set(step.after)].map((id) => at.get(id) ?? -1));
  must(before.every((list) => list.every((k) => k >= 0)), "a step comes after one that is not in the plan");
  const after = steps.map((_, k) => steps.flatMap((_s, j) => (before[j]!.includes(k) ? [j] : [])));
  const order = ordered(before, after);
  const most = steps.map(({ wait }, k) => {
    const next = order.find((j) => before[j]!.includes(k));
    return wait?.mostMin !== undefined && next !== undefined ? { min: wait.mostMin, next } : undefined;
  });
  const rest = steps.map(({ wait }) => (wait ? Math.ceil(Math.min(wait.wellMin, wait.mostMin ?? Infinity)) : 0));
  return { steps, pairs, minutes: steps.map((step) => minutesOf.get(step.id) ?? step.minutes), rest, soonest, before, after, most, groups: grouped(order, before, after, most) };
}

/** Minutes of a step for so many pairs, whole and never nothing. A pattern is made once for all of them. */
export function minutesFor({ steps, minutes }: WorkPlan, step: number, pairs: number): number {
  return Math.max(1, Math.ceil(minutes[step]! * (steps[step]!.phase === "pattern" ? 1 : pairs) - 1e-9));
}

/** Of all steps and pairs. */
export const allMinutes = (plan: WorkPlan): number => plan.steps.reduce((sum, _, k) => sum + minutesFor(plan, k, plan.pairs), 0);

/** Each step after those that come before it, else as they stand in the plan. */
function ordered(before: readonly (readonly number[])[], after: readonly (readonly number[])[]): readonly number[] {
  const open = before.map((list) => list.length);
  const ready = open.flatMap((n, k) => (n === 0 ? [k] : []));
  const order: number[] = [];
  while (ready.length > 0) {
    const k = ready.splice(ready.indexOf(Math.min(...ready)), 1)[0]!;
    order.push(k);
    for (const j of after[k]!) if (--open[j]! === 0) ready.push(j);
  }
  must(order.length === before.length, "steps that wait for one another");
  return order;
}

/** Steps bound by what stays open only so long, and all that lies between them, in one group; groups in an order that can be worked. */
function grouped(order: readonly number[], before: WorkPlan["before"], after: WorkPlan["after"], most: WorkPlan["most"]): readonly (readonly number[])[] {
  // Bound steps reach one another both ways; whatever reaches such a step and is reached from it must go with it.
  const reach = order.map(() => new Set<number>());
  const ways = after.map((list, k) => [...list, ...before[k]!.filter((j) => most[j]?.next === k)]);
  for (const k of order) {
    const open = [k];
    while (open.length > 0) {
      const further = ways[open.pop()!]!.filter((j) => !reach[k]!.has(j));
      for (const j of further) reach[k]!.add(j);
      open.push(...further);
    }
  }
  const groupOf = order.map(() => -1);
  const groups: number[][] = [];
  for (const k of order) {
    if (groupOf[k] !== -1) continue;
    const group = order.filter((j) => j === k || (reach[k]!.has(j) && reach[j]!.has(k)));
    for (const j of group) groupOf[j] = groups.length;
    groups.push(group);
  }
  const between = groups.map((group, g) => [...new Set(group.flatMap((k) => before[k]!.map((j) => groupOf[j]!)))].filter((other) => other !== g));
  const then = groups.map((_, g) => groups.flatMap((_g, other) => (between[other]!.includes(g) ? [other] : [])));
  return ordered(between, then).map((g) => groups[g]!);
}
