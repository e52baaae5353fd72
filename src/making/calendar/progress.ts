import { readMoment, type Moment } from "./dates.ts";
import type { StepDone } from "../said.ts";
import type { Step } from "../steps/step.ts";

/** How far one step is, on one shoe or on both. */
export type Standing =
  /** Ticked, and nothing waits: what comes next has begun, or nothing had to dry. */
  | { readonly is: "done" }
  /** Ticked, and its wait runs or has run: what comes next can begin from `soonest`, best from `best`, and must have begun by `latest` where that is said. */
  | { readonly is: "drying"; readonly soonest: Moment; readonly best: Moment; readonly latest?: Moment }
  /** `best` where it is better to wait until then, `latest` where it must have begun by then. */
  | { readonly is: "can begin"; readonly best?: Moment; readonly latest?: Moment }
  /** Steps that come first and are not ticked, and when the last wait of the ticked ones is over. */
  | { readonly is: "waits"; readonly steps: readonly string[]; readonly until?: Moment };

export interface StepState {
  readonly step: string;
  readonly left: Standing;
  readonly right: Standing;
  /** Both shoes together: how the one stands that is farther behind. */
  readonly both: Standing;
}

export const shoes = ["left", "right"] as const;
export type Shoe = (typeof shoes)[number];

/**
 * How far each step is at a moment on the maker's clock. A step can begin on a shoe when all before it is ticked on that shoe and has
 * rested as long as it must at the least. A tick whose time cannot be read counts as long ago.
 */
export function stepStates(steps: readonly Step[], done: Readonly<Record<string, StepDone>>, now: Moment): readonly StepState[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const next = new Map<string, string[]>(steps.map((step) => [step.id, []]));
  for (const step of steps) for (const id of step.after) next.get(id)?.push(step.id);
  const ticked = (id: string, shoe: Shoe): boolean => Boolean(done[id]?.[shoe]);
  /** When the wait after a ticked step is over; nothing where none runs, or what comes next was begun on that shoe. */
  const drying = (step: Step, shoe: Shoe): Extract<Standing, { is: "drying" }> | undefined => {
    const { wait } = step;
    const at = readMoment(done[step.id]?.[shoe] ?? "");
    if (!wait || at === undefined || next.get(step.id)!.some((id) => ticked(id, shoe))) return undefined;
    const over = at + Math.max(wait.wellMin, wait.mostMin ?? 0);
    if (wait.mostMin === undefined && now >= over) return undefined;
    return { is: "drying", soonest: at + wait.leastMin, best: at + wait.wellMin, ...(wait.mostMin !== undefined && { latest: at + wait.mostMin }) };
  };
  const standing = (step: Step, shoe: Shoe): Standing => {
    if (ticked(step.id, shoe)) return drying(step, shoe) ?? { is: "done" };
    const before = step.after.flatMap((id) => byId.get(id) ?? []);
    const missing = before.filter((s) => !ticked(s.id, shoe));
    const rests = before.flatMap((s) => drying(s, shoe) ?? []);
    const soonest = most(rests.map((r) => r.soonest));
    if (missing.length > 0 || (soonest !== undefined && soonest > now)) return { is: "waits", steps: missing.map((s) => s.id), ...(soonest !== undefined && soonest > now && { until: soonest }) };
    const best = most(rests.map((r) => r.best));
    const latest = least(rests.flatMap((r) => r.latest ?? []));
    return { is: "can begin", ...(best !== undefined && best > now && { best }), ...(latest !== undefined && { latest }) };
  };
  return steps.map((step) => {
    const [left, right] = [standing(step, "left"), standing(step, "right")];
    return { step: step.id, left, right, both: behind(left, right) };
  });
}

const most = (moments: readonly Moment[]): Moment | undefined => (moments.length > 0 ? Math.max(...moments) : undefined);
const least = (moments: readonly Moment[]): Moment | undefined => (moments.length > 0 ? Math.min(...moments) : undefined);
const order: readonly Standing["is"][] = ["waits", "can begin", "drying", "done"];

/** How both stand together: as the one farther behind; where they stand alike, by the later of the begins and the earlier of the ends. */
function behind(a: Standing, b: Standing): Standing {
  if (a.is !== b.is) return order.indexOf(a.is) < order.indexOf(b.is) ? a : b;
  const latest = least([a, b].flatMap((s) => ("latest" in s && s.latest !== undefined ? [s.latest] : [])));
  if (a.is === "drying" && b.is === "drying") return { is: "drying", soonest: Math.max(a.soonest, b.soonest), best: Math.max(a.best, b.best), ...(latest !== undefined && { latest }) };
  if (a.is === "can begin" && b.is === "can begin") {
    const best = most([a, b].flatMap((s) => ("best" in s && s.best !== undefined ? [s.best] : [])));
    return { is: "can begin", ...(best !== undefined && { best }), ...(latest !== undefined && { latest }) };
  }
  if (a.is === "waits" && b.is === "waits") {
    const until = most([a, b].flatMap((s) => ("until" in s && s.until !== undefined ? [s.until] : [])));
    return { is: "waits", steps: [...new Set([...a.steps, ...b.steps])], ...(until !== undefined && { until }) };
  }
  return a;
}
