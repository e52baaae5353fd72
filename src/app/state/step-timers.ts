import type { Moment } from "#making/calendar/dates.ts";
import { stepStates, type Standing } from "#making/calendar/progress.ts";
import type { StepDone } from "#making/said.ts";
import type { Step } from "#making/steps/step.ts";
import { lastsWords, restAt, restWords, whenWords } from "./step-words.ts";

/** A rest that runs, or has run, after a step that is ticked on both shoes. */
export interface Timer {
  readonly step: Step;
  readonly rest: Extract<Standing, { is: "drying" }>;
}

/** All rests after which nothing was ticked yet; those that are over and keep nobody waiting too. */
export function restsOf(steps: readonly Step[], done: Readonly<Record<string, StepDone>>): readonly Timer[] {
  return stepStates(steps, done, -Infinity).flatMap(({ step: id, both }) => {
    const step = steps.find((s) => s.id === id);
    return step && both.is === "drying" ? [{ step, rest: both }] : [];
  });
}

/** Those that are worth a line now, the one that asks for hands first on top. */
export function timersAt(rests: readonly Timer[], now: Moment): readonly Timer[] {
  const next = ({ rest }: Timer): number => (restAt(rest, now) === "drying" ? rest.soonest : restAt(rest, now) === "can go on" ? rest.best : -Infinity);
  return rests.filter(({ rest }) => now < rest.best || rest.latest !== undefined).toSorted((a, b) => next(a) - next(b));
}

/** What is to be called out when the clock goes from one moment to another. */
export function calls(rests: readonly Timer[], before: Moment, now: Moment): readonly string[] {
  return rests.flatMap(({ step: { title, wait }, rest }) => {
    const [was, is] = [restAt(rest, before), restAt(rest, now)];
    if (was === is) return [];
    if (is === "dry" && rest.latest !== undefined) return [`“${title}”: ${restWords(rest, now)}.`];
    if (is === "dry") return [`“${title}”: ${wait?.what ?? "the rest"}, its time is over. You can go on.`];
    if (is === "drying") return [];
    return [`“${title}”: ${restWords(rest, now)}.`];
  });
}

/** What stands in the window's title: the rest that ends first, if that is within three hours, or the one that is ready. */
export function titleWords(rests: readonly Timer[], now: Moment): string | undefined {
  const open = timersAt(rests, now);
  const ready = open.find(({ rest }) => rest.latest !== undefined && restAt(rest, now) === "dry");
  if (ready) return `before ${whenWords(ready.rest.latest!, now)}: go on after “${ready.step.title}”`;
  const next = open.find(({ rest }) => now < rest.best);
  if (!next) return undefined;
  const left = (now < next.rest.soonest ? next.rest.soonest : next.rest.best) - now;
  return left > 180 ? undefined : `${lastsWords(left)}: “${next.step.title}”`;
}
