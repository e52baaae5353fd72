import type { ReactElement } from "react";
import { stripWays, type Strip, type UpperLayer } from "#leather/leather.ts";
import { wayWords } from "#leather/strip-words.ts";
import type { Desk } from "../desk.ts";
import { addReading, forgetAfter, removeReading, removeStrip, setReading, setStrip } from "../state/leather-edits.ts";
import { layerWords } from "../state/leather-words.ts";
import { loadField, type LoadUnit } from "../state/load-unit.ts";
import { lengthField } from "../state/measure-field.ts";
import { say } from "../state/numbers.ts";
import { NewReading } from "./leather-reading.tsx";
import { NumberField } from "./number-field.tsx";
import { WordChoice } from "./word-choice.tsx";

interface StripTableProps {
  readonly desk: Desk;
  readonly layer: UpperLayer;
  /** Which strip of the layer, from 0. */
  readonly at: number;
  readonly strip: Strip;
  readonly unit: LoadUnit;
}

const someWidth = { least: 2, most: 200 };
const someLength = { least: 10, most: 500 };

/** One strip: how it was cut and marked, and what was read on it, row by row. */
export function StripTable({ desk, layer, at, strip, unit }: StripTableProps): ReactElement {
  const { way, widthMm, gaugeMm, readings } = strip;
  const of = `strip ${at + 1} of the ${layerWords[layer]}`;
  const load = loadField(unit);
  const length = lengthField(gaugeMm, 1.5 * gaugeMm, 0.5);
  /** Lengths under load: not below the length without, and not beyond twice of it. */
  const loaded = { least: gaugeMm, most: 2 * gaugeMm };
  const outside = `Without load the marks are ${say(gaugeMm)}\u00a0mm apart: under load they are that or farther, and less than twice as far.`;
  return (
    <section className="strip" aria-label={of} data-complaints="">
      <p className="sentence">
        Strip {at + 1} is cut <WordChoice label={`how ${of} is cut`} value={way} options={stripWays} say={(w) => wayWords[w]} onChange={(w) => desk.change(setStrip(desk.job, layer, at, { way: w }), `how ${of} is cut`)} />,{" "}
        <NumberField desk={desk} spot={`strip ${layer} ${at} widthMm`} label={`width of ${of}`} value={widthMm} field={lengthField(10, 30, 0.5)} limits={someWidth} edit={(v) => setStrip(desk.job, layer, at, { widthMm: v })} what={`the width of ${of}`} /> wide, its marks{" "}
        <NumberField desk={desk} spot={`strip ${layer} ${at} gaugeMm`} label={`length between the marks of ${of}`} value={gaugeMm} field={lengthField(50, 120, 0.5)} limits={someLength} edit={(v) => setStrip(desk.job, layer, at, { gaugeMm: v })} what={`the marks of ${of}`} /> apart.{" "}
        <button type="button" className="word why" aria-label={`take out ${of}`} onClick={() => desk.change(removeStrip(desk.job, layer, at), `taking out ${of}`)}>take it out</button>
      </p>
      <table className="figures readings">
        <caption className="unseen">What was read on {of}</caption>
        <thead><tr><th scope="col">load, {unit}</th><th scope="col">length, mm</th><th scope="col">a minute after</th><th scope="col"><span className="unseen">take out</span></th></tr></thead>
        <tbody>
          {readings.map(({ loadN, lengthMm, afterMm }, row) => (
            <tr key={row}>
              <td><NumberField desk={desk} bare spot={`strip ${layer} ${at} ${row} loadN`} label={`load ${row + 1} on ${of}`} value={loadN} field={load} limits={{ least: 0.1 * load.step, most: 10 * load.max }} edit={(v) => setReading(desk.job, layer, at, row, { loadN: v })} what={`a load on ${of}`} /></td>
              <td><NumberField desk={desk} bare spot={`strip ${layer} ${at} ${row} lengthMm`} label={`length under load ${row + 1} on ${of}`} value={lengthMm} field={length} limits={loaded} outside={outside} edit={(v) => setReading(desk.job, layer, at, row, { lengthMm: v })} what={`a length of ${of}`} /></td>
              <td>
                <NumberField desk={desk} bare spot={`strip ${layer} ${at} ${row} afterMm`} label={`length one minute after load ${row + 1} on ${of}`} value={afterMm} field={length} limits={{ least: 0.98 * gaugeMm, most: lengthMm }} outside={`A minute after it lies between the ${say(gaugeMm)}\u00a0mm without load and the ${say(lengthMm)}\u00a0mm under it.`} edit={(v) => setReading(desk.job, layer, at, row, { afterMm: v })} what={`a length after on ${of}`} reading={{ own: afterMm !== undefined, forget: () => desk.change(forgetAfter(desk.job, layer, at, row), `a length after on ${of}`) }} />
              </td>
              <td><button type="button" className="word" aria-label={`take out reading ${row + 1} of ${of}`} onClick={() => desk.change(removeReading(desk.job, layer, at, row), `taking out a reading of ${of}`)}>out</button></td>
            </tr>
          ))}
          <NewReading
            of={of} keptAs={`${layer} ${at}`} unit={unit} gaugeMm={gaugeMm}
            onReadings={(more) => more.length > 0 && desk.change(more.reduce((job, r) => addReading(job, layer, at, r), desk.job), more.length === 1 ? `a reading of ${of}` : `${more.length} readings of ${of}`)}
          />
        </tbody>
      </table>
    </section>
  );
}
