import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import { mapCss } from "../picture/map-scale.ts";
import { mapNumber, type ShellMap } from "../picture/shell-map.ts";
import type { MapOf } from "../picture/strain.ts";
import { mm, percent } from "../state/numbers.ts";
import { placeOf } from "../state/places.ts";
import { WordChoice } from "./word-choice.tsx";

const maps: readonly MapOf[] = ["give", "gather", "stand-off"];
const mapWords: Readonly<Record<MapOf, string>> = {
  give: "how far the leather must stretch",
  gather: "how far the leather must gather",
  "stand-off": "where the card stands off",
};

interface ShellColoursProps {
  readonly pair: LastPair;
  /** Nothing while the card has not been laid back yet. */
  readonly map: ShellMap | undefined;
  readonly of: MapOf;
  readonly onMap: (of: MapOf) => void;
}

/** What the colours of the picture show, their scale, and what the worst place means for the hand. */
export function ShellColours({ pair, map, of, onMap }: ShellColoursProps): ReactElement {
  return (
    <>
      <p className="sentence">
        The colours show <WordChoice label="what the colours show" value={of} options={maps} say={(o) => mapWords[o]} onChange={onMap} /> {of === "stand-off" ? "when it is laid back on the last." : "from the flat piece to the last."}
      </p>
      {map ? <Legend map={map} /> : <p className="follows">They come as soon as the card has been laid back on the last.</p>}
      {map && (map.of === "stand-off" ? <StandOff pair={pair} map={map} /> : <Stretch pair={pair} map={map} of={map.of} />)}
    </>
  );
}

function Stretch({ pair, map, of }: { readonly pair: LastPair; readonly map: ShellMap; readonly of: "give" | "gather" }): ReactElement {
  const { strain, unsprung } = pair.flat;
  const place = placeOf(pair.last, map.worst.onLast as [number, number, number]);
  const dearer = Math.abs(strain[of] - unsprung[of]) >= 0.0005;
  return (
    <>
      <p className="sentence">
        {of === "give" ? "It stretches" : "It gathers"} most {place}: <b>{percent(strain[of])}</b>{dearer && ` (${percent(unsprung[of])} if the topline kept its length and nothing were swung)`}. {handWords(of, strain[of])}
      </p>
      <p className="follows">
        Half of the piece changes by less than {percent(strain.p50)}, all but a twentieth of it by less than {percent(strain.p95)}.
      </p>
    </>
  );
}

/** What so much stretch or gathering means for the hand; the bounds are common practice, no source: 6 to 12 % across the forepart, 15 to 25 % at toe corners. */
function handWords(of: "give" | "gather", share: number): string {
  if (of === "give") return share < 0.06 ? "Any upper leather goes there by hand." : share < 0.12 ? "A firm pull with the pincers, as is usual across the forepart." : share < 0.2 ? "Damp it there and pull in turns; test a scrap of this leather first." : "Few leathers go so far: soften the line there or give it a seam.";
  return share < 0.08 ? "It lies down under the hammer." : share < 0.2 ? "Small pleats under the feather: spread them evenly, and pare them before cementing." : "Deep pleats: nick the margin there, pull pleat by pleat, and pare them away.";
}

function StandOff({ pair, map }: { readonly pair: LastPair; readonly map: ShellMap }): ReactElement {
  const place = placeOf(pair.last, map.worst.onLast as [number, number, number]);
  return (
    <p className="sentence">
      It stands off most {place}: <b>{mm(map.worst.value)}</b>. {map.worst.value <= 1 ? "That is no more than a thumb presses down." : "Leather is drawn down there in lasting; at the flanks more than 1 mm gapes once the last is out."}
    </p>
  );
}

function Legend({ map }: { readonly map: ShellMap }): ReactElement {
  const off = map.of === "stand-off";
  const shares = off ? Array.from({ length: 5 }, (_, i) => i / 4) : Array.from({ length: 9 }, (_, i) => (i - 4) / 4);
  return (
    <figure className={`legend${off ? " one-sided" : ""}`}>
      <div className="swatches" aria-hidden="true">
        {shares.map((s) => <span key={s} style={{ background: mapCss(s) }} />)}
      </div>
      <div className="marks" aria-hidden="true">
        {shares.map((s) => <span key={s}>{mapNumber(map.of, s * map.end)}</span>)}
      </div>
      <figcaption>{off ? "mm between the card and what it should lie on." : "percent, flat piece to last: minus must gather, plus must stretch."} The numbered lines on the picture say the same.</figcaption>
    </figure>
  );
}
