import { useEffect, useMemo, useRef, useState, type ReactElement } from "react";
import type { Moment } from "#making/calendar/dates.ts";
import type { Step } from "#making/steps/step.ts";
import { capital } from "../state/good-words.ts";
import { useLocalTime } from "../state/local-time.ts";
import type { MakingViewProps } from "../state/making-views.ts";
import { noTicks } from "../state/step-edits.ts";
import { keepSound, keptSound, ring } from "../state/step-sound.ts";
import { calls, restsOf, timersAt, titleWords, type Timer } from "../state/step-timers.ts";
import { restAt, restWords } from "../state/step-words.ts";

const ownTitle = "Lastwise";

/** Calls out when a rest is over, and shows the next one in the window's title, whatever station is open. */
export function StepBell({ desk, making: { steps } }: Pick<MakingViewProps, "desk" | "making">): ReactElement {
  const { done = noTicks } = desk.job.making;
  const now = useLocalTime();
  const rests = useMemo(() => restsOf(steps, done), [steps, done]);
  const seen = useRef(now);
  const [said, say] = useState("");
  useEffect(() => {
    const called = calls(rests, seen.current, now);
    seen.current = now;
    if (called.length === 0) return;
    say(called.join(" "));
    if (keptSound()) ring();
  }, [rests, now]);
  const title = titleWords(rests, now);
  useEffect(() => {
    document.title = title === undefined ? ownTitle : `${title} · ${ownTitle}`;
    return () => {
      document.title = ownTitle;
    };
  }, [title]);
  return <p className="unseen" role="status" aria-label="what has dried">{said}</p>;
}

/** Everything that dries or rests, what asks for hands first on top. */
export function StepTimers({ rests, now, nextAfter, onGo }: { readonly rests: readonly Timer[]; readonly now: Moment; readonly nextAfter: (step: string) => Step | undefined; readonly onGo: (step: string) => void }): ReactElement | null {
  const [sounds, sound] = useState(keptSound);
  const timers = timersAt(rests, now);
  if (timers.length === 0) return null;
  return (
    <section className="timers" aria-label="What dries and rests">
      <ul>
        {timers.map(({ step, rest }) => {
          const next = nextAfter(step.id);
          return (
            <li key={step.id} className={restAt(rest, now) === "drying" ? undefined : "ready"}>
              <p><b>{capital(step.wait?.what ?? step.title)}</b>: {restWords(rest, now)}.</p>
              <p className="follows">After “{step.title}”{next && <>; next comes <button type="button" className="word" onClick={() => onGo(next.id)}>{next.title}</button></>}.</p>
            </li>
          );
        })}
      </ul>
      <label className="sound"><input type="checkbox" checked={sounds} onChange={(e) => {
        const on = e.target.checked;
        keepSound(on);
        sound(on);
        if (on) ring();
      }} /> sound when one is over</label>
    </section>
  );
}
