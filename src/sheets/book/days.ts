import { minutesWords } from "#making/amounts/time-words.ts";
import type { Calendar } from "#making/calendar/calendar.ts";
import { calendarOf } from "#making/calendar/calendar-of.ts";
import type { Phase, Step } from "#making/steps/step.ts";
import type { Block, Line } from "./block.ts";
import type { Book } from "./book.ts";
import { barsLine, daysAxis, labelsLine, namedEvery, type Stretch } from "./days-bars.ts";
import { waitWords } from "./numbers.ts";
import { phaseWords } from "./steps.ts";
import { columnsFor, tableBlocks } from "./table.ts";
import { heading, lines, small, smallStrong } from "./words.ts";

/** Where the maker did not say when she works, days are shown as if she worked at these times. */
const assumed = "daily 19:00-22:00";
const textMm = [25, 17, 21, 20] as const;
const firstMm = textMm.reduce((sum, mm) => sum + mm, 0);

/** How the days go, one line for each stretch of the work: hours of one pair as the cost has them, what dries, and both along the times at the bench. Nothing where the work fits into none. */
export function daysBlocks({ input: { making: { calendar, steps, cost } } }: Book, width: number): readonly Block[] {
  const plan = calendar ?? calendarOf({ steps, pairs: 1, said: { sessions: assumed } }).calendar;
  if (!plan || plan.sessions.length === 0) return [];
  const axis = daysAxis(plan, width - firstMm, calendar !== undefined);
  const every = namedEvery(axis);
  const told = `${calendar ? "Each column is one of your times at the bench" : "As if you worked every evening from 19:00 to 22:00; each column is one of them"}${every > 1 ? `; one in ${every} is named` : ""}. A box is work, the line below it what dries or rests meanwhile.`;
  const columns = columnsFor(width, [
    { head: "", mm: textMm[0], letters: smallStrong },
    { head: "Steps", mm: textMm[1], letters: small },
    { head: "One pair", mm: textMm[2], letters: small },
    { head: "Dries", mm: textMm[3], letters: small },
    { head: "" },
  ]);
  const rows = phasesOf(steps).map((phase) => {
    const own = steps.filter((s) => s.phase === phase), rests = restMin(own);
    const minutes = cost.work.find((w) => w.phase === phase)?.minutes ?? 0;
    return [phaseWords[phase], placesOf(steps, own), minutesWords(minutes), rests > 0 ? waitWords(rests) : "", [barsLine(axis, stretchOf(plan, own))] as readonly Line[]];
  });
  const [head, ...table] = tableBlocks(columns, rows, { whole: true, close: true });
  return [
    { cells: [{ x: 0, lines: [...lines("How the days go", width, heading), ...lines(told, width, small)] }], keep: true, gapMm: 3 },
    { ...head!, gapMm: 1, cells: [...head!.cells, { x: firstMm, lines: [labelsLine(axis)] }] },
    ...table,
  ];
}

const phasesOf = (steps: readonly Step[]): readonly Phase[] => [...new Set(steps.map((s) => s.phase))];

/** "9–17". */
function placesOf(steps: readonly Step[], own: readonly Step[]): string {
  const places = own.map((s) => steps.indexOf(s) + 1), first = Math.min(...places), last = Math.max(...places);
  return first === last ? String(first) : `${first}–${last}`;
}

/** When some steps are worked on, and when what they leave dries. */
function stretchOf({ sessions }: Calendar, own: readonly Step[]): Stretch {
  const work = sessions.flatMap((session, at) => session.stints.flatMap((s) => (own.some((step) => step.id === s.step) ? [{ at, step: s.step, first: s.first, fromMin: s.fromMin, toMin: s.toMin }] : [])));
  const rest = own.flatMap(({ id, wait }) => {
    // Where there are fewer lasts than pairs each round rests on its own.
    const last = new Map(work.flatMap((w) => (wait && w.step === id ? [[w.first, w] as const] : [])));
    return [...last.values()].map((w) => ({ at: w.at, fromMin: w.toMin, longMin: wait?.wellMin ?? 0 }));
  });
  return { work, rest };
}

/** The longest chain of waits, each as long as a careful maker would wait, minutes; what dries at the same time counts once. */
export function restMin(steps: readonly Pick<Step, "id" | "after" | "wait">[]): number {
  const until = new Map<string, number>();
  for (const { id, after, wait } of steps) until.set(id, Math.max(0, ...after.map((a) => until.get(a) ?? 0)) + (wait?.wellMin ?? 0));
  return Math.max(0, ...until.values());
}
