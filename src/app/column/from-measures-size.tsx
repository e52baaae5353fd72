import { useState, type ReactElement } from "react";
import type { LastMeasurements } from "#last/measured.ts";
import { completeMeasures } from "#last/measures-by-size.ts";
import type { Desk } from "../desk.ts";
import { clamp } from "../state/numbers.ts";
import { halfSizeOf } from "../state/measure-rule.ts";
import { setMeasures } from "../state/tape-edits.ts";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const sizes = Array.from({ length: 29 }, (_, i) => String(32 + i / 2));
const fittings = ["4", "5", "6", "7", "8"] as const;
const fittingWords: Readonly<Record<(typeof fittings)[number], string>> = { "4": "4, very narrow", "5": "5, narrow", "6": "6, medium", "7": "7, wide", "8": "8, very wide" };

/** For who knows only the size: all measures by the rules of the trade, to be overwritten as they are taken. */
export function MeasuresBySize({ desk, measures }: { readonly desk: Desk; readonly measures: LastMeasurements }): ReactElement {
  const [size, setSize] = useState<string>();
  const [fitting, setFitting] = useState<(typeof fittings)[number]>("6");
  const asked = size ?? String(clamp(halfSizeOf(measures), 32, 46));
  const take = (): void => {
    const { side, toe } = measures;
    desk.change(setMeasures(desk.job, completeMeasures({ side, toe, sizeEu: Number(asked), fitting: Number(fitting) }).measures, `EU ${asked}`), `the measures of EU ${asked}`);
  };
  return (
    <WithWhy
      name="measures from the size"
      spots={[]}
      why={
        <>
          <p>The length is two thirds of a centimetre a size. The joint girth is five times size and fitting together, in millimetres; the instep 10 mm more. The other numbers follow from these as they usually do on women’s low-heeled lasts.</p>
          <p>Such a last is anybody’s, not yours: put your own numbers over it as you take them.</p>
          <p className="source">Paris point: ISO/TS 19407. Girths and widths: from memory of trade practice, or our own; the method page of the made last names each.</p>
        </>
      }
    >
      Only the size is known? Fill in the measures of EU <WordChoice label="EU size" value={asked} options={sizes} onChange={setSize} /> in fitting{" "}
      <WordChoice label="fitting" value={fitting} options={fittings} say={(f) => fittingWords[f]} onChange={setFitting} />: <button type="button" className="word" onClick={take}>take them all</button>.
    </WithWhy>
  );
}
