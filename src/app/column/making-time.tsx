import { useState, type ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { Making } from "#making/making.ts";
import { lastsOf } from "#making/calendar/lasts.ts";
import { cementOf, cements } from "#making/needs/cement-choice.ts";
import { phases } from "#making/steps/step.ts";
import type { Desk } from "../desk.ts";
import { cementFollows, cementSaid, cementWords, lastsWords } from "../state/cement-words.ts";
import { setMaking, setMakingAt } from "../state/making-edits.ts";
import { hours } from "../state/making-words.ts";
import { say } from "../state/numbers.ts";
import { usualMinutes } from "../state/usual-minutes.ts";
import { Fold } from "./fold.tsx";
import { WordChoice } from "./word-choice.tsx";
import { WrittenField, WrittenSentence } from "./written-field.tsx";

/** How many pairs, on how many lasts. */
export function MakingPairs({ desk, making }: { readonly desk: Desk; readonly making: Making }): ReactElement {
  const { job } = desk;
  const { pairs, lasts } = job.making;
  // While she writes here nothing of the sentence goes away under her hand.
  const [writing, setWriting] = useState(false);
  const told = making.pairs > 1 || lasts !== undefined;
  const several = told || writing;
  return (
    <WrittenSentence spots={["making pairs", "making lasts"]} follows={several && lastsWords(job.making, making)}>
      You make <WrittenField desk={desk} spot="making pairs" label="how many pairs" value={pairs} edit={(text) => setMaking(job, { pairs: text === "" ? undefined : text })} what="how many pairs" hint="1" /> {making.pairs === 1 ? "pair" : "pairs"} of this{several ? <span onFocus={() => setWriting(true)} onBlur={() => setWriting(false)}>, and have <WrittenField desk={desk} spot="making lasts" label="how many pairs of lasts in this size" value={lasts} edit={(text) => setMaking(job, { lasts: text === "" ? undefined : text })} what="how many pairs of lasts" hint="1" /> {lastsOf(job.making, making.pairs) === 1 ? "pair" : "pairs"} of lasts in its size.</span> : "."}
    </WrittenSentence>
  );
}

/** From which day on and at what times; what follows is when they are ready. */
export function MakingDays({ desk }: { readonly desk: Desk }): ReactElement {
  const { job } = desk;
  const { start, sessions } = job.making;
  return (
    <WrittenSentence spots={["making start", "making sessions"]}>
      You begin on <WrittenField desk={desk} spot="making start" label="first day of work" value={start} edit={(text) => setMaking(job, { start: text === "" ? undefined : text })} what="the first day of work" hint="say, 2026-12-01" letters={40} keys="text" />,
      and work <WrittenField desk={desk} spot="making sessions" label="when you work, by days and times" value={sessions} edit={(text) => setMaking(job, { sessions: text === "" ? undefined : text })} what="when you work" hint="say, Tue 19:00-21:30, Sat 9-13" letters={400} keys="text" />.
    </WrittenSentence>
  );
}

/** What soles and margins are stuck with, and what that asks of the maker. */
export function MakingCement({ desk, making }: { readonly desk: Desk; readonly making: Making }): ReactElement {
  const { job } = desk;
  return (
    <WrittenSentence spots={["making cement"]} follows={cementFollows(job.making, making)}>
      Soles and margins are stuck with <WordChoice label="what soles and margins are stuck with" spot="making cement" value={cementOf(job.making)} options={cements} say={(cement) => cementWords[cement]} onChange={(cement) => desk.change(setMaking(job, { cement: cementSaid[cement] }), "the cement")} />.
    </WrittenSentence>
  );
}

/** Her own minutes for each stretch of the work, beside the usual ones. */
export function MakingMinutes({ desk, making }: { readonly desk: Desk; readonly making: Making }): ReactElement {
  const { minutes = {} } = desk.job.making;
  const here = phases.filter((phase) => making.steps.some((s) => s.phase === phase));
  const own = here.filter((phase) => minutes[phase] !== undefined).length;
  const usual = usualMinutes(making.steps);
  return (
    <Fold name="Your minutes" holds={`${hours(making.cost.minutes)} a pair, ${own === 0 ? "the usual ones" : own === 1 ? "one of your own" : `${own} of your own`}`} spots={here.map((phase) => `making minutes ${phase}` as const)}>
      <p className="follows">Hands on, for one pair, by one who has made some; drying is not counted. Yours may be twice that at first: time yourself once and write it here.</p>
      {here.map((phase) => (
        <WrittenSentence key={phase} spots={[`making minutes ${phase}`]}>
          {capital(phase)} takes <WrittenField desk={desk} spot={`making minutes ${phase}`} label={`minutes for ${phase}, one pair`} value={minutes[phase]} edit={(text) => setMakingAt(desk.job, "minutes", phase, text)} what={`the minutes for ${phase}`} hint={`${say(usual[phase] ?? 0, 0)} min`} />
          {minutes[phase] !== undefined && <span className="follows"> (usually {say(usual[phase] ?? 0, 0)} min)</span>}.
        </WrittenSentence>
      ))}
    </Fold>
  );
}
