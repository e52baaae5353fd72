import type { ReactElement, ReactNode } from "react";
import type { Pair } from "#job/pair.ts";
import type { ToeShape } from "#last/measured.ts";
import type { Desk } from "../desk.ts";
import { setMeasure } from "../state/edits.ts";
import { lengthField, type Field } from "../state/measure-field.ts";
import type { MeasureKey } from "../state/spots.ts";
import { NumberField } from "./number-field.tsx";
import { SizeField } from "./size-field.tsx";
import { WordChoice } from "./word-choice.tsx";

const toes: readonly ToeShape[] = ["round", "almond", "square", "pointed"];
const sides = ["left", "right"] as const;

/** Ranges in which women's flat lasts of adult sizes lie; common practice, no source. Beyond them the last itself says so. */
const ranges: Readonly<Record<MeasureKey, { readonly name: string; readonly field: Field }>> = {
  stickLengthMm: { name: "stick length", field: lengthField(210, 300, 1) },
  jointGirthMm: { name: "joint girth", field: lengthField(190, 260, 1) },
  waistGirthMm: { name: "waist girth", field: lengthField(185, 260, 1) },
  instepGirthMm: { name: "instep girth", field: lengthField(200, 275, 1) },
  heelGirthMm: { name: "heel girth", field: lengthField(270, 370, 1) },
  ballWidthMm: { name: "ball width", field: lengthField(65, 100, 0.5) },
  seatWidthMm: { name: "seat width", field: lengthField(42, 70, 0.5) },
  heelHeightMm: { name: "heel height", field: lengthField(5, 30, 0.5) },
  toeSpringMm: { name: "toe spring", field: lengthField(3, 20, 0.5) },
};

interface FromMeasuresProps {
  readonly desk: Desk;
  /** Nothing while no pair can be made. */
  readonly pair: Pair | undefined;
}

/** The sentences of a last made from measures. */
export function FromMeasures({ desk, pair }: FromMeasuresProps): ReactElement | null {
  const { last } = desk.job;
  if (last.from !== "measures") return null;
  const m = last.measures;
  const number = (key: MeasureKey): ReactNode => (
    <NumberField
      label={ranges[key].name}
      value={m[key]}
      field={ranges[key].field}
      desk={desk}
      spot={`last ${key}`}
      edit={(v) => setMeasure(desk.job, key, v)}
      what={`the ${ranges[key].name}`}
    />
  );
  return (
    <>
      <p className="sentence">
        This is a last made from measures, a stand-in for its true shape. It is for the{" "}
        <WordChoice label="foot" value={m.side} options={sides} onChange={(side) => desk.change(setMeasure(desk.job, "side", side), "the side")} /> foot and its toe is{" "}
        <WordChoice label="toe shape" value={m.toe} options={toes} onChange={(toe) => desk.change(setMeasure(desk.job, "toe", toe), "the toe shape")} />.
      </p>
      <SizeField desk={desk} pair={pair} />
      <p className="sentence">It is {number("stickLengthMm")} long on the size stick, {number("ballWidthMm")} wide at the ball and {number("seatWidthMm")} at the seat.</p>
      <p className="sentence">The tape reads {number("jointGirthMm")} round the joint, {number("waistGirthMm")} round the waist, {number("instepGirthMm")} round the instep and {number("heelGirthMm")} round the heel.</p>
      <p className="sentence">It stands for a heel of {number("heelHeightMm")}, and its toe is sprung {number("toeSpringMm")}.</p>
    </>
  );
}
