import type { ReactElement } from "react";
import type { LastPair, Pair } from "#job/pair.ts";
import type { Measures } from "#last/last.ts";
import type { Desk } from "../desk.ts";
import { setScanSide } from "../state/edits.ts";
import { mm } from "../state/numbers.ts";
import { FromMeasures } from "./from-measures.tsx";
import { SizeField } from "./size-field.tsx";
import { WordChoice } from "./word-choice.tsx";

const sides = ["left", "right"] as const;

interface StationLastProps {
  readonly desk: Desk;
  /** Nothing while no pair can be made. */
  readonly pair: Pair | undefined;
  readonly onOpen: () => void;
}

export function StationLast({ desk, pair, onOpen }: StationLastProps): ReactElement {
  return (
    <>
      <FromMeasures desk={desk} pair={pair} onOpen={onOpen} />
      <FromScan desk={desk} pair={pair} onOpen={onOpen} />
      {pair?.from === "last" && <FeatherFollows pair={pair} />}
    </>
  );
}

function FeatherFollows({ pair: { last: { measures } } }: { readonly pair: LastPair }): ReactElement {
  return (
      <p className="follows">
        The feather line is {mm(measures.featherLength, 0)} round: {mm(measures.featherMedial, 0)} on the inner side, {mm(measures.featherLateral, 0)} on the outer. The vamp point lies{" "}
        {mm(measures.vampPointFromToe)} from the toe, along the front centre.
      </p>
  );
}

const measured: readonly (readonly [keyof Measures, string])[] = [
  ["stickLength", "stick length"],
  ["lastLength", "last length, tape along the bottom"],
  ["jointGirth", "joint girth"],
  ["waistGirth", "waist girth"],
  ["instepGirth", "instep girth"],
  ["heelGirth", "heel girth"],
  ["ballWidth", "ball width"],
  ["seatWidth", "seat width"],
  ["heelHeight", "heel height"],
  ["toeSpring", "toe spring"],
];

function FromScan({ desk, pair: any, onOpen }: StationLastProps): ReactElement | null {
  const { last } = desk.job;
  const pair = any?.from === "last" ? any : undefined;
  if (last.from !== "scan") return null;
  return (
    <>
      <p className="sentence">
        This last was read from <b>{last.file}</b>{pair && <>, whose unit is taken to be {unitWord(pair.last.placement.unit)}. It is a{" "}
        <WordChoice label="foot" value={last.said?.side ?? pair.last.side} options={sides} onChange={(side) => desk.change(setScanSide(desk.job, side), "the side")} /> last</>}.
      </p>
      <SizeField desk={desk} pair={pair} />
      {pair && <table className="figures">
        <caption>Measured on the last, mm. Compare two of them with your own callipers before you cut.</caption>
        <tbody>
          {measured.map(([key, name]) => (
            <tr key={key}><th scope="row">{name}</th><td>{pair.last.measures[key].toFixed(1)}</td></tr>
          ))}
        </tbody>
      </table>}
      <p className="sentence"><button type="button" className="word" onClick={onOpen}>Open another scan</button>, or <button type="button" className="word" onClick={() => desk.startAfresh()}>go back to the example last</button>.</p>
    </>
  );
}

const unitWord = (unit: string): string => ({ m: "the metre", dm: "the decimetre", cm: "the centimetre", mm: "the millimetre", in: "the inch" })[unit] ?? unit;
