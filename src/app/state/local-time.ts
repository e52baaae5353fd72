import { useSyncExternalStore } from "react";
import { dayNumber, minutesADay, type Moment } from "#making/calendar/dates.ts";

/** The minute it is on the maker's own clock; the one place that looks at it. */
export function localMoment(): Moment {
  const now = new Date();
  return dayNumber({ year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() }) * minutesADay + 60 * now.getHours() + now.getMinutes();
}

function listen(ear: () => void): () => void {
  const every = setInterval(ear, 2000);
  // A page that slept behind another wakes up with the right time.
  document.addEventListener("visibilitychange", ear);
  return () => {
    clearInterval(every);
    document.removeEventListener("visibilitychange", ear);
  };
}

/** The minute it is, kept up to date. */
export const useLocalTime = (): Moment => useSyncExternalStore(listen, localMoment);
