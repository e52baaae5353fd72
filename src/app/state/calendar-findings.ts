import type { Finding } from "#base/findings.ts";
import { calendarSentences } from "#base/sentences/calendar.ts";

/** What is said of sessions, first day, lasts and minutes. */
export const isOfCalendar = ({ code }: Pick<Finding, "code">): boolean => code in calendarSentences;
