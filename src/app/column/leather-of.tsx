import { useMemo, useState, useSyncExternalStore, type ReactElement } from "react";
import { explain, severityOf } from "#base/findings.ts";
import { knownFigures } from "#leather/known-leathers.ts";
import type { StripFit } from "#leather/strip-fit.ts";
import { knownLeathers, type KnownLeather, type Leather, type UpperLayer } from "#leather/leather.ts";
import { knownWords } from "#leather/strip-words.ts";
import type { Desk } from "../desk.ts";
import type { LeatherShelf } from "../leather-shelf.ts";
import { forgetOfLeather, setLeather } from "../state/leather-edits.ts";
import { layerWords } from "../state/leather-words.ts";
import { leatherNow, readingsIn } from "../state/leathers.ts";
import { lengthField } from "../state/measure-field.ts";
import { mm, percent } from "../state/numbers.ts";
import { toldN, toldWidthMm } from "../state/told-load.ts";
import { stripTables } from "../strip-tables.ts";
import { FindingsList } from "./findings-list.tsx";
import { Fold } from "./fold.tsx";
import { LeatherKept } from "./leather-kept.tsx";
import { LeatherStrips } from "./leather-strips.tsx";
import { NumberField } from "./number-field.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

interface LeatherOfProps {
  readonly desk: Desk;
  readonly shelf: LeatherShelf;
  readonly layer: UpperLayer;
  /** The picture shows this leather. */
  readonly onSight: () => void;
  readonly onTest: () => void;
}

/** What one layer is cut from, and what is known of that leather. */
export function LeatherOf({ desk, shelf, layer, onSight, onTest }: LeatherOfProps): ReactElement {
  const { job } = desk;
  const said = job.leather[layer];
  const fit = useMemo(() => leatherNow(said, layer), [said, layer]);
  const { leather, findings } = fit;
  const of = layerWords[layer];
  const count = readingsIn(said);
  const [readAs, setReadAs] = useState<KnownLeather>();
  const become = (known: KnownLeather): void => {
    if (count > 0) setReadAs((first) => first ?? leather.known);
    desk.change(setLeather(job, layer, { known }), `the leather of the ${of}`);
  };
  const table = useSyncExternalStore(stripTables.listen, stripTables.look)[layer] ?? [];
  return (
    <section aria-label={`Leather of the ${of}`} onFocus={onSight}>
      <h3>The {of}</h3>
      <WithWhy name={`leather of the ${of}`} spots={[`leather ${layer}`]} why={<KnownReason desk={desk} layer={layer} leather={leather} />}>
        The {of} is cut from <WordChoice label={`leather of the ${of}`} value={leather.known} options={knownLeathers} say={(k) => knownWords[k]} onChange={become} />,{" "}
        <NumberField desk={desk} spot={`leather ${layer}`} label={`thickness of the ${of}’s leather`} value={leather.thicknessMm} field={lengthField(0.4, 2, 0.05)} limits={{ least: 0.2, most: 6 }} edit={(thicknessMm) => setLeather(job, layer, { thicknessMm })} what={`the thickness of the ${of}’s leather`} /> thick. You call it{" "}
        <input
          className="words" aria-label={`what you call the ${of}’s leather`} value={said?.name ?? ""} placeholder="no name" size={Math.max(8, (said?.name ?? "").length)} maxLength={80}
          onChange={({ target: { value } }) => desk.change(value === "" ? forgetOfLeather(job, layer, "name") : setLeather(job, layer, { name: value }), `the name of the ${of}’s leather`, `typing the name of the ${layer}`)}
          onBlur={() => desk.settle()}
        />.
      </WithWhy>
      <p className="sentence" role="status">
        {readAs && readAs !== leather.known && count > 0 && <>{staying(said?.strips?.length ?? 0)} read as {knownWords[readAs]}, and the stretch is reckoned from what was read. Is it another skin, <button type="button" className="word" aria-label={`take the strips of the ${of} out`} onClick={() => desk.change(forgetOfLeather(job, layer, "strips"), `taking out the strips of the ${of}`)}>take the strips out</button>.</>}
      </p>
      <Told fit={fit} tested={count > 0} />
      <ul className="findings">{findings.filter(({ code }) => code !== "strip-empty" && (count > 0 || code !== "strips-none")).map((f, i) => <li key={i} className={severityOf(f)}>{explain(f)}</li>)}</ul>
      <Fold name={count > 0 ? "Strips of it that you tested" : "Test strips of it"} holds={stripWords(said?.strips?.length ?? 0, count)}>
        <LeatherStrips desk={desk} layer={layer} onTest={onTest} />
      </Fold>
      <div role="status"><FindingsList findings={table} all={[]} /></div>
      <LeatherKept desk={desk} layer={layer} shelf={shelf} />
    </section>
  );
}

const staying = (strips: number): string => (strips === 1 ? "Its strip stays; it was" : `Its ${strips} strips stay; they were`);

function stripWords(strips: number, readings: number): string {
  if (strips === 0) return "none yet; the figures are the usual ones";
  return `${strips === 1 ? "one strip" : `${strips} strips`}, ${readings === 1 ? "one reading" : `${readings} readings`}`;
}

/** What its strips say, or what is usual: stretch at one load along and across, with how sure that is, and what it is like. */
function Told({ fit: { leather, told, likeness }, tested }: { readonly fit: StripFit; readonly tested: boolean }): ReactElement {
  const band = ({ low, high }: StripFit["told"]["along"]): string => `${percent(low)} to ${percent(high)}`;
  const other = likeness.nearest !== leather.known;
  return (
    <>
      <p className="sentence">
        Under {toldN} N on {toldWidthMm} mm it gives <b>{percent(told.along.stretch)}</b> along its direction of least stretch ({band(told.along)}) and <b>{percent(told.across.stretch)}</b> across it ({band(told.across)}).
        {leather.set !== undefined && <> A minute after the load is off, <b>{percent(leather.set, 0)}</b> of the stretch is still there.</>}
        {tested && other && !likeness.unlike && <> It gives more like {knownWords[likeness.nearest]} than like {knownWords[leather.known]}.</>}
      </p>
      <p className="follows">{tested ? "By your strips: 9 of 10 skins like this one lie between the figures in brackets." : `The usual figures of ${knownWords[leather.known]}, from memory: 9 of 10 skins lie between the figures in brackets. Three strips of your own skin bring them much closer.`}</p>
    </>
  );
}

function KnownReason({ desk, layer, leather }: { readonly desk: Desk; readonly layer: UpperLayer; readonly leather: Leather }): ReactElement {
  const { tight, loose, breaks, thicknessMm, source } = knownFigures[leather.known];
  const range = ([low, high]: readonly [number, number]): string => `${percent(low, 0)} to ${percent(high, 0)}`;
  const own = desk.job.leather[layer]?.thicknessMm;
  return (
    <>
      <p>Pulled firmly by hand, {knownWords[leather.known]} gives {range(tight)} in its direction of least stretch and {range(loose)} across it; it tears at {range(breaks)}. Skins differ widely, even from the neck to the belly of one.</p>
      <p>The thickness is that of the strips, or of the skin where none are tested. A thinner skin gives more under the same pull. Usual is {mm(thicknessMm, 2)}.{" "}
        {own !== undefined && own !== thicknessMm && <button type="button" className="word" onClick={() => desk.change(forgetOfLeather(desk.job, layer, "thicknessMm"), "the usual thickness")}>Take the usual {mm(thicknessMm, 2)}</button>}
      </p>
      <p className="source">{source}</p>
    </>
  );
}
