import type { ReactElement, ReactNode } from "react";
import type { LastPair, Pair } from "#job/pair.ts";
import { toeShapes } from "#last/measured.ts";
import type { Desk } from "../desk.ts";
import { setMeasure } from "../state/edits.ts";
import { measureFields } from "../state/measure-words.ts";
import { mm } from "../state/numbers.ts";
import type { MeasureKey } from "../state/spot.ts";
import { MeasuredOutlines } from "./from-measures-outlines.tsx";
import { MeasuresBySize } from "./from-measures-size.tsx";
import { MeasureReason } from "./measure-reason.tsx";
import { NumberField } from "./number-field.tsx";
import { SizeField } from "./size-field.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const sides = ["left", "right"] as const;

/** How far a last from numbers alone lies from lasts of the same numbers, mm; measured, docs/method/loft.md. */
const numbersAlone = { typicalMm: 3, worstMm: 12 };

/** With drawings the last itself says how much is left. */
function errorLeft({ findings }: LastPair): { readonly typicalMm: number; readonly worstMm: number } {
  const drawn = findings.find((f) => f.code === "shape-from-outlines");
  return drawn ? drawn.data : numbersAlone;
}

interface FromMeasuresProps {
  readonly desk: Desk;
  /** Nothing while no pair can be made. */
  readonly pair: Pair | undefined;
}

/** The sentences of a last made from measures; each opens to how its measures are taken. */
export function FromMeasures({ desk, pair }: FromMeasuresProps): ReactElement | null {
  const { last } = desk.job;
  if (last.from !== "measures") return null;
  const m = last.measures;
  const left = pair?.from === "last" ? errorLeft(pair) : numbersAlone;
  const number = (key: MeasureKey): ReactNode => (
    <NumberField
      label={measureFields[key].name}
      value={m[key]}
      field={measureFields[key].field}
      desk={desk}
      spot={`last ${key}`}
      edit={(v) => setMeasure(desk.job, key, v)}
      what={`the ${measureFields[key].name}`}
    />
  );
  const sentence = (name: string, of: readonly MeasureKey[], words: ReactNode): ReactElement => (
    <WithWhy name={name} word="how" spots={of.map((key) => `last ${key}` as const)} why={of.map((key) => <MeasureReason key={key} of={key} measures={m} onTake={(v) => desk.changeLast(setMeasure(desk.job, key, v), `the rule for the ${measureFields[key].name}`, undefined, key)} />)}>{words}</WithWhy>
  );
  return (
    <>
      <p className="sentence">
        This is a last made from measures{last.outlines && " and drawings"}, a stand-in for its true shape: its surface may lie about <b>±{"\u00a0"}{mm(left.typicalMm)}</b> off yours, up to {mm(left.worstMm)} in places, most at waist and instep. It is for the{" "}
        <WordChoice label="foot" value={m.side} options={sides} onChange={(side) => desk.changeLast(setMeasure(desk.job, "side", side), "the side")} /> foot and its toe is{" "}
        <WordChoice label="toe shape" value={m.toe} options={toeShapes} onChange={(toe) => desk.changeLast(setMeasure(desk.job, "toe", toe), "the toe shape")} />.
      </p>
      <SizeField desk={desk} pair={pair} />
      <MeasuresBySize desk={desk} measures={m} />
      {sentence("length and widths", ["stickLengthMm", "ballWidthMm", "seatWidthMm"], <>It is {number("stickLengthMm")} long on the size stick, {number("ballWidthMm")} wide at the ball and {number("seatWidthMm")} at the seat.</>)}
      {sentence("girths", ["jointGirthMm", "waistGirthMm", "instepGirthMm", "heelGirthMm"], <>The tape reads {number("jointGirthMm")} round the joint, {number("waistGirthMm")} round the waist, {number("instepGirthMm")} round the instep and {number("heelGirthMm")} round the heel.</>)}
      {sentence("heel and toe", ["heelHeightMm", "toeSpringMm"], <>It stands for a heel of {number("heelHeightMm")}, and its toe is sprung {number("toeSpringMm")}.</>)}
      <MeasuredOutlines desk={desk} pair={pair} outlines={last.outlines} />
    </>
  );
}
