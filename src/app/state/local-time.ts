import { useSyncExternalStore } from "react";
import { dayNumber, minutesADay, type Moment } from "#making/calendar/dates.ts";

/** The minute it is on the maker's own clock; the one place that looks at it. */
function localMoment(): Moment {
  const now = new Date();
  return dayNumber({ year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() }) * minutesADay + 60 * now.getHours() + now.getMinutes();
}

const ears = new Set<() => void>();
let ticking: ReturnType<typeof setInterval> | undefined;

function tellAll(): void {
  for (const ear of ears) ear();
}

/** One beat for all who listen, so that every line on the page turns over together; none while nobody does. */
export function listenToTime(ear: () => void): () => void {
  ears.add(ear);
  if (ticking === undefined) {
    ticking = setInterval(tellAll, 2000);
    // A page that slept behind another wakes up with the right time.
    document.addEventListener("visibilitychange", tellAll);
  }
  return () => {
    ears.delete(ear);
    if (ears.size > 0) return;
    clearInterval(ticking);
    ticking = undefined;
    document.removeEventListener("visibilitychange", tellAll);
  };
}

/** The minute it is, kept up to date. */
export const useLocalTime = (): Moment => useSyncExternalStore(listenToTime, localMoment);

/** By how many minutes the maker's clock is put forward between two of its moments, for summer; below 0 where it is put back. */
export function putForward(from: Moment, to: Moment): number {
  const offset = (moment: Moment): number => {
    const day = Math.floor(moment / minutesADay);
    return new Date(1970, 0, 1 + day, 0, moment - day * minutesADay).getTimezoneOffset();
  };
  return offset(from) - offset(to);
}
