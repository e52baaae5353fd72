import { useEffect, useMemo, useRef, useState, type ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { Moment } from "#making/calendar/dates.ts";
import type { Step } from "#making/steps/step.ts";
import { putForward, useLocalTime } from "../state/local-time.ts";
import type { MakingViewProps } from "../state/making-views.ts";
import { noTicks } from "../state/step-edits.ts";
import { keepSound, keptSound, ring } from "../state/step-sound.ts";
import { calls, clockChangeWords, restsOf, timersAt, titleWords, type Timer } from "../state/step-timers.ts";
import { restAt, restWords } from "../state/step-words.ts";
import { keepTimeSeen, keptTimeSeen } from "../state/time-seen.ts";

const ownTitle = "Lastwise";

/** Calls out when a rest is over, and shows the next one in the window's title, whatever station is open. */
export function StepBell({ desk, making: { steps } }: Pick<MakingViewProps, "desk" | "making">): ReactElement {
  const { done = noTicks } = desk.job.making;
  const now = useLocalTime();
  const rests = useMemo(() => restsOf(steps, done), [steps, done]);
  const seen = useRef<Moment>(undefined);
  const [said, say] = useState("");
  useEffect(() => {
    const called = calls(rests, seen.current ?? keptTimeSeen(now), now);
    seen.current = now;
    keepTimeSeen(now);
    if (called.length === 0) return;
    say(called.join(" "));
    if (keptSound()) void ring();
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
        {timers.map((timer) => {
          const { step, shoe, rest } = timer;
          const next = nextAfter(step.id);
          const clocks = clockChangeWords(timer, putForward);
          return (
            <li key={`${step.id} ${shoe}`} className={restAt(rest, now) === "drying" ? undefined : "ready"}>
              <p><b>{capital(step.wait?.what ?? step.title)}</b>{shoe && `, ${shoe} shoe`}: {restWords(rest, now)}.{clocks && ` ${clocks}`}</p>
              <p className="follows">After “{step.title}”{next && <>; next comes <button type="button" className="word" onClick={() => onGo(next.id)}>{next.title}</button></>}.</p>
            </li>
          );
        })}
      </ul>
      <label className="sound"><input type="checkbox" checked={sounds} onChange={(e) => {
        const on = e.target.checked;
        keepSound(on);
        sound(on);
        if (on) void ring();
      }} /> sound when one is over</label>
      <p className="follows">It sounds only while this page is open and the device is awake. What ended meanwhile is told when you come back.</p>
    </section>
  );
}
