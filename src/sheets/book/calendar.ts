import { clockText } from "#base/clock.ts";
import type { Session } from "#making/calendar/calendar.ts";
import { dateWords } from "#making/calendar/dates.ts";
import { readyWords, roundsWords, stintWords, whichPairs } from "#making/calendar/stint-words.ts";
import type { Line } from "./block.ts";
import type { Book } from "./book.ts";
import type { Chapter } from "./flow.ts";
import { pairsWords } from "./numbers.ts";
import { columnsFor, tableBlocks, tickBox, type BookCell } from "./table.ts";
import { body, hanging, line, lines, small, strong } from "./words.ts";

/** More times at the bench than this fill no wall; the first so many are printed. */
const mostSessions = 60;
/** Before the date: a box to tick. */
const whenMm = 7;

/** What is done at each time at the bench, and what dries until the next. */
export function calendarChapter({ input: { making }, room: { width } }: Book): Chapter | undefined {
  const { calendar, steps, pairs } = making;
  if (!calendar || calendar.sessions.length === 0) return undefined;
  const numberOf = (id: string): number => steps.findIndex((s) => s.id === id) + 1;
  const named = (id: string): string => steps.find((s) => s.id === id)?.title ?? id;
  const columns = columnsFor(width, [{ head: "", mm: whenMm }, { head: "When", mm: 44, letters: strong }, { head: "Steps" }, { head: "Dries or rests until", mm: 44 }]);
  const stints = ({ stints: all, fromMin }: Session, mm: number): readonly Line[] =>
    all.flatMap((s) => hanging(clockText(fromMin + s.fromMin), `${numberOf(s.step)}  ${[named(s.step), stintWords(s, pairs)].filter(Boolean).join(", ")}`, mm, body, 11));
  const rows = calendar.sessions.slice(0, mostSessions).map((session): readonly BookCell[] => [
    [tickBox(3.6)],
    [...lines(dateWords(session.date), 41, strong), ...lines(`${clockText(session.fromMin)} to ${clockText(session.toMin)}`, 41, body)],
    stints(session, columns[2]!.mm - 3),
    session.waits.flatMap((w) => hanging(String(numberOf(w.step)), [`${dateWords(w.untilDate)}, ${clockText(w.untilMin)}`, whichPairs(w, pairs)].filter(Boolean).join(", "), 44, small, 6)),
  ]);
  const rounds = roundsWords(calendar, pairs);
  const told = `${pairsWords(pairs)}, ready on ${readyWords(calendar)}. Numbers are those of the steps.${rounds ? ` ${rounds}` : ""}${calendar.sessions.length > mostSessions ? ` These are the first ${mostSessions} of ${calendar.sessions.length} times at the bench; all of them stand at the station Making and in report.json.` : ""}`;
  const [head, ...table] = tableBlocks(columns, rows, { gapMm: 2 });
  return { title: "Calendar", joins: true, blocks: [{ cells: [{ x: 0, lines: lines(told, width, small) }], keep: true }, head!, ...table.map((b, i) => ({ ...b, parts: true, again: [line(dateWords(calendar.sessions[i]!.date), strong, whenMm), line("goes on", small, whenMm)] }))] };
}
