import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import { mapCss } from "../picture/map-scale.ts";
import type { MapOf } from "../picture/strain.ts";
import type { StretchMap } from "../picture/stretch-map.ts";
import { percent, say } from "../state/numbers.ts";
import { placeOf } from "../state/places.ts";
import { WordChoice } from "./word-choice.tsx";

const maps: readonly MapOf[] = ["give", "gather"];
const mapWords: Readonly<Record<MapOf, string>> = { give: "how far the leather must stretch", gather: "how far the leather must gather" };

/** How far the leather must stretch or gather from the flat piece to the last, and where most. */
export function ShellStretch({ pair, map, onMap }: { readonly pair: LastPair; readonly map: StretchMap; readonly onMap: (of: MapOf) => void }): ReactElement {
  const { strain, unsprung, springMm } = pair.flat;
  const place = placeOf(pair.last, map.worst.onLast as [number, number, number]);
  return (
    <>
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
