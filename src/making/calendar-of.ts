import { finding, type Finding } from "#base/findings.ts";
import type { Calendar } from "./calendar.ts";
import { readDay } from "./dates.ts";
import { readSessions } from "./read-sessions.ts";
import type { MakingSaid } from "./said.ts";
import type { Step } from "./step.ts";

/** What is to be fitted: the steps of one pair, how many pairs go through them together, and when the maker works. */
export interface CalendarInput {
  readonly steps: readonly Step[];
  readonly pairs: number;
  readonly said: MakingSaid;
}

/**
 * Fits the work of all pairs into the maker's sessions around what has to dry. None where no sessions are said, or where it cannot be
 * done in them; then a finding says why. Method: docs/method/calendar.md.
 */
export function calendarOf({ said }: CalendarInput): { readonly calendar?: Calendar; readonly findings: readonly Finding[] } {
  const { week, findings: unread } = readSessions(said.sessions ?? "");
  const start = said.start?.trim();
  const findings = [...unread, ...(start && !readDay(start) ? [finding("start-unread", { text: start })] : [])];
  if (week.length === 0) return { findings };
  return { findings };
}
