import { useLayoutEffect, useMemo, useRef, type ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { Moment } from "#making/calendar/dates.ts";
import { shoes, stepStates, type Shoe } from "#making/calendar/progress.ts";
import { lastsOf } from "#making/calendar/lasts.ts";
import { stepMinutes, timesDone, wholeMinutes } from "#making/calendar/step-minutes.ts";
import { phases, type Phase, type Step } from "#making/steps/step.ts";
import { useLocalTime } from "../state/local-time.ts";
import { hours } from "../state/making-words.ts";
import type { MakingSight } from "../state/making-sight.ts";
import type { MakingViewProps } from "../state/making-views.ts";
import { clearTicks, noTicks, setTick } from "../state/step-edits.ts";
import { canDoNow } from "../state/step-now.ts";
import { restsOf } from "../state/step-timers.ts";
import { ableWords, progressWords, tickWords, timeWords } from "../state/step-words.ts";
import { MakingStep } from "./making-step.tsx";
import { StepTimers } from "./making-timers.tsx";

/** So many steps that can begin are named; the others are told by number. */
const mostNamed = 6;

/** The steps of this pair by phase, ticked off shoe by shoe; what dries, and what can be done now, on top. */
export function MakingSteps({ desk, making, sight: { opened: open, onOpened: setOpen } }: Pick<MakingViewProps, "desk" | "making"> & { readonly sight: MakingSight }): ReactElement {
  const { steps, cautions, pairs } = making;
  const { done = noTicks, minutes: own } = desk.job.making;
  const now = useLocalTime();
  const states = useMemo(() => new Map(stepStates(steps, done, now).map((s) => [s.step, s])), [steps, done, now]);
  const minutes = useMemo(() => stepMinutes(steps, own).of, [steps, own]);
  const rests = useMemo(() => restsOf(steps, done), [steps, done]);
  const numbers = new Map(steps.map((s, k) => [s.id, k + 1]));
  const titleOf = (id: string): string => steps.find((s) => s.id === id)?.title ?? id;
  // A pattern is made once for all.
  const apair = (phase: Phase): string => (pairs === 1 || phase === "pattern" ? "" : " a pair");
  // The same minutes as the calendar's.
  const lasts = lastsOf(desk.job.making, pairs);
  const left = steps.reduce((sum, s) => sum + (wholeMinutes(minutes.get(s.id)!, timesDone(s, pairs, lasts)) * shoes.filter((shoe) => !done[s.id]?.[shoe]).length) / 2, 0);
  const able = canDoNow(steps, states, making.calendar);
  const held = useHeldRow(done);
  const tick = (step: Step, of: readonly Shoe[], at: Moment | undefined): void => {
    held(step.id);
    desk.change(setTick(desk.job, step.id, of, at), tickWords(step, of, at !== undefined));
  };
  const goTo = (id: string): void => {
    setOpen(new Set([...open, id]));
    const line = document.getElementById(`step-${id}`);
    line?.scrollIntoView({ block: "start" });
    line?.querySelector<HTMLButtonElement>("h4 button")?.focus({ preventScroll: true });
  };
  return (
    <section className="making-page work-steps" aria-label="Steps">
      <h2>{pairs === 1 ? "Both shoes, step by step" : `All ${pairs} pairs, step by step`}</h2>
      <p className="follows">{progressWords([...states.values()], left)}{Object.keys(done).length > 0 && <> <button type="button" className="word" onClick={() => desk.change(clearTicks(desk.job), "taking all ticks out")}>Take all ticks out</button></>}</p>
      {pairs > 1 && <p className="follows">A tick is for all {pairs} pairs: set it when the last of them has come so far. What dries is counted from then.</p>}
      <StepTimers rests={rests} now={now} nextAfter={(id) => steps.find((s) => s.after.includes(id))} onGo={goTo} />
      {able.length > 0 && (
        <p className="can-now">You can do now: {able.slice(0, mostNamed).map((a, k) => <span key={a.step.id}>{k > 0 && ", "}<button type="button" className="word" onClick={() => goTo(a.step.id)}>{a.step.title}</button>{ableWords(a, now)}</span>)}{able.length > mostNamed && ` and ${able.length - mostNamed} more`}.</p>
      )}
      {phases.map((phase) => {
        const here = steps.filter((s) => s.phase === phase);
        if (here.length === 0) return null;
        return (
          <section key={phase} aria-label={capital(phase)}>
            <h3>{capital(phase)}, {hours(here.reduce((sum, s) => sum + minutes.get(s.id)!, 0))}{apair(phase)}</h3>
            <ul>
              {here.map((step) => (
                <MakingStep
                  key={step.id} step={step} number={numbers.get(step.id)!} takes={`${hours(Math.max(1, minutes.get(step.id)!))}${apair(phase)}`} state={states.get(step.id)!} done={done[step.id]} now={now} titleOf={titleOf}
                  cautions={cautions.filter((c) => c.steps.includes(step.id))} open={open.has(step.id)}
                  onOpen={(is) => setOpen(new Set(is ? [...open, step.id] : [...open].filter((id) => id !== step.id)))} onTick={(of, at) => tick(step, of, at)}
                  onSetTime={(shoe, at) => desk.change(setTick(desk.job, step.id, [shoe], at), timeWords(step, shoe))}
                />
              ))}
            </ul>
          </section>
        );
      })}
    </section>
  );
}

/** Keeps a step where it stands on the screen while what dries above it comes and goes: hold it, then change `by`. */
function useHeldRow(by: unknown): (step: string) => void {
  const held = useRef<{ readonly row: Element; readonly top: number }>(undefined);
  useLayoutEffect(() => {
    if (!held.current) return;
    const { row, top } = held.current;
    held.current = undefined;
    row.closest(".view")?.scrollBy({ top: row.getBoundingClientRect().top - top, behavior: "instant" });
  }, [by]);
  return (step) => {
    const row = document.getElementById(`step-${step}`);
    held.current = row ? { row, top: row.getBoundingClientRect().top } : undefined;
  };
}
