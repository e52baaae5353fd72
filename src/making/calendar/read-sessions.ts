import { finding, type Finding } from "#base/findings.ts";
import { minutesADay, weekdayNames } from "./dates.ts";

/** A time at the bench that comes every week. */
export interface WeekTime {
  /** Monday 0 to Sunday 6. */
  readonly weekday: number;
  /** Minutes from midnight, to at most 1440. */
  readonly fromMin: number;
  readonly toMin: number;
}

/** Shorter ones are not counted as sessions: nothing gets done between laying out and clearing away. */
export const leastSessionMin = 20;

/**
 * The maker's week, from Monday on, without overlaps, as she wrote it: "Tue 19:00-21:30 and Sat 9–13", "weekdays 20:00 to 21:30",
 * "Mon, Thu 7-9 pm". What cannot be read becomes a finding, and the rest counts.
 */
export function readSessions(text: string): { readonly week: readonly WeekTime[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const times: WeekTime[] = [];
  /** Days named before any time is ("Mon, Thu 19-21"), and those that a time without a day belongs to ("Sat 9-12, 14-17"). */
  let open: { text: string; days: readonly number[] }[] = [];
  let last: readonly number[] = [];
  const unread = (said: string, why: Unread, word?: string): void => void findings.push(finding("sessions-unread", { text: said, why, ...(word !== undefined && { word }) }));
  for (const part of text.split(/[,;\n]/)) {
    const stretches = stretchesOf(part);
    if (last.length === 0 && open.length === 0 && daysBehind(stretches)) unread(part.trim(), "day behind");
    else for (const { said, words, time } of stretches) {
      const { days, unknown } = daysOf(words);
      if (unknown !== undefined) {
        // A word that holds figures was meant as a time.
        unread(said, /\d/.test(unknown) ? "time" : "day", unknown);
        last = [];
      } else if (!time) open.push({ text: said, days });
      else {
        const on = [...open.flatMap((o) => o.days), ...days];
        open = [];
        last = on.length > 0 ? on : last;
        if (last.length === 0) unread(said, "no day");
        else if ("wrong" in time) unread(said, "time", time.wrong);
        else if (time.toMin <= time.fromMin) findings.push(finding("sessions-backward", { text: said, ...time }));
        else if (time.toMin - time.fromMin < leastSessionMin) findings.push(finding("sessions-short", { text: said, leastMin: leastSessionMin }));
        else for (const weekday of new Set(last)) times.push({ weekday, ...time });
      }
    }
  }
  for (const o of open) unread(o.text, "no time");
  const week = merged(times, findings);
  // One complaint is enough where the only thing that was written cannot be read.
  const [only, more] = findings;
  if (week.length === 0 && only?.code === "sessions-unread" && !more) findings[0] = finding("sessions-unread", { ...only.data, alone: true });
  else if (week.length === 0 && text.trim() !== "") findings.push(finding("sessions-none", {}));
  return { week, findings };
}

type Unread = "no day" | "day" | "day behind" | "no time" | "time";

/** Words and the time that stands behind them; what stands behind the last time has none. */
interface Stretch {
  readonly said: string;
  readonly words: string;
  readonly time?: ReturnType<typeof timeOf>;
}

/** Two clock times with a dash or "to" between them, whatever their figures; not a piece of a row of dashes, which is a date. */
const fromTo = /(?<![\d:.\p{L}]|[-–—]\s*)(\d[\d:.h]*\s*(?:[ap]\.?m\.?)?)\s*(?:[-–—]|to|until|till)\s*(\d[\d:.h]*\s*(?:[ap]\.?m\.?)?)(?![\d\p{L}]|\s*[-–—])/giu;

/** "Tue 19-21 and Sat 9-13" are two. */
function stretchesOf(part: string): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let at = 0;
  for (const found of part.matchAll(fromTo)) {
    const end = found.index + found[0].length;
    stretches.push({ said: part.slice(at, end).trim(), words: part.slice(at, found.index), time: timeOf(found[1]!, found[2]!) });
    at = end;
  }
  const rest = part.slice(at).trim();
  return isFilling(rest) ? stretches : [...stretches, { said: rest, words: rest }];
}

/** "19-21 on Tue": whose the times are cannot be told where several follow, so none is guessed. */
const daysBehind = (stretches: readonly Stretch[]): boolean => stretches.length > 1 && isFilling(stretches[0]!.words) && !stretches.at(-1)!.time;

function timeOf(from: string, to: string): { readonly fromMin: number; readonly toMin: number } | { readonly wrong: string } {
  const [a, b] = [clockOf(from), clockOf(to)];
  if (!a || !b) return { wrong: (a ? to : from).trim() };
  const toMin = minutesOf(b);
  // "7-9 pm" means the evening for both; "11-1 pm" does not, nor does "19-9 pm".
  const takes = a.half === undefined && b.half !== undefined && a.hour >= 1 && a.hour <= 12;
  const alike = minutesOf(takes ? { ...a, half: b.half! } : a);
  const fromMin = takes && alike >= toMin && b.half === "p" && a.hour < 12 ? minutesOf({ ...a, half: "a" }) : alike;
  if (fromMin > minutesADay || toMin > minutesADay) return { wrong: (fromMin > minutesADay ? from : to).trim() };
  return { fromMin, toMin };
}

interface Clock {
  readonly hour: number;
  readonly minute: number;
  readonly half?: "a" | "p";
}

/** "19", "19:30", "19.30", "19h30", "7 pm", "7:30pm". */
function clockOf(text: string): Clock | undefined {
  const found = /^(\d{1,2})(?:[:.h](\d{2}))?\s*(?:h|(a|p)\.?m)?\.?$/i.exec(text.trim());
  if (!found) return undefined;
  const [hour, minute, half] = [Number(found[1]), Number(found[2] ?? 0), found[3]?.toLowerCase() as "a" | "p" | undefined];
  if (minute > 59 || hour > 24 || (half && (hour < 1 || hour > 12))) return undefined;
  return { hour, minute, ...(half && { half }) };
}

const minutesOf = ({ hour, minute, half }: Clock): number => 60 * (half ? (hour % 12) + (half === "p" ? 12 : 0) : hour) + minute;

const groups: Readonly<Record<string, readonly number[]>> = { daily: [0, 1, 2, 3, 4, 5, 6], weekdays: [0, 1, 2, 3, 4], weekday: [0, 1, 2, 3, 4], weekends: [5, 6], weekend: [5, 6] };
const fillers = new Set(["", "and", "on", "every", "each", "from", "at", "the", "&", "+", ":"]);
const isFilling = (words: string): boolean => words.toLowerCase().split(/[\s/]+/).every((word) => fillers.has(word));

/** Days named in some words; the first word that is no day, if there is one. */
function daysOf(words: string): { days: readonly number[]; unknown?: string } {
  const days: number[] = [];
  const plain = words.toLowerCase().replace(/\b(every|each) ?day\b/g, "daily").replace(/\s*(?:[-–—]|\bto\b)\s*/g, "-");
  for (const word of plain.split(/[\s/]+/).map((w) => w.replace(/[.:]$/, ""))) {
    if (fillers.has(word)) continue;
    const ends = word.split("-").map(dayNamed);
    if (groups[word]) days.push(...groups[word]);
    else if (ends.some((end) => end === undefined) || ends.length > 2) return { days, unknown: word };
    else for (let day = ends[0]!, n = ends.length === 2 ? (ends[1]! - day + 7) % 7 : 0; n >= 0; n--, day++) days.push(day % 7);
  }
  return { days };
}

/** Whole or cut to three letters or more ("Tue", "Tues", "Thur"); a plural is the same day. */
function dayNamed(word: string): number | undefined {
  const found = weekdayNames.findIndex((name) => word.length >= 3 && (name.toLowerCase().startsWith(word) || `${name.toLowerCase()}s` === word));
  return found < 0 ? undefined : found;
}

/** In order, and what overlaps made one. */
function merged(times: readonly WeekTime[], findings: Finding[]): readonly WeekTime[] {
  const week: WeekTime[] = [];
  for (const time of times.toSorted((a, b) => a.weekday - b.weekday || a.fromMin - b.fromMin || a.toMin - b.toMin)) {
    const before = week.at(-1);
    if (before && before.weekday === time.weekday && time.fromMin < before.toMin) {
      const whole = { ...before, toMin: Math.max(before.toMin, time.toMin) };
      findings.push(finding("sessions-overlap", { day: weekdayNames[time.weekday]!, fromMin: whole.fromMin, toMin: whole.toMin }));
      week[week.length - 1] = whole;
    } else week.push(time);
  }
  return week;
}
