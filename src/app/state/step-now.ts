import type { Calendar } from "#making/calendar/calendar.ts";
import type { Moment } from "#making/calendar/dates.ts";
import type { StepState } from "#making/calendar/progress.ts";
import type { Step } from "#making/steps/step.ts";

/** A step that can begin on one shoe or both, and by when it must have begun where cement is open. */
export interface Able {
  readonly step: Step;
  readonly state: StepState;
  readonly before?: Moment;
}

/** What can be done now: first what an open cement waits for, then as the calendar has it (it begins early with what rests long), else as in the plan. */
export function canDoNow(steps: readonly Step[], states: ReadonlyMap<string, StepState>, calendar: Calendar | undefined): readonly Able[] {
  const planned = calendar?.sessions.flatMap(({ stints }) => stints.map((s) => s.step)) ?? steps.map((s) => s.id);
  const able = steps.flatMap((step): readonly Able[] => {
    const state = states.get(step.id)!;
    const begins = [state.left, state.right].flatMap((s) => (s.is === "can begin" ? [s] : []));
    const latest = begins.flatMap((s) => s.latest ?? []);
    return begins.length === 0 ? [] : [{ step, state, ...(latest.length > 0 && { before: Math.min(...latest) }) }];
  });
  const by = ({ before = Number.MAX_SAFE_INTEGER }: Able): number => before;
  return able.toSorted((a, b) => by(a) - by(b) || planned.indexOf(a.step.id) - planned.indexOf(b.step.id));
}
