import type { Calendar, Session } from "#making/calendar/calendar.ts";
import { dateWords, dayNumber, minutesADay, readDay, weekdayNames } from "#making/calendar/dates.ts";
import type { Line } from "./block.ts";
import { printedWidth } from "./measure.ts";

/** Work and what dries of one stretch; `at` is the session's place, minutes are from its begin. */
export interface Stretch {
  readonly work: readonly { readonly at: number; readonly fromMin: number; readonly toMin: number }[];
  readonly rest: readonly { readonly at: number; readonly fromMin: number; readonly longMin: number }[];
}

/** Times at the bench side by side, each as wide as the next, with a little between them for the time away. */
export interface DaysAxis {
  readonly spans: readonly { readonly from: number; readonly to: number }[];
  readonly labels: readonly (readonly [string, string])[];
  readonly pitchMm: number;
  readonly benchMm: number;
}

/** Time away is shown where columns are wider than this, mm. */
const narrowMm = 3;

export function daysAxis({ sessions }: Calendar, width: number, own: boolean): DaysAxis {
  const pitchMm = width / sessions.length, first = dayOf(sessions[0]!);
  return {
    spans: sessions.map((s) => ({ from: dayOf(s) * minutesADay + s.fromMin, to: dayOf(s) * minutesADay + s.toMin })),
    labels: sessions.map((s) => (own ? labelOf(s.date) : [`day ${dayOf(s) - first + 1}`, ""])),
    pitchMm,
    benchMm: pitchMm > narrowMm ? 0.84 * pitchMm : pitchMm,
  };
}

/** Number of a session's day; of "week 2, Tuesday" counted from a Monday. */
function dayOf({ date }: Session): number {
  const day = readDay(date), week = /^week (\d+), (\w+)$/.exec(date);
  return day ? dayNumber(day) : week ? 7 * Number(week[1]) + weekdayNames.findIndex((name) => name === week[2]) : 0;
}

/** "Tue" and "1 Dec" of a date, "Tue" and "week 2" where there is none. */
function labelOf(date: string): readonly [string, string] {
  const week = /^(week \d+), (\w{3})/.exec(date);
  if (week) return [week[2]!, week[1]!];
  const [weekday = "", day = "", month = ""] = dateWords(date).split(" ");
  return [weekday, `${day} ${month.slice(0, 3)}`];
}

/** How far to the right a time lies, mm. */
function placeOf({ spans, pitchMm, benchMm }: DaysAxis, time: number): number {
  const i = spans.findLastIndex((s) => s.from <= time), span = spans[Math.max(0, i)]!, next = spans[i + 1];
  if (time <= span.to) return Math.max(0, i) * pitchMm + (benchMm * Math.max(0, time - span.from)) / (span.to - span.from);
  return i * pitchMm + benchMm + (next ? ((pitchMm - benchMm) * (time - span.to)) / (next.from - span.to) : pitchMm - benchMm);
}

const labelMm = 2.1;

const widestOf = ({ labels }: DaysAxis): number => Math.max(...labels.flat().map((text) => printedWidth(text, labelMm, true))) + 1.5;

/** Where times at the bench stand closer than words, only every so many are named. */
export const namedEvery = (axis: DaysAxis): number => Math.max(1, Math.ceil(widestOf(axis) / axis.pitchMm));

/** When each time at the bench is. */
export function labelsLine(axis: DaysAxis): Line {
  const { labels, pitchMm } = axis, widest = widestOf(axis), every = namedEvery(axis), two = labels.some(([, below]) => below !== "");
  return {
    highMm: two ? 6.6 : 3.6,
    ink: (ink, x, top) => labels.forEach((label, i) => {
      if (i % every !== 0 || i * pitchMm + widest - 1.5 > pitchMm * labels.length) return;
      label.forEach((text, row) => text && ink.text(text, x + i * pitchMm, top - 2.6 - 3 * row, labelMm, { bold: true }));
    }),
  };
}

const rowMm = 4.4;
const boxMm = 2.4;
/** What lies closer than this is drawn as one, and nothing smaller; mm. */
const closeMm = 0.3;
const leastMm = 1.2;

/** Boxes for the work, thin lines below them for what dries, between the borders of the times at the bench. */
export function barsLine(axis: DaysAxis, { work, rest }: Stretch): Line {
  const at = (place: number, min: number): number => placeOf(axis, axis.spans[place]!.from + min);
  const boxes = asOne(work.map((w) => [at(w.at, w.fromMin), at(w.at, w.toMin)]));
  const dries = asOne(rest.map((r) => [at(r.at, r.fromMin), at(r.at, r.fromMin + r.longMin)]));
  const ends = axis.pitchMm * axis.spans.length;
  return {
    highMm: rowMm,
    ink: (ink, x, top) => {
      ink.style(0.35);
      for (const [from, to] of boxes) ink.box(x + from, top - boxMm - 0.3, Math.min(to, ends) - from, boxMm);
      ink.style(0.25);
      for (const [from, to] of dries) {
        const y = top - boxMm - 1.1, end = x + Math.min(to, ends);
        ink.line(x + from, y, end, y);
        ink.line(end, y - 0.4, end, y + 0.4);
      }
    },
  };
}

/** Stretches in their order, none shorter than can be seen, those that touch as one. */
function asOne(all: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const out: [number, number][] = [];
  for (const [from, end] of [...all].sort((a, b) => a[0] - b[0])) {
    const last = out.at(-1), to = Math.max(end, from + leastMm);
    if (last && from - last[1] < closeMm) last[1] = Math.max(last[1], to);
    else out.push([from, to]);
  }
  return out;
}
