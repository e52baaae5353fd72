import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { Measures } from "#last/last.ts";
import type { Desk } from "../desk.ts";
import { setScanSide } from "../state/scan-edits.ts";
import { SizeField } from "./size-field.tsx";
import { WordChoice } from "./word-choice.tsx";

const sides = ["left", "right"] as const;

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

interface LastScanProps {
  readonly desk: Desk;
  /** Nothing while no pair can be made. */
  readonly pair: LastPair | undefined;
}

/** A last from a scan, as sentences. */
export function LastScan({ desk, pair }: LastScanProps): ReactElement | null {
  const { last } = desk.job;
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
    </>
  );
}

const unitWord = (unit: string): string => ({ m: "the metre", dm: "the decimetre", cm: "the centimetre", mm: "the millimetre", in: "the inch" })[unit] ?? unit;
