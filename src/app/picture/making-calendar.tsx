import { memo, useDeferredValue, useMemo, useState, type ReactElement } from "react";
import { clockText } from "#base/clock.ts";
import { explain } from "#base/findings.ts";
import type { Calendar, Session, Stint } from "#making/calendar/calendar.ts";
import type { Making } from "#making/making.ts";
import type { MakingSaid } from "#making/said.ts";
import type { Step } from "#making/steps/step.ts";
import { dateWords } from "#making/calendar/dates.ts";
import { readyWords, roundsWords, stintWords, whichPairs } from "#making/calendar/stint-words.ts";
import { shoes } from "#making/calendar/progress.ts";
import { isOfCalendar } from "../state/calendar-findings.ts";
import { useLocalTime } from "../state/local-time.ts";
import { hours } from "../state/making-words.ts";
import { laidFrom } from "../state/making-now.ts";
import type { MakingViewProps } from "../state/making-views.ts";
import { noTicks } from "../state/step-edits.ts";
import { calendarOfRest } from "../state/step-left.ts";
import { SessionRule } from "./session-rule.tsx";

/** Fifteen minutes: what is shorter between two stretches of work is no pause worth a line. */
const pauseMin = 15;

/** What is done at which time at the bench, and what dries meanwhile; as planned, or what is left from now on. */
export function MakingCalendar({ desk, making }: Pick<MakingViewProps, "desk" | "making">): ReactElement {
  const said = desk.job.making;
  const { steps, pairs, findings } = making;
  const done = said.done ?? noTicks;
  const isDone = (id: string): boolean => isTicked(done, id);
  const begun = steps.some((s) => isDone(s.id));
  const now = useLocalTime();
  const [whole, setWhole] = useState(false);
  // Prices that are typed meanwhile lay no day anew.
  const from = useDeferredValue(laidFrom(said));
  const rest = useMemo(() => (begun && !whole ? calendarOfRest({ steps, pairs }, { ...(JSON.parse(from) as MakingSaid), done }, now) : undefined), [begun, whole, steps, pairs, from, done, now]);
  const calendar = rest ? rest.calendar : making.calendar;
  if (steps.length > 0 && steps.every((s) => isDone(s.id))) return <Page title="The calendar"><p>All steps are ticked off. Take the ticks out at the steps to plan the next pair.</p></Page>;
  if (!calendar) {
    const why = (rest?.findings ?? findings).filter(isOfCalendar);
    return (
      <Page title="The calendar">
        {why.length > 0 ? <ul className="findings">{why.map((f) => <li key={explain(f)} className="look">{explain(f)}</li>)}</ul> : <p>Write in the column when you work, like “Tue 19:00-21:30, Sat 9:00-13:00”, and from which day on. The steps are then fitted into these times around what has to dry.</p>}
      </Page>
    );
  }
  return (
    <Page title={`Ready on ${readyWords(calendar)}`}>
      <p className="follows">{calendar.sessions.length === 1 ? "One session" : `${calendar.sessions.length} sessions`}, {hours(workMin(calendar))} of work for {pairs === 1 ? "one pair" : `${pairs} pairs`}. Laying out and clearing away are not counted: leave room for them. {roundsWords(calendar, pairs)}</p>
      {begun && (
        <p className="which-calendar">
          {[false, true].map((all) => <button key={String(all)} type="button" className="word" aria-pressed={whole === all} onClick={() => setWhole(all)}>{all ? "all, as first planned" : "what is left, from now on"}</button>)}
        </p>
      )}
      <Days calendar={calendar} pairs={pairs} steps={steps} done={done} midst={rest !== undefined} />
    </Page>
  );
}

const isTicked = (done: NonNullable<MakingSaid["done"]>, id: string): boolean => shoes.every((shoe) => Boolean(done[id]?.[shoe]));

const workMin = ({ sessions }: Calendar): number => sessions.reduce((sum, { stints }) => sum + stints.reduce((s, { fromMin, toMin }) => s + toMin - fromMin, 0), 0);

function Page({ title, children }: { readonly title: string; readonly children: React.ReactNode }): ReactElement {
  return (
    <section className="making-page bench-days" aria-label="Calendar">
      <h2>{title}</h2>
      {children}
    </section>
  );
}

interface DaysProps extends Pick<Making, "steps" | "pairs"> {
  readonly calendar: Calendar;
  readonly done: NonNullable<MakingSaid["done"]>;
  /** The first session has begun already, perhaps. */
  readonly midst: boolean;
}

/** All times at the bench. They are drawn anew only with another calendar or another tick: there may be hundreds. */
const Days = memo(function Days({ calendar, pairs, steps, done, midst }: DaysProps): ReactElement {
  const byId = new Map(steps.map((s) => [s.id, s]));
  const isDone = (id: string): boolean => isTicked(done, id);
  return <>{calendar.sessions.map((session, k) => <At key={`${session.date} ${session.fromMin}`} session={session} pairs={pairs} byId={byId} isDone={isDone} midst={midst && k === 0} />)}</>;
}, (a, b) => a.calendar === b.calendar && a.done === b.done && a.midst === b.midst);

const behind = (words: string): string => (words === "" ? "" : `, ${words}`);

interface AtProps extends Pick<Making, "pairs"> {
  readonly session: Session;
  readonly byId: ReadonlyMap<string, Step>;
  readonly isDone: (id: string) => boolean;
  /** It has begun already, perhaps. */
  readonly midst: boolean;
}

/** One time at the bench. */
function At({ session, pairs, byId, isDone, midst }: AtProps): ReactElement {
  const { date, fromMin, toMin, stints, waits } = session;
  const from = (min: number): string => clockText(fromMin + min);
  const titleOf = (id: string): string => byId.get(id)?.title ?? id;
  const restOf = ({ step, part, parts }: Stint): { readonly what: string; readonly min: number } | undefined => {
    const wait = byId.get(step)?.wait;
    return wait && wait.wellMin > 0 && part === parts ? { what: wait.what, min: Math.min(wait.wellMin, wait.mostMin ?? Infinity) } : undefined;
  };
  return (
    <section className="bench-day" aria-label={`${dateWords(date)}, ${clockText(fromMin)}`}>
      <h3>{dateWords(date)}, {clockText(fromMin)} to {clockText(toMin)}</h3>
      <SessionRule session={session} restMin={(stint) => restOf(stint)?.min} />
      <ol>
        {stints.map((stint, k) => {
          const rest = restOf(stint);
          const pause = midst && k === 0 ? 0 : stint.fromMin - (stints[k - 1]?.toMin ?? 0);
          return (
            <li key={`${stint.step} ${stint.first ?? 0} ${stint.part}`} className={isDone(stint.step) ? "is-done" : undefined}>
              {pause >= pauseMin && <p className="follows pause">{from(stint.fromMin - pause)} nothing to do for {hours(pause)}: what dries is waited for</p>}
              <p><span className="clock">{from(stint.fromMin)}–{from(stint.toMin)}</span> {titleOf(stint.step)}{behind(stintWords(stint, pairs))}{isDone(stint.step) && ", done"}</p>
              {rest && stint.toMin + rest.min <= toMin - fromMin && <p className="follows meanwhile">until {from(stint.toMin + rest.min)} {rest.what}</p>}
            </li>
          );
        })}
      </ol>
      {waits.length > 0 && (
        <p className="rests">When you stop: {waits.map(({ step, untilDate, untilMin, ...which }, k) => <span key={`${step} ${which.first ?? 0}`}>{k > 0 && "; "}{byId.get(step)?.wait?.what ?? titleOf(step)}{behind(whichPairs(which, pairs))}, until {untilDate === date ? "" : `${dateWords(untilDate)}, `}{clockText(untilMin)}</span>)}.</p>
      )}
    </section>
  );
}
