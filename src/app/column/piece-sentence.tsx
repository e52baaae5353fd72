import type { ReactElement } from "react";
import type { Rules } from "#job/run-options.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Desk } from "../desk.ts";
import { keysOf, type PieceSentence } from "../state/piece-sentences.ts";
import type { Spot } from "../state/spot.ts";
import { WhatFollows } from "./piece-follows.tsx";
import { PieceNumber, PieceReason } from "./piece-number.tsx";
import { WithWhy } from "./why.tsx";

type Key = keyof PieceSettings;

interface SentenceProps {
  readonly desk: Desk;
  readonly rules: Rules;
  readonly sentence: PieceSentence;
}

export const spotsIn = (sentence: PieceSentence): readonly Spot[] => keysOf(sentence).map((key): Spot => `pieces ${key as Key}`);

/** One sentence with its numbers, the reason of each behind "why", and what follows from the one just changed. */
export function Sentence({ desk, rules, sentence }: SentenceProps): ReactElement {
  const spots = spotsIn(sentence);
  return (
    <div>
      <WithWhy name={sentence.name} spots={spots} why={keysOf(sentence).map((key) => <PieceReason key={key} desk={desk} rules={rules} of={key as Key} />)}>
        {sentence.parts.map((part, i) => (typeof part === "string" ? <span key={i}>{part}</span> : <PieceNumber key={part.key} desk={desk} rules={rules} of={part.key as Key} />))}
      </WithWhy>
      <WhatFollows keys={spots} />
    </div>
  );
}
