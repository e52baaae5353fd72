import { minutesADay, weekdayOf } from "./dates.ts";
import type { WeekTime } from "./read-sessions.ts";

/** A stretch of time, minutes since 1970 (or since the first Monday where no day is said). */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** What no calendar goes beyond. */
export const mostSessions = 400;

/** The maker's next sessions, from the first day of work on. */
export function sessionsFrom(week: readonly WeekTime[], firstDay: number, count = mostSessions): readonly Span[] {
  const spans: Span[] = [];
  for (let day = firstDay; week.length > 0 && spans.length < count; day++) {
    for (const { weekday, fromMin, toMin } of week) {
      if (weekday === weekdayOf(day) && spans.length < count) spans.push({ from: day * minutesADay + fromMin, to: day * minutesADay + toMin });
    }
  }
  return spans;
}

/** What is still free in each session, in order of time. */
export class BenchTime {
  readonly sessions: readonly Span[];
  readonly #free: Span[][];
  constructor(sessions: readonly Span[]) {
    this.sessions = sessions;
    this.#free = sessions.map((session) => [session]);
  }
  /** The first session that ends after this time; as many as there are where none does. */
  sessionAfter(time: number): number {
    let [low, high] = [0, this.sessions.length];
    while (low < high) {
      const mid = (low + high) >> 1;
      if (this.sessions[mid]!.to > time) high = mid;
      else low = mid + 1;
    }
    return low;
  }
  free(session: number): readonly Span[] {
    return this.#free[session]!;
  }
  /** Takes a stretch that is free. */
  take(session: number, { from, to }: Span): void {
    const free = this.#free[session]!;
    const k = free.findIndex((gap) => gap.from <= from && to <= gap.to);
    const gap = free[k]!;
    free.splice(k, 1, ...(gap.from < from ? [{ from: gap.from, to: from }] : []), ...(to < gap.to ? [{ from: to, to: gap.to }] : []));
  }
}
