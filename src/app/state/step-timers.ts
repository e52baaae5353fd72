import type { Moment } from "#making/calendar/dates.ts";
import { stepStates, type Shoe, type Standing } from "#making/calendar/progress.ts";
import type { StepDone } from "#making/said.ts";
import type { Step } from "#making/steps/step.ts";
import { restApart, restAt, restWords, spanWords, whenWords } from "./step-words.ts";

/** A rest that runs, or has run, after a step. */
export interface Timer {
  readonly step: Step;
  /** The shoe that rests, where the other does not or does at another time. */
  readonly shoe?: Shoe;
  readonly rest: Extract<Standing, { is: "drying" }>;
}

/** All rests after which nothing was ticked yet; those that are over and keep nobody waiting too. */
export function restsOf(steps: readonly Step[], done: Readonly<Record<string, StepDone>>): readonly Timer[] {
  return stepStates(steps, done, -Infinity).flatMap(({ step: id, left, right, both }): readonly Timer[] => {
    const step = steps.find((s) => s.id === id);
    if (!step) return [];
    if (both.is === "drying" && left.is === "drying" && right.is === "drying" && !restApart(left, right)) return [{ step, rest: both }];
    return ([["left", left], ["right", right]] as const).flatMap(([shoe, rest]) => (rest.is === "drying" ? [{ step, shoe, rest }] : []));
  });
}

/** "“Cement the soles”", with the shoe where it rests by itself. */
const named = ({ step, shoe }: Timer): string => `“${step.title}”${shoe === undefined ? "" : `, ${shoe} shoe`}`;

/** Those that are worth a line now, the one that asks for hands first on top. */
export function timersAt(rests: readonly Timer[], now: Moment): readonly Timer[] {
  const next = ({ rest }: Timer): number => (restAt(rest, now) === "drying" ? rest.soonest : restAt(rest, now) === "can go on" ? rest.best : -Infinity);
  return rests.filter(({ rest }) => now < rest.best || rest.latest !== undefined).toSorted((a, b) => next(a) - next(b));
}

/** What is to be called out when the clock goes from one moment to another; nothing where it is put back. */
export function calls(rests: readonly Timer[], before: Moment, now: Moment): readonly string[] {
  if (now <= before) return [];
  return rests.flatMap((timer) => {
    const { step, rest } = timer;
    const [was, is] = [restAt(rest, before), restAt(rest, now)];
    if (was === is) return [];
    if (is === "dry" && rest.latest !== undefined) return [`${named(timer)}: ${restWords(rest, now)}.`];
    if (is === "dry") return [`${named(timer)}: ${step.wait?.what ?? "the rest"}, its time is over. You can go on.`];
    if (is === "drying") return [];
    return [`${named(timer)}: ${restWords(rest, now)}.`];
  });
}

/** What stands in the window's title: the rest that ends first, if that is within three hours, or the one that is ready. */
export function titleWords(rests: readonly Timer[], now: Moment): string | undefined {
  const open = timersAt(rests, now);
  const ready = open.find(({ rest }) => rest.latest !== undefined && restAt(rest, now) === "dry");
  if (ready) return `before ${whenWords(ready.rest.latest!, now)}: go on after ${named(ready)}`;
  const next = open.find(({ rest }) => now < rest.best);
  if (!next) return undefined;
  const left = (now < next.rest.soonest ? next.rest.soonest : next.rest.best) - now;
  return left > 180 ? undefined : `${spanWords(left)}: ${named(next)}`;
}

/** What is to be minded where the clocks change while something rests: the times are told as if they did not. */
export function clockChangeWords({ step, rest }: Timer, putForward: (from: Moment, to: Moment) => number): string {
  const shift = putForward(rest.soonest - (step.wait?.leastMin ?? 0), rest.latest ?? rest.best);
  if (shift === 0) return "";
  return shift > 0 ? `The clocks are put forward meanwhile: add ${spanWords(shift)} to these times.` : `The clocks are put back meanwhile: take ${spanWords(-shift)} off these times.`;
}
