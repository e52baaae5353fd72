import { minutesADay, readMoment, type Moment } from "#making/calendar/dates.ts";

/** No pair lies on its lasts for longer; a year further back is a slip of the hand. */
const yearBack = 366 * minutesADay;

/** Reads when a step was done, as it was typed at `now`: within the last year, and not later than the next day. */
export function readDoneAt(text: string, now: Moment): { readonly at: Moment } | { readonly wrong: string } {
  const at = readMoment(text);
  const still = "The former time still holds.";
  if (at === undefined) return { wrong: `That is no whole date and time. ${still}` };
  if (at < now - yearBack) return { wrong: `That is more than a year ago: look at the year. ${still}` };
  if (at > now + minutesADay) return { wrong: `That is still to come: look at the date. ${still}` };
  return { at };
}
