import type { ReactElement, ReactNode } from "react";
import { capital, listed } from "#base/listed.ts";
import type { LandmarkName, MeasureName } from "#last/said.ts";
import { askedSpots } from "../state/asked-spots.ts";
import { lengthField, type Field } from "../state/measure-field.ts";
import { mm } from "../state/numbers.ts";
import type { WorkInHand } from "../state/work-in-hand.ts";
import type { SeenLast } from "../state/seen-last.ts";
import { pointNames } from "../state/point-names.ts";
import { readingNames } from "../state/reading-names.ts";
import { saidOf, setReading } from "../state/scan-edits.ts";
import { MeasureHow } from "./last-help.tsx";
import { NumberField } from "./number-field.tsx";
import { WithWhy } from "./why.tsx";

/** Only for the arrow keys and those who hear the page; any length may be typed. */
const field: Field = lengthField(0, 700, 0.5);

interface LastMeasuresProps {
  readonly work: WorkInHand;
  readonly seen: SeenLast;
}

/** Lengths and girths in sentences; over each the maker may type what she reads on the last itself. */
export function LastMeasures({ work, seen }: LastMeasuresProps): ReactElement {
  const own = saidOf(work.job).measured ?? {};
  const found = seen.last.measures;
  const number = (of: MeasureName): ReactNode => (
    <NumberField
      label={readingNames[of]}
      value={own[of] ?? found[of]}
      field={field}
      desk={work.fields}
      spot={`scan ${of}`}
      edit={(v) => setReading(work.job, of, v)}
      what={`your ${readingNames[of]}`}
      reading={{ own: own[of] !== undefined, forget: () => work.change(setReading(work.job, of, undefined), `forgetting your ${readingNames[of]}`) }}
    />
  );
  const sentence = (name: string, of: readonly MeasureName[], words: ReactNode): ReactElement => (
    <WithWhy name={name} word="how" why={<MeasureHow of={of} />} spots={of.map((m) => `scan ${m}` as const)}>{words}</WithWhy>
  );
  const beside = (of: readonly MeasureName[]): ReactElement => <Beside names={of.filter((m) => own[m] !== undefined)} own={own} found={found} />;
  const girths: readonly MeasureName[] = ["jointGirth", "waistGirth", "instepGirth", "heelGirth"];
  const bottom: readonly MeasureName[] = ["lastLength", "seatWidth", "heelHeight", "toeSpring"];
  const { placed } = askedSpots(work.job, seen);
  const scaled = own.stickLength !== undefined || own.ballWidth !== undefined;
  return (
    <>
      <h3>Its measures</h3>
      {sentence("stick length and ball width", ["stickLength", "ballWidth"], <>From heel to toe it is {number("stickLength")} long, across the ball {number("ballWidth")} wide.</>)}
      {!scaled && <p className="follows">{sourceWords(["stickLength", "ballWidth"], placed)} Measure both on the last itself with callipers and type what you read over them: the whole scan is then scaled by it.</p>}
      {scaled && <p className="follows">Empty a field to go back to the scan’s own scale.</p>}
      {sentence("girths", girths, <>The tape reads {number("jointGirth")} round the joint, {number("waistGirth")} round the waist, {number("instepGirth")} round the instep and {number("heelGirth")} round the heel.</>)}
      {beside(girths)}
      {sentence("length, seat, heel and toe", bottom, <>Along the bottom it is {number("lastLength")} long, the seat {number("seatWidth")} wide. It stands for a heel of {number("heelHeight")}, its toe sprung {number("toeSpring")}.</>)}
      {beside(bottom)}
      {sentence("vamp point", ["vampPointFromToe"], <>The vamp point lies {number("vampPointFromToe")} from the toe, along the front centre.</>)}
      {beside(["vampPointFromToe"])}
    </>
  );
}

interface BesideProps {
  readonly names: readonly MeasureName[];
  readonly own: Partial<Record<MeasureName, number>>;
  readonly found: Readonly<Record<MeasureName, number>>;
}

/** The maker's own readings held beside what was found. */
function Beside({ names: of, own, found }: BesideProps): ReactElement | null {
  if (of.length === 0) return null;
  return (
    <p className="follows">
      {of.map((m) => `${capital(readingNames[m])}: yours ${mm(own[m]!)}, on the scan ${mm(found[m])}, ${apart(own[m]! - found[m])}.`).join(" ")}
    </p>
  );
}

/** The points between which each is taken, where they are not the last's own outermost ones; docs/method/last.md. */
const hangsOn: Partial<Record<MeasureName, readonly LandmarkName[]>> = {
  stickLength: ["toePoint", "seatPoint"],
  ballWidth: ["jointMedial", "jointLateral", "toePoint", "seatPoint"],
};

/** Says where the numbers come from: found, or taken from points that the maker put. */
function sourceWords(of: readonly MeasureName[], placed: ReadonlySet<LandmarkName>): string {
  const on = [...new Set(of.flatMap((m) => hangsOn[m] ?? []))].filter((p) => placed.has(p)).map((p) => pointNames[p]);
  if (on.length === 0) return "As found.";
  return `As they follow from the ${listed(on)} where you put ${on.length === 1 ? "it" : "them"}.`;
}

const apart = (d: number): string => (Math.abs(d) < 0.05 ? "the same" : `${mm(Math.abs(d))} ${d > 0 ? "more" : "less"}`);
