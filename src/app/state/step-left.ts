import { calendarOf } from "#making/calendar/calendar-of.ts";
import { dayNumber, dayOf, dayText, minutesADay, readDay, type Moment } from "#making/calendar/dates.ts";
import type { Making } from "#making/making.ts";
import { shoes } from "#making/calendar/progress.ts";
import type { MakingSaid } from "#making/said.ts";
import type { Calendar } from "#making/calendar/calendar.ts";
import type { Finding } from "#base/findings.ts";
import { restsOf } from "./step-timers.ts";

/** The calendar of what is not ticked on both shoes yet, from now on, around what rests already. */
export function calendarOfRest({ steps, pairs }: Pick<Making, "steps" | "pairs">, said: MakingSaid, now: Moment): { readonly calendar?: Calendar; readonly findings: readonly Finding[] } {
  const { done = {} } = said;
  const left = steps.filter((s) => shoes.some((shoe) => !done[s.id]?.[shoe]));
  const ids = new Set(left.map((s) => s.id));
  const rests = restsOf(steps, done);
  const over = new Map(rests.map(({ step: { id } }) => [id, Math.max(...rests.filter((r) => r.step.id === id).map((r) => r.rest.best))]));
  const of = new Map(left.map((s) => [s.id, Math.max(-Infinity, ...s.after.map((id) => over.get(id) ?? -Infinity))]));
  const pruned = left.map((s) => ({ ...s, after: s.after.filter((id) => ids.has(id)) }));
  // Work that is to begin later still does.
  const first = readDay(said.start ?? "");
  const day = Math.max(Math.floor(now / minutesADay), first ? dayNumber(first) : -Infinity);
  return calendarOf({ steps: pruned, pairs, said: { ...said, start: dayText(dayOf(day)) }, notBefore: { all: now, of } });
}
