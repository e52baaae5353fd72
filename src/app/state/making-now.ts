import { useDeferredValue, useMemo, useState } from "react";
import { makingOfPair } from "#job/making.ts";
import type { Pair } from "#job/pair.ts";
import type { Making } from "#making/making.ts";
import type { MakingSaid } from "#making/said.ts";
import { isOfCalendar } from "./calendar-findings.ts";

/** What making the shown pair takes, by what the maker says now; nothing while its pieces are not cut yet. */
export function makingNow(pair: Pair, said: MakingSaid): Making | undefined {
  return pair.pieces.length === 0 ? undefined : makingOfPair(pair, said);
}

/** What the calendar is laid from, as one text: all that is said but prices, shelf, pay and ticks. */
export const laidFrom = (said: MakingSaid): string => JSON.stringify(said, (key, value: unknown) => (apart.has(key) ? undefined : value));
const apart: ReadonlySet<string> = new Set<keyof MakingSaid>(["prices", "shelf", "skins", "currency", "rate", "overhead", "asked", "done"]);

/** All but the calendar, which takes longest: hundreds of pairs fill years of evenings. */
export const withoutCalendar = (pair: Pair, said: MakingSaid): Making | undefined => makingNow(pair, { ...said, sessions: "", start: "" });

/** Lays the calendar, the steps it is of, and what is to be said of it, beside the rest. */
export function withCalendar(making: Making, laid: Making | undefined): Making {
  const findings = [...making.findings.filter((f) => !isOfCalendar(f)), ...(laid?.findings ?? []).filter(isOfCalendar)];
  return { ...making, ...(laid && { steps: laid.steps }), ...(laid?.calendar && { calendar: laid.calendar }), findings };
}

/**
 * The same for the page: prices answer at once, the calendar follows a moment later, and while something is dragged all stays that of the
 * last pair worked out in full.
 */
export function useMakingNow(pair: Pair | undefined, draft: boolean, said: MakingSaid): Making | undefined {
  const [full, setFull] = useState(pair);
  // With the same pieces it is the same pair, whatever else is said of it.
  if (!draft && full?.pieces !== pair?.pieces) setFull(pair);
  const answered = useMemo(() => full && withoutCalendar(full, said), [full, said]);
  const from = useDeferredValue(laidFrom(said));
  const ofLater = useDeferredValue(full);
  const laid = useMemo(() => ofLater && makingNow(ofLater, JSON.parse(from) as MakingSaid), [ofLater, from]);
  return useMemo(() => answered && withCalendar(answered, laid), [answered, laid]);
}
