import { clockText, two } from "#base/clock.ts";

/** A day of the civil calendar (Gregorian, also before it began); month and day from 1. */
export interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** Days of the week as they are numbered here: Monday is 0. */
export const weekdayNames = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"] as const;
const monthNames = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"] as const;
export const minutesADay = 1440;

const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
const daysIn = (year: number, month: number): number => (month === 2 ? (isLeap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31);

/**
 * Days since 1 January 1970, which is 0. Years are counted from 1 March, so that the leap day is a year's last and months follow one
 * another by (153 m + 2) / 5 days (the usual arithmetic of civil dates, from memory).
 */
export function dayNumber({ year, month, day }: Day): number {
  const y = month > 2 ? year : year - 1;
  const m = month > 2 ? month - 3 : month + 9;
  return 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + Math.floor((153 * m + 2) / 5) + day - 719469;
}

/** The day with this number; the way back from {@link dayNumber}. */
export function dayOf(number: number): Day {
  const since = number + 719468;
  const era = Math.floor(since / 146097);
  const inEra = since - 146097 * era;
  const inYears = Math.floor((inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36524) - Math.floor(inEra / 146096)) / 365);
  const inYear = inEra - (365 * inYears + Math.floor(inYears / 4) - Math.floor(inYears / 100));
  const m = Math.floor((5 * inYear + 2) / 153);
  const month = m < 10 ? m + 3 : m - 9;
  return { year: 400 * era + inYears + (month <= 2 ? 1 : 0), month, day: inYear - Math.floor((153 * m + 2) / 5) + 1 };
}

/** Monday 0 to Sunday 6; 1 January 1970 was a Thursday. */
export function weekdayOf(number: number): number {
  return (((number + 3) % 7) + 7) % 7;
}

/** Reads "2026-12-01"; nothing where that is no day of the years 1 to 9999. */
export function readDay(text: string): Day | undefined {
  const found = /^\s*(\d{4})-(\d{1,2})-(\d{1,2})\s*$/.exec(text);
  if (!found) return undefined;
  const [year, month, day] = [Number(found[1]), Number(found[2]), Number(found[3])];
  return year >= 1 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month) ? { year, month, day } : undefined;
}

/** "2026-12-01". */
export function dayText({ year, month, day }: Day): string {
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;
}

/** "Tue 1 December 2026" for "2026-12-01"; what is no date ("week 1, Tuesday") stays as it is. */
export function dateWords(date: string): string {
  const day = readDay(date);
  return day ? `${weekdayNames[weekdayOf(dayNumber(day))]!.slice(0, 3)} ${day.day} ${monthNames[day.month - 1]} ${day.year}` : date;
}

/** A moment on the maker's own clock: minutes since 1970 began there. A clock put forward or back for summer is not followed. */
export type Moment = number;

/** Reads "2026-12-01T19:40"; seconds are left off. Nothing where it cannot be read. */
export function readMoment(text: string): Moment | undefined {
  const found = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})(?::\d{2})?$/.exec(text);
  const day = found && readDay(found[1]!);
  const [hour, minute] = [Number(found?.[2]), Number(found?.[3])];
  return day && hour < 24 && minute < 60 ? dayNumber(day) * minutesADay + 60 * hour + minute : undefined;
}

/** "2026-12-01T19:40". */
export function momentText(moment: Moment): string {
  const number = Math.floor(moment / minutesADay);
  return `${dayText(dayOf(number))}T${clockText(moment - number * minutesADay)}`;
}
