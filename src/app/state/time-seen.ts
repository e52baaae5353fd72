import type { Moment } from "#making/calendar/dates.ts";

const key = "lastwise clock seen";

/** When the page last looked at the clock, so that what ended while it was shut is called when it is opened again; `now` where it never did. */
export function keptTimeSeen(now: Moment): Moment {
  try {
    const kept = Number(localStorage.getItem(key) ?? "nothing");
    return Number.isFinite(kept) ? kept : now;
  } catch {
    return now;
  }
}

export function keepTimeSeen(now: Moment): void {
  try {
    localStorage.setItem(key, String(now));
  } catch {
    // Where the browser keeps nothing, nothing that ended meanwhile is called.
  }
}
