import { useRef, type ReactElement } from "react";
import type { LastComparison } from "#last/compare.ts";
import type { MeasureName } from "#last/said.ts";
import type { Desk } from "../desk.ts";
import type { ApartMap } from "../picture/apart-map.ts";
import { mapCss } from "../picture/map-scale.ts";
import type { SeenLast } from "../state/seen-last.ts";
import type { Looking } from "../state/looking.ts";
import { mm, say, sayFixed } from "../state/numbers.ts";
import { withOther } from "../state/scan-edits.ts";
import { Chooser } from "./chooser.tsx";
import { NotesOn } from "./notes.tsx";

interface LastOtherProps {
  readonly desk: Desk;
  readonly seen: SeenLast;
  readonly looking: Looking;
  readonly map: ApartMap | undefined;
}

const verdicts: Readonly<Record<LastComparison["verdict"], string>> = {
  pair: "They are a pair.",
  "same side": "They are alike, and for the same foot: no pair.",
  "no pair": "They are no pair.",
};

/** The other last of the pair, held against this one. */
export function LastOther({ desk, seen, looking, map }: LastOtherProps): ReactElement {
  const chooser = useRef<HTMLInputElement>(null);
  const { last } = desk.job;
  const asked = last.from === "scan" ? last.other : undefined;
  const choose = (
    <Chooser at={chooser} label="the other last of the pair" accept=".stl,.obj,.ply,.glb,.3mf,.off" onFiles={([file]) => {
      if (!file) return;
      looking.change({ mapped: true, hand: "last" });
      void desk.openInto([file], (job, [name]) => withOther(job, name), "comparing with the other last");
    }} />
  );
  const word = (text: string): ReactElement => <button type="button" className="word" onClick={() => chooser.current?.click()}>{text}</button>;
  return (
    <>
      <h3>The other last of the pair</h3>
      {choose}
      {!asked && (
        <p className="sentence">
          The {seen.last.side === "left" ? "right" : "left"} last is made as the mirror of this one. If you have scanned both, {word("compare with the other last")} to see where they differ.
        </p>
      )}
      {asked && seen.other && map && <Compared comparison={seen.other.comparison} file={asked.file} map={map} looking={looking} measures={seen.last.measures} />}
      {asked && !seen.other && <NotesOn spots={["scan other"]} />}
      {asked && (
        <p className="sentence">
          {word("Compare with another one")}, or <button type="button" className="word" onClick={() => desk.change(withOther(desk.job, undefined), "leaving the comparison")}>leave the comparison</button>.
        </p>
      )}
    </>
  );
}

interface ComparedProps {
  readonly comparison: LastComparison;
  readonly file: string;
  readonly map: ApartMap;
  readonly looking: Looking;
  readonly measures: SeenLast["last"]["measures"];
}

const rows: readonly (readonly [MeasureName, string])[] = [
  ["stickLength", "stick length"],
  ["lastLength", "along the bottom"],
  ["jointGirth", "joint girth"],
  ["waistGirth", "waist girth"],
  ["instepGirth", "instep girth"],
  ["heelGirth", "heel girth"],
  ["ballWidth", "ball width"],
  ["seatWidth", "seat width"],
  ["heelHeight", "heel height"],
  ["toeSpring", "toe spring"],
];

function Compared({ comparison, file, map, looking, measures }: ComparedProps): ReactElement {
  const { verdict, mirrored, surface, feather, differences } = comparison;
  return (
    <>
      <p className="sentence"><b>{verdicts[verdict]}</b> {file} was {mirrored ? "mirrored and " : ""}laid on this last as closely as it goes.</p>
      <NotesOn spots={["scan other"]} />
      <p className="sentence">
        It differs most {map.worst.where}: there it {map.worst.mm > 0 ? "stands out" : "lies inside"} by {mmApart(map.worst.mm)}. All but a twentieth lies within {mmApart(surface.p95Mm)}; the feather lines run{" "}
        {mmApart(feather.rmsMm)} apart, at most {mmApart(feather.maxMm)}.{" "}
        <button type="button" className="word" onClick={() => looking.change({ mapped: !looking.mapped })}>{looking.mapped ? "Hide the colours" : "Show it in colours"}</button>
      </p>
      {looking.mapped && <Legend end={map.end} />}
      <table className="figures">
        <caption>Lengths and girths in mm; what differs is the other less this one.</caption>
        <thead><tr><th scope="col">measure</th><th scope="col">this</th><th scope="col">other</th><th scope="col">differs</th></tr></thead>
        <tbody>
          {rows.map(([key, name]) => (
            <tr key={key}><th scope="row">{name}</th><td>{measures[key].toFixed(1)}</td><td>{(measures[key] + differences[key]).toFixed(1)}</td><td>{differences[key] > 0.05 ? "+" : ""}{sayFixed(differences[key])}</td></tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const mmApart = (d: number): string => mm(Math.abs(d), Math.abs(d) < 1 ? 2 : 1);

function Legend({ end }: { readonly end: number }): ReactElement {
  const shares = Array.from({ length: 9 }, (_, i) => (i - 4) / 4);
  return (
    <figure className="legend">
      <div className="swatches" aria-hidden="true">{shares.map((s) => <span key={s} style={{ background: mapCss(s) }} />)}</div>
      <div className="marks" aria-hidden="true">{shares.map((s, i) => <span key={s}>{i % 2 === 0 && `${s > 0 ? "+" : ""}${say(s * end, 2)}`}</span>)}</div>
      <figcaption>mm: plus where the other last stands out beyond this one, minus where it lies inside. The numbered lines on the last say the same.</figcaption>
    </figure>
  );
}
