import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import { springRange } from "#shell/spring-range.ts";
import type { Desk } from "../desk.ts";
import { mapCss } from "../picture/map-scale.ts";
import type { MapOf } from "../picture/strain.ts";
import type { StretchMap } from "../picture/stretch-map.ts";
import { setShell } from "../state/edits.ts";
import { lengthField } from "../state/measure-field.ts";
import { percent, say } from "../state/numbers.ts";
import { placeOf } from "../state/places.ts";
import { NumberField } from "./number-field.tsx";
import { toplineWords } from "./station-lines.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const maps: readonly MapOf[] = ["give", "gather"];
const mapWords: Readonly<Record<MapOf, string>> = { give: "how far the leather must stretch", gather: "how far the leather must gather" };
const { usual, most } = springRange;
const springField = lengthField(usual.min, usual.max, usual.step);
const springLimits = { least: -most, most };

interface StationShellProps {
  readonly desk: Desk;
  /** Both nothing while no pair can be made. */
  readonly pair: LastPair | undefined;
  readonly map: StretchMap | undefined;
  readonly onMap: (of: MapOf) => void;
}

/** The shell laid flat: what the flat piece asks of the leather, and the spring. */
export function StationShell({ desk, pair, map, onMap }: StationShellProps): ReactElement {
  const springMm = desk.job.shell.springMm ?? 0;
  return (
    <>
      <WithWhy name="spring" spots={["spring"]} why={<SpringReason />}>
        The heel ends are swung together by{" "}
        <NumberField
          desk={desk}
          spot="spring"
          label="spring at the topline"
          value={springMm}
          field={springField}
          limits={springLimits}
          edit={(v) => setShell(desk.job, { springMm: v })}
          what="the spring"
        />{" "}
        at the topline, from where they lie of themselves.
      </WithWhy>
      {(springMm > usual.max || springMm < usual.min) && (
        <p className="follows">That is far more than the few millimetres that are usual: sew a trial in scrap before you cut.</p>
      )}
      {pair && map && <Stretch pair={pair} map={map} onMap={onMap} />}
    </>
  );
}

function Stretch({ pair, map, onMap }: { readonly pair: LastPair; readonly map: StretchMap; readonly onMap: (of: MapOf) => void }): ReactElement {
  const { strain, unsprung, springMm } = pair.flat;
  const place = placeOf(pair.last, map.worst.onLast as [number, number, number]);
  return (
    <>
      <p className="follows">{toplineWords(pair)}</p>
      <p className="sentence">
        The colours show <WordChoice label="what the colours show" value={map.of} options={maps} say={(o) => mapWords[o]} onChange={onMap} /> from the flat piece to the last.
      </p>
      <Legend map={map} />
      <p className="sentence">
        {map.of === "give" ? "It stretches" : "It gathers"} most {place}: <b>{percent(strain[map.of])}</b>
        {springMm !== 0 && ` (${percent(unsprung[map.of])} without spring)`}.
      </p>
      <p className="follows">
        Half of the piece changes by less than {percent(strain.p50)}{springMm !== 0 && ` (${percent(unsprung.p50)} without spring)`}, all but a twentieth of it by less than {percent(strain.p95)}.
      </p>
    </>
  );
}

function Legend({ map }: { readonly map: StretchMap }): ReactElement {
  const shares = Array.from({ length: 9 }, (_, i) => (i - 4) / 4);
  return (
    <figure className="legend">
      <div className="swatches" aria-hidden="true">
        {shares.map((s) => <span key={s} style={{ background: mapCss(s) }} />)}
      </div>
      <div className="marks" aria-hidden="true">
        {shares.map((s) => <span key={s}>{s > 0 ? "+" : ""}{say(s * map.end * 100)}</span>)}
      </div>
      <figcaption>percent, flat piece to last: minus must gather, plus must stretch. The numbered lines on the picture say the same.</figcaption>
    </figure>
  );
}

function SpringReason(): ReactElement {
  return (
    <>
      <p>
        Swinging the heel ends together lays the piece closer on the skin and presses the flanks of the shoe inward; the leather between pays with a little more stretch. Too much, and the forepart
        comes out full and pleats; too little, and the sides stand off.
      </p>
      <p>The topline keeps its length on the last here. A topline is often cut shorter so that it grips (2 to 3 % for kid and calf, 1 to 1.5 % for firm or tightly lined leather): that is not done for you yet.</p>
      <p className="source">Common practice, no source, for the shares; that an unsprung pump gapes and an over-sprung one pleats is taught in shoemaking classes and stands in a handbook of 1902.</p>
    </>
  );
}
