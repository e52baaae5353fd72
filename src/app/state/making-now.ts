import { useDeferredValue, useMemo, useState } from "react";
import { makingOfPair } from "#job/making.ts";
import type { Pair } from "#job/pair.ts";
import type { Making } from "#making/making.ts";
import type { MakingSaid } from "#making/said.ts";
import { isOfCalendar } from "./calendar-findings.ts";
import { sameButMaking } from "./same-but-making.ts";

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

/** A pair made anew for a price: of the same job but for what is said of making, and so the same for all that making asks. Another leather may cut the same pieces, and yet takes other things. */
export const sameForMaking = (a: Pair, b: Pair): boolean => a.pieces === b.pieces && sameButMaking(a.job, b.job);

/**
 * The same for the page: prices answer at once, the calendar follows a moment later, and while something is dragged all stays that of the
 * last pair worked out in full.
 */
export function useMakingNow(pair: Pair | undefined, draft: boolean, said: MakingSaid): Making | undefined {
  const [full, setFull] = useState(pair);
  if (!draft && full !== pair && !(full && pair && sameForMaking(full, pair))) setFull(pair);
  const answered = useMemo(() => full && withoutCalendar(full, said), [full, said]);
  const from = useDeferredValue(laidFrom(said));
  const ofLater = useDeferredValue(full);
  const laid = useMemo(() => ofLater && makingNow(ofLater, JSON.parse(from) as MakingSaid), [ofLater, from]);
  return useMemo(() => answered && withCalendar(answered, laid), [answered, laid]);
}
