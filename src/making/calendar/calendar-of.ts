import { finding, type Finding } from "#base/findings.ts";
import { mostSessions, sessionsFrom } from "./bench-time.ts";
import { bestLaid } from "./best-laid.ts";
import { calendarFrom, someMonday } from "./calendar-from.ts";
import type { Calendar } from "./calendar.ts";
import { dayNumber, readDay, type Moment } from "./dates.ts";
import { roundOf, roundsOf, spanOf, type Round } from "./fit-chain.ts";
import { readSessions, type WeekTime } from "./read-sessions.ts";
import type { MakingSaid } from "../said.ts";
import { stepMinutes } from "./step-minutes.ts";
import type { Step } from "../steps/step.ts";
import { allMinutes, workPlan, type WorkPlan } from "./work-plan.ts";

/** What is to be fitted: the steps of one pair, how many pairs go through them together, and when the maker works. */
export interface CalendarInput {
  readonly steps: readonly Step[];
  readonly pairs: number;
  readonly said: Pick<MakingSaid, "minutes" | "sessions" | "start">;
  /** Where work goes on: nothing begins before `all`, nor a step before what rests already is over. Only with a first day of work. */
  readonly notBefore?: { readonly all: Moment; readonly of: ReadonlyMap<string, Moment> };
}

/**
 * Fits the work of all pairs into the maker's sessions around what has to dry. None where no sessions are said, or where it cannot be
 * done in them; then a finding says why. Method: docs/method/calendar.md.
 */
export function calendarOf({ steps, pairs, said, notBefore }: CalendarInput): { readonly calendar?: Calendar; readonly findings: readonly Finding[] } {
  const { week, findings: unread } = readSessions(said.sessions ?? "");
  const start = said.start?.trim() ? readDay(said.start) : undefined;
  const findings = [...unread, ...(said.start?.trim() && !start ? [finding("start-unread", { text: said.start.trim() })] : [])];
  if (week.length === 0 || steps.length === 0) return { findings };
  const soonest = steps.map((step) => (notBefore && start ? Math.max(notBefore.all, notBefore.of.get(step.id) ?? -Infinity) : -Infinity));
  const plan = workPlan(steps, pairs, stepMinutes(steps, said.minutes).of, soonest);
  const longestMin = Math.max(...week.map((time) => time.toMin - time.fromMin));
  const rounds: (readonly Round[] | undefined)[] = [];
  for (const group of plan.groups) {
    const chain = group.length > 1 ? roundsOf(plan, group, longestMin) : undefined;
    if (group.length > 1 && !chain) return { findings: [...findings, whyNot(plan, group, longestMin)] };
    rounds.push(chain);
  }
  const sessions = sessionsFrom(week, start ? dayNumber(start) : someMonday);
  const laid = bestLaid(plan, rounds, sessions);
  if (!laid) return { findings: [...findings, tooLong(plan, week)] };
  return { calendar: calendarFrom(plan, laid, sessions, start === undefined), findings };
}

function whyNot(plan: WorkPlan, group: readonly number[], longestMin: number): Finding {
  const titles = group.map((k) => plan.steps[k]!.title);
  const needMin = spanOf(roundOf(plan, group, 1));
  return needMin === undefined ? finding("chain-too-slow", { steps: titles }) : finding("chain-too-long", { steps: titles, needMin, longestMin });
}

function tooLong(plan: WorkPlan, week: readonly WeekTime[]): Finding {
  return finding("calendar-too-long", { hours: Math.round(allMinutes(plan) / 60), pairs: plan.pairs, sessions: mostSessions, weeks: Math.floor(mostSessions / week.length) });
}
