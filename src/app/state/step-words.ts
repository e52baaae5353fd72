import { clockText } from "#base/clock.ts";
import { dateWords, dayOf, dayText, minutesADay, readMoment, type Moment } from "#making/calendar/dates.ts";
import type { Shoe, Standing, StepState } from "#making/calendar/progress.ts";
import type { StepDone } from "#making/said.ts";
import type { Step } from "#making/steps/step.ts";
import { hours } from "./making-words.ts";
import type { Able } from "./step-now.ts";

type Drying = Extract<Standing, { is: "drying" }>;

/** How long, as it is said: "12 min", "5 h 20 min", "2 days 3 h". */
export function spanWords(minutes: number): string {
  const [d, h, min] = [Math.floor(minutes / minutesADay), Math.floor(minutes / 60), minutes % 60];
  if (minutes < 120) return `${minutes}\u00a0min`;
  if (minutes < 2 * minutesADay) return `${h}\u00a0h${min === 0 ? "" : ` ${min}\u00a0min`}`;
  const over = h - 24 * d;
  return `${d}\u00a0days${over === 0 ? "" : ` ${over}\u00a0h`}`;
}

/** "19:52" today, "tomorrow 07:38", "Thu 10 December 19:57", with the year where it is another. */
export function whenWords(moment: Moment, now: Moment): string {
  const day = Math.floor(moment / minutesADay), today = Math.floor(now / minutesADay);
  const clock = clockText(moment - day * minutesADay);
  if (day === today) return clock;
  if (day === today + 1) return `tomorrow ${clock}`;
  if (day === today - 1) return `yesterday ${clock}`;
  const words = dateWords(dayText(dayOf(day)));
  const sameYear = dayOf(day).year === dayOf(today).year;
  return `${sameYear ? words.replace(/ \d+$/, "") : words} ${clock}`;
}

/** How a rest stands: how long still, from when, best from when, and before when. */
export function restWords({ soonest, best, latest }: Drying, now: Moment): string {
  const before = latest === undefined ? "" : `, before ${whenWords(latest, now)}`;
  const bestFrom = best > soonest ? `, best from ${whenWords(best, now)}` : "";
  if (now < soonest) return `${spanWords(soonest - now)} more; you can go on from ${whenWords(soonest, now)}${bestFrom}${before}`;
  if (now < best) return `you can go on; best from ${whenWords(best, now)}, in ${spanWords(best - now)}${before}`;
  if (latest === undefined) return "its time is over; you can go on";
  if (now <= latest) return `go on now${before}: ${spanWords(latest - now)} left`;
  return `too long: what comes next should have begun by ${whenWords(latest, now)}. Look at it before you go on; cement may need a fresh coat`;
}

/** Where a rest is on its way. */
type RestAt = "drying" | "can go on" | "dry" | "too long";
export const restAt = ({ soonest, best, latest }: Drying, now: Moment): RestAt => (latest !== undefined && now > latest ? "too long" : now >= best ? "dry" : now >= soonest ? "can go on" : "drying");

/** How one step stands on one shoe or on both, in words. */
function standingWords(standing: Standing, now: Moment, titleOf: (id: string) => string): string {
  if (standing.is === "done") return "done";
  if (standing.is === "drying") return `done; ${restWords(standing, now)}`;
  if (standing.is === "can begin") {
    const { best, latest } = standing;
    if (latest !== undefined && now > latest) return `can begin, but should have begun by ${whenWords(latest, now)}: look at the cement first`;
    return `can begin${best === undefined ? "" : `, best from ${whenWords(best, now)}`}${latest === undefined ? "" : `, before ${whenWords(latest, now)}`}`;
  }
  const { steps, until } = standing;
  const [first, second] = steps;
  const names = first === undefined ? "" : `waits for “${titleOf(first)}”${second === undefined ? "" : steps.length === 2 ? ` and “${titleOf(second)}”` : ` and ${steps.length - 1} more`}`;
  const rest = until === undefined ? "" : `${names ? ", and" : "waits"} until ${whenWords(until, now)}`;
  return names + rest;
}

/** Shoes that were done within so many minutes of each other rest as one. */
const together = 5;

/** Two rests that no one line tells. */
export const restApart = (a: Drying, b: Drying): boolean => Math.abs(a.soonest - b.soonest) > together;

/** How a step stands, shoe by shoe where they differ. */
export function stepWords({ left, right, both }: StepState, done: StepDone | undefined, now: Moment, titleOf: (id: string) => string): string {
  const one = Boolean(done?.left) !== Boolean(done?.right);
  const differ = done?.left && done.right && (left.is === "drying" && right.is === "drying" ? restApart(left, right) : left.is !== right.is);
  if (one || differ) return `left shoe ${standingWords(left, now, titleOf)}; right shoe ${standingWords(right, now, titleOf)}`;
  return standingWords(both, now, titleOf) + (both.is === "done" ? tickedWords(done, now) : "");
}

function tickedWords(done: StepDone | undefined, now: Moment): string {
  const at = [done?.left, done?.right].map((text) => readMoment(text ?? "")).filter((m) => m !== undefined);
  return at.length === 0 ? "" : ` ${whenWords(Math.max(...at), now)}`;
}

/** What was done, for the list of steps that can be taken back. */
export const tickWords = ({ title }: Step, shoes: readonly Shoe[], off: boolean): string => `${off ? "ticking off" : "taking back"} “${title}” on ${shoes.length === 2 ? "both shoes" : `the ${shoes[0]!} shoe`}`;

/** The same for setting right when it was done. */
export const timeWords = ({ title }: Step, shoe: Shoe): string => `setting when “${title}” was done on the ${shoe} shoe`;

/** "12 of 44 steps done; about 5 h 20 min of work left." */
export function progressWords(states: readonly StepState[], minutesLeft: number): string {
  const ticked = states.filter(({ both }) => both.is === "done" || both.is === "drying").length;
  if (ticked === states.length) return "All steps are done.";
  const left = minutesLeft < 10 ? Math.max(1, minutesLeft) : 5 * Math.round(minutesLeft / 5);
  return `${ticked === 0 ? "Nothing is done yet" : `${ticked} of ${states.length} steps done`}; about ${hours(left)} of work left, beside what dries.`;
}

/** What has to be said of a step that can begin: on which shoe, where it is one only, and by when. */
export function ableWords({ state: { left, right }, before }: Able, now: Moment): string {
  const shoe = left.is === right.is ? [] : [left.is === "can begin" ? "left shoe" : "right shoe"];
  const by = before === undefined ? [] : [now > before ? "late" : `before ${whenWords(before, now)}`];
  return shoe.length + by.length === 0 ? "" : ` (${[...shoe, ...by].join(", ")})`;
}
