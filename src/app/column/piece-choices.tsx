import type { ReactElement, ReactNode } from "react";
import { capital } from "#base/listed.ts";
import { backTops, liningCuts, partsFrom, seamKinds, sockKinds, upperCuts, type Chosen, type PartChoices } from "#pieces/choices.ts";
import { shellChoices } from "#shell/rules.ts";
import type { Desk } from "../desk.ts";
import { setParts } from "../state/edits.ts";
import { addedWords, choiceNames, choiceWhy, cutWords, liningWords, seamWords, sockWords, topWords, type Added } from "../state/piece-choices.ts";
import type { Spot } from "../state/spot.ts";
import type { Station } from "../state/stations.ts";
import { hasBackSeam, hasSideSeam } from "../state/piece-words.ts";
import { edgeWords } from "../state/shell-words.ts";
import { WhatFollows } from "./piece-follows.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

/** All that is chosen by word: the parts, and the edge of the topline from the station Shell. A taped pattern has its cut already. */
export function chosenOf({ job }: Desk): Chosen {
  const taped = job.last.from === "tape" ? ({ cut: "back-seam", lining: "one" } as const) : {};
  return { ...partsFrom(job.parts), ...taped, edge: job.shell.edge ?? shellChoices.edge };
}

const backKinds = ["closed", "butted"] as const;
const withOrWithout = ["with", "without"] as const;

interface PieceChoicesProps {
  readonly desk: Desk;
  /** Without a bottom there is no sock to choose. */
  readonly bottomCut: boolean;
  readonly onStation: (station: Station) => void;
}

/** Of what parts the shoe is made, as sentences; what follows from a choice stands under its own. */
export function PieceChoices({ desk, bottomCut, onStation }: PieceChoicesProps): ReactElement {
  const chosen = chosenOf(desk);
  const taped = desk.job.last.from === "tape";
  const set = <K extends keyof PartChoices>(key: K, value: PartChoices[K]): void => desk.change(setParts(desk.job, { [key]: value }), choiceNames[key]);
  const word = <K extends keyof PartChoices>(key: K, options: readonly (PartChoices[K] & string)[], words: Readonly<Record<PartChoices[K] & string, string>>): ReactElement => (
    <WordChoice label={choiceNames[key]} spot={`parts ${key}`} value={chosen[key] as PartChoices[K] & string} options={options} say={(o) => words[o]} onChange={(v) => set(key, v)} />
  );
  const added = (key: Added): ReactElement => (
    <span key={key} className="one-of">
      <WordChoice label={addedWords[key].name} spot={`parts ${key}`} value={chosen[key] ? "with" : "without"} options={withOrWithout} onChange={(v) => set(key, v === "with")} /> {addedWords[key].words}
    </span>
  );
  const extras: readonly Added[] = ["toeCap", "strap", "gore", "bow", "sideLining"];
  return (
    <>
      {taped ? <p className="sentence">The upper is cut as it was taped, whole with a back seam, and its lining in one piece.</p> : <Choice of={["cut"]} name="cut of the upper" why={choiceWhy.cut}>The upper is cut {word("cut", upperCuts, cutWords)}.</Choice>}
      {hasSideSeam(chosen) && (
        <Choice of={["seam"]} name="seams" why={choiceWhy.seam}>
          {chosen.cut === "quarters" ? "The side seams are" : "The seam at the inner waist is"} {word("seam", seamKinds, seamWords)}.
        </Choice>
      )}
      {hasBackSeam(chosen) && (
        <Choice of={["backSeam", "backTop", "backStrip"]} name="back seam" why={[...choiceWhy.backSeam, ...(chosen.backSeam === "closed" ? choiceWhy.backTop : []), namedWhy("backStrip")]}>
          The back seam is {word("backSeam", backKinds, seamWords)}
          {chosen.backSeam === "closed" && <>, its top {word("backTop", backTops, topWords)}</>}; {added("backStrip")}.
        </Choice>
      )}
      <p className="follows">The topline is {edgeWords[chosen.edge]}, as it stands at the station <button type="button" className="word" onClick={() => onStation("Shell")}>Shell</button>.</p>
      {!taped && <Choice of={["lining"]} name="lining" why={choiceWhy.lining}>The lining is cut as {word("lining", liningCuts, liningWords)}.</Choice>}
      {bottomCut && <Choice of={["sock"]} name="sock" why={choiceWhy.sock}>The sock covers {word("sock", sockKinds, sockWords)}.</Choice>}
      <Choice of={extras} name="extras" why={extras.map(namedWhy)}>
        The pair is made {extras.map((key, i) => <span key={key}>{i === 0 ? "" : i === extras.length - 1 ? " and " : ", "}{added(key)}</span>)}.
      </Choice>
    </>
  );
}

/** What may be added, with its name, for one sentence holds several. */
const namedWhy = (key: Added): { readonly name: string; readonly why: string } => addedWords[key];

interface ChoiceProps {
  readonly of: readonly (keyof PartChoices)[];
  readonly name: string;
  readonly why: readonly (string | { readonly name: string; readonly why: string })[];
  readonly children: ReactNode;
}

function Choice({ of, name, why, children }: ChoiceProps): ReactElement {
  return (
    <div>
      <WithWhy name={name} spots={of.map((key): Spot => `parts ${key}`)} why={<>{why.map((line) => (typeof line === "string" ? <p key={line}>{line}</p> : <p key={line.name}><b>{capital(line.name)}.</b> {line.why}</p>))}<p className="source">common practice, no source</p></>}>{children}</WithWhy>
      <WhatFollows keys={of.map((key) => `parts ${key}`)} />
    </div>
  );
}
