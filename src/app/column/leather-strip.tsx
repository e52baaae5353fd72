import type { ReactElement } from "react";
import { usualLeather } from "#leather/leather-from.ts";
import { stripWays, type Strip, type UpperLayer } from "#leather/leather.ts";
import { aftersOf, lengthsOf, loadsOn, stripGauges, stripWidths } from "#leather/strip-limits.ts";
import { wayWords } from "#leather/strip-words.ts";
import type { Desk } from "../desk.ts";
import { addReading, forgetAfter, removeReading, removeStrip, setReading, setStrip } from "../state/leather-edits.ts";
import { layerWords } from "../state/leather-words.ts";
import { loadField, type LoadUnit } from "../state/load-unit.ts";
import { lengthField } from "../state/measure-field.ts";
import { lengthOutside, loadOutside } from "../state/new-reading.ts";
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
  /** Stays with the strip wherever it stands. */
  readonly name: string;
  readonly unit: LoadUnit;
}

/** One strip: how it was cut and marked, and what was read on it, row by row. */
export function StripTable({ desk, layer, at, strip, name, unit }: StripTableProps): ReactElement {
  const { way, widthMm, gaugeMm, readings } = strip;
  const of = `strip ${at + 1} of the ${layerWords[layer]}`;
  const load = loadField(unit);
  const length = lengthField(gaugeMm, 1.5 * gaugeMm, 0.5);
  const known = desk.job.leather[layer]?.known ?? usualLeather[layer];
  return (
    <section className="strip" aria-label={of} data-complaints="">
      <p className="sentence">
        Strip {at + 1} is cut <WordChoice label={`how ${of} is cut`} value={way} options={stripWays} say={(w) => wayWords[w]} onChange={(w) => desk.change(setStrip(desk.job, layer, at, { way: w }), `how ${of} is cut`)} />,{" "}
        <NumberField desk={desk} spot={`strip ${layer} ${at} widthMm`} label={`width of ${of}`} value={widthMm} field={lengthField(10, 30, 0.5)} limits={stripWidths} outside={`A strip is ${stripWidths.least} to ${stripWidths.most}\u00a0mm wide. Measure it at three places and type the mean.`} edit={(v) => setStrip(desk.job, layer, at, { widthMm: v })} what={`the width of ${of}`} /> wide, its marks{" "}
        <NumberField desk={desk} spot={`strip ${layer} ${at} gaugeMm`} label={`length between the marks of ${of}`} value={gaugeMm} field={lengthField(50, 120, 0.5)} limits={stripGauges} outside={`The marks are ${stripGauges.least} to ${stripGauges.most}\u00a0mm apart before any load; 150\u00a0mm is good.`} edit={(v) => setStrip(desk.job, layer, at, { gaugeMm: v })} what={`the marks of ${of}`} /> apart.{" "}
        <button type="button" className="word why" aria-label={`take out ${of}`} onClick={() => desk.change(removeStrip(desk.job, layer, at), `taking out ${of}`)}>take it out</button>
      </p>
      <table className="figures readings">
        <caption className="unseen">What was read on {of}</caption>
        <thead><tr><th scope="col">load, {unit}</th><th scope="col">length, mm</th><th scope="col">a minute after</th><th scope="col"><span className="unseen">take out</span></th></tr></thead>
        <tbody>
          {readings.map(({ loadN, lengthMm, afterMm }, row) => (
            <tr key={row}>
              <td><NumberField desk={desk} bare spot={`strip ${layer} ${at} ${row} loadN`} label={`load ${row + 1} on ${of}`} value={loadN} field={load} limits={{ least: 0.001 * load.step, most: 0.999 * load.factor * loadsOn(widthMm).most }} outside={loadOutside(widthMm, unit)} edit={(v) => setReading(desk.job, layer, at, row, { loadN: v })} what={`a load on ${of}`} /></td>
              <td><NumberField desk={desk} bare spot={`strip ${layer} ${at} ${row} lengthMm`} label={`length under load ${row + 1} on ${of}`} value={lengthMm} field={length} limits={lengthsOf(gaugeMm, known)} outside={lengthOutside(gaugeMm, known)} edit={(v) => setReading(desk.job, layer, at, row, { lengthMm: v })} what={`a length of ${of}`} /></td>
              <td>
                <NumberField desk={desk} bare spot={`strip ${layer} ${at} ${row} afterMm`} label={`length one minute after load ${row + 1} on ${of}`} value={afterMm} field={length} limits={aftersOf(gaugeMm, lengthMm)} outside={`A minute after it lies between the ${say(gaugeMm)}\u00a0mm without load and the ${say(lengthMm)}\u00a0mm under it.`} edit={(v) => setReading(desk.job, layer, at, row, { afterMm: v })} what={`a length after on ${of}`} reading={{ own: afterMm !== undefined, forget: () => desk.change(forgetAfter(desk.job, layer, at, row), `a length after on ${of}`) }} />
              </td>
              <td><button type="button" className="word" aria-label={`take out reading ${row + 1} of ${of}`} onClick={() => desk.change(removeReading(desk.job, layer, at, row), `taking out a reading of ${of}`)}>out</button></td>
            </tr>
          ))}
          <NewReading
            of={of} keptAs={`${layer} ${name}`} unit={unit} on={{ widthMm, gaugeMm, known }}
            onReadings={(more) => more.length > 0 && desk.change(more.reduce((job, r) => addReading(job, layer, at, r), desk.job), more.length === 1 ? `a reading of ${of}` : `${more.length} readings of ${of}`)}
          />
        </tbody>
      </table>
    </section>
  );
}
