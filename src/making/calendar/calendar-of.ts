import { finding, type Finding } from "#base/findings.ts";
import { mostSessions, sessionsFrom } from "./bench-time.ts";
import { bestLaid } from "./best-laid.ts";
import { calendarFrom, someMonday } from "./calendar-from.ts";
import type { Calendar } from "./calendar.ts";
import { dayNumber, readDay, type Day, type Moment } from "./dates.ts";
import { batchOf, batchesOf, spanOf, type Batch } from "./fit-chain.ts";
import { readLasts } from "./lasts.ts";
import { readSessions, type WeekTime } from "./read-sessions.ts";
import type { MakingSaid } from "../said.ts";
import { stepMinutes } from "./step-minutes.ts";
import type { Step } from "../steps/step.ts";
import { leastInRounds, stepLinks, type StepLinks, type WorkAsked } from "./step-links.ts";
import { workPlan, type WorkPlan } from "./work-plan.ts";

/** What is to be fitted: the steps of one pair, how many pairs go through them together, and when the maker works. */
export interface CalendarInput {
  readonly steps: readonly Step[];
  readonly pairs: number;
  readonly said: Pick<MakingSaid, "minutes" | "sessions" | "start" | "lasts">;
  /** Where work goes on: nothing begins before `all`, nor a step before what rests already is over. Only with a first day of work. */
  readonly notBefore?: { readonly all: Moment; readonly of: ReadonlyMap<string, Moment> };
}

/**
 * Fits the work of all pairs into the maker's sessions around what has to dry. None where no sessions are said, or where it cannot be
 * done in them; then a finding says why. Method: docs/method/calendar.md.
 */
export function calendarOf({ steps, pairs, said, notBefore }: CalendarInput): { readonly calendar?: Calendar; readonly findings: readonly Finding[] } {
  const { week, start, lasts, findings } = whenOf(said, pairs);
  if (week.length === 0 || steps.length === 0) return { findings };
  const without = (why: Finding): { readonly findings: readonly Finding[] } => ({ findings: [...findings, why] });
  const soonest = steps.map((step) => (notBefore && start ? Math.max(notBefore.all, notBefore.of.get(step.id) ?? -Infinity) : -Infinity));
  const asked = { steps, pairs, lasts, minutesOf: stepMinutes(steps, said.minutes).of, soonest };
  const links = stepLinks(asked);
  const sessions = sessionsFrom(week, start ? dayNumber(start) : someMonday);
  // Rounds that cannot end in these sessions are not laid out at all: there may be thousands.
  if (leastInRounds(asked, links) > sessions.at(-1)!.to - sessions[0]!.from) return without(tooLong(asked, links, week));
  const plan = workPlan(asked, links);
  const longestMin = Math.max(...week.map((time) => time.toMin - time.fromMin));
  const batches: (readonly Batch[] | undefined)[] = [];
  for (const group of plan.groups) {
    const chain = group.length > 1 ? batchesOf(plan, group, longestMin) : undefined;
    if (group.length > 1 && !chain) return without(whyNot(plan, group, longestMin));
    batches.push(chain);
  }
  const laid = bestLaid(plan, batches, sessions);
  return laid ? { calendar: calendarFrom(plan, laid, sessions, start === undefined), findings } : without(tooLong(asked, links, week));
}

/** When the maker works and with how many pairs of lasts, as she wrote it; findings tell what cannot be read. */
function whenOf(said: CalendarInput["said"], pairs: number): { readonly week: readonly WeekTime[]; readonly start?: Day; readonly lasts: number; readonly findings: readonly Finding[] } {
  const { week, findings: unread } = readSessions(said.sessions ?? "");
  const text = said.start?.trim() ?? "";
  const start = readDay(text);
  const { lasts, findings: uncounted } = readLasts(said, pairs);
  const findings = [...unread, ...(text !== "" && !start ? [finding("start-unread", { text })] : []), ...(start && !said.sessions?.trim() ? [finding("start-alone", {})] : []), ...uncounted];
  return { week, ...(start && { start }), lasts, findings };
}

function whyNot(plan: WorkPlan, group: readonly number[], longestMin: number): Finding {
  const titles = group.map((k) => plan.steps[k]!.title);
  const needMin = spanOf(batchOf(plan, group, 1));
  return needMin === undefined ? finding("chain-too-slow", { steps: titles }) : finding("chain-too-long", { steps: titles, needMin, longestMin });
}

function tooLong({ steps, pairs, minutesOf }: WorkAsked, { shares }: StepLinks, week: readonly WeekTime[]): Finding {
  const minutes = steps.reduce((sum, { id, phase }) => sum + minutesOf.get(id)! * (phase === "pattern" ? 1 : pairs), 0);
  return finding("calendar-too-long", { hours: Math.round(minutes / 60), pairs, rounds: Math.max(1, shares.length), sessions: mostSessions, weeks: Math.floor(mostSessions / week.length) });
}
