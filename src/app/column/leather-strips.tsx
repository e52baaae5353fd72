import { useEffect, useRef, useState, type ReactElement } from "react";
import { stripWays, type UpperLayer } from "#leather/leather.ts";
import { wayWords } from "#leather/strip-words.ts";
import type { Desk } from "../desk.ts";
import { addStrip, stripsOf } from "../state/leather-edits.ts";
import { layerWords } from "../state/leather-words.ts";
import { keepLoadUnit, keptLoadUnit, loadUnits, loadUnitWords } from "../state/load-unit.ts";
import { StripIds } from "../state/strip-ids.ts";
import { stripTables } from "../strip-tables.ts";
import { Chooser } from "./chooser.tsx";
import { StripTable } from "./leather-strip.tsx";
import { WordChoice } from "./word-choice.tsx";

const stripIds: Readonly<Record<UpperLayer, StripIds>> = { upper: new StripIds(), lining: new StripIds() };

interface LeatherStripsProps {
  readonly desk: Desk;
  readonly layer: UpperLayer;
  /** The picture shows how a strip is cut, marked and loaded. */
  readonly onTest: () => void;
}

/** All strips of one leather: what was read on them, and the ways to bring more in. */
export function LeatherStrips({ desk, layer, onTest }: LeatherStripsProps): ReactElement {
  const [unit, setUnit] = useState(keptLoadUnit);
  const chooser = useRef<HTMLInputElement>(null);
  const strips = stripsOf(desk.job, layer);
  const of = layerWords[layer];
  const names = stripIds[layer].of(strips);
  const list = useRef<HTMLDivElement>(null);
  const added = useRef(false);
  useEffect(() => {
    if (!added.current) return;
    added.current = false;
    list.current?.querySelector<HTMLInputElement>('section:last-of-type .new-row [data-part="load"]')?.focus();
  }, [strips.length]);
  return (
    <>
      <p className="sentence">
        Cut a strip along the direction of least stretch, one across it and one at 45 degrees, load each step by step and read how far its marks are apart. <button type="button" className="word" onClick={onTest}>Show me how</button>
      </p>
      <p className="follows">Wear safety glasses, keep your feet from under the weight, and stop before the grain cracks. Nothing here replaces a maker’s judgement of a skin.</p>
      <p className="sentence">
        Loads are typed in{" "}
        <WordChoice label="unit of the loads" value={unit} options={loadUnits} say={(u) => loadUnitWords[u]} onChange={(u) => {
          keepLoadUnit(u);
          setUnit(u);
        }} />. Enter takes a row; rows copied from a table can be pasted into it.
      </p>
      <div ref={list}>{strips.map((strip, at) => <StripTable key={names[at]} name={names[at]!} desk={desk} layer={layer} at={at} strip={strip} unit={unit} />)}</div>
      <p className="acts-here">
        <span>Add a strip cut</span>
        {stripWays.map((way) => <button key={way} type="button" className="word" aria-label={`add a strip of the ${of} cut ${wayWords[way]}`} onClick={() => {
          added.current = true;
          desk.change(addStrip(desk.job, layer, way), `a strip of the ${of}`);
        }}>{wayWords[way]}</button>)}
      </p>
      <p className="acts-here">
        <button type="button" className="word" aria-label={`open a table of strips of the ${of}`} onClick={() => chooser.current?.click()}>Open a table (CSV)</button>
        <PasteTable of={of} onText={(text) => stripTables.take(desk, layer, text)} />
      </p>
      <Chooser at={chooser} label={`table of strips of the ${of}`} accept=".csv,.txt,.tsv,text/csv" onFiles={([file]) => file && void stripTables.open(desk, layer, file)} />
    </>
  );
}

/** A place to paste a whole table into. */
function PasteTable({ of, onText }: { readonly of: string; readonly onText: (text: string) => void }): ReactElement {
  const [open, setOpen] = useState(false);
  const [text, setText] = useState("");
  if (!open) return <button type="button" className="word" aria-label={`paste a table of strips of the ${of}`} onClick={() => setOpen(true)}>Paste a table</button>;
  return (
    <span className="paste-table">
      <textarea aria-label={`table of strips of the ${of}, as text`} rows={5} value={text} onChange={(e) => setText(e.target.value)} autoFocus />
      <button type="button" className="word" disabled={text.trim() === ""} onClick={() => {
        onText(text);
        setText("");
        setOpen(false);
      }}>Take it</button>
      <button type="button" className="word" onClick={() => setOpen(false)}>Leave it</button>
    </span>
  );
}
