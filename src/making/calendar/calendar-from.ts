import type { Span } from "./bench-time.ts";
import type { Calendar, Session, Stint } from "./calendar.ts";
import { dayOf, dayText, minutesADay, weekdayNames, weekdayOf } from "./dates.ts";
import { readyAt } from "./best-laid.ts";
import type { Laid } from "./fit-work.ts";
import type { WorkPlan } from "./work-plan.ts";

/** Without a first day, days are counted from a Monday: 5 January 1970 was one. */
export const someMonday = 4;

/** The sessions in which something is done, as the maker reads them; `parts` in order of time. Weeks are counted where no first day is said. */
export function calendarFrom(plan: WorkPlan, parts: readonly Laid[], sessions: readonly Span[], countsWeeks: boolean): Calendar {
  const dateOf = (time: number): string => {
    const number = Math.floor(time / minutesADay);
    return countsWeeks ? `week ${Math.floor((number - someMonday) / 7) + 1}, ${weekdayNames[weekdayOf(number)]}` : dayText(dayOf(number));
  };
  const minOf = (time: number): number => time - Math.floor(time / minutesADay) * minutesADay;
  const key = ({ step, first }: Laid): string => `${step} ${first}`;
  const total = new Map<string, number>();
  for (const part of parts) total.set(key(part), (total.get(key(part)) ?? 0) + 1);
  const told = ({ first, pairs, step }: Laid): { first?: number; pairs?: number } => (pairs < plan.pairs && plan.steps[step]!.phase !== "pattern" ? { first: first + 1, pairs } : {});
  const soFar = new Map<string, number>();
  const rests: (Omit<Session["waits"][number], "untilDate" | "untilMin"> & { readonly until: number })[] = [];
  const days = [...new Set(parts.map((part) => part.session))].map((s): Session => {
    const { from, to } = sessions[s]!;
    const stints = parts.filter((part) => part.session === s).map((part): Stint => {
      const nth = (soFar.get(key(part)) ?? 0) + 1;
      soFar.set(key(part), nth);
      const { id } = plan.steps[part.step]!;
      if (nth === total.get(key(part)) && plan.rest[part.step]! > 0) rests.push({ step: id, until: part.to + plan.rest[part.step]!, ...told(part) });
      return { step: id, fromMin: part.from - from, toMin: part.to - from, part: nth, parts: total.get(key(part))!, ...told(part) };
    });
    const waits = rests.filter(({ until }) => until > to).map(({ until, ...of }) => ({ ...of, untilDate: dateOf(until), untilMin: minOf(until) }));
    return { date: dateOf(from), fromMin: minOf(from), toMin: minOf(from) + to - from, stints, waits };
  });
  const ready = readyAt(plan, parts);
  return { sessions: days, ready: { date: dateOf(ready), min: minOf(ready) }, ...(plan.rounds > 1 && { rounds: plan.rounds, lasts: plan.lasts }) };
}
