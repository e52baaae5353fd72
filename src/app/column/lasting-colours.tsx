import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import { lastedMaps, lastedNumber, lastedWorst, type LastedMap, type LastedMapOf } from "../picture/lasted-map.ts";
import { mapCss } from "../picture/map-scale.ts";
import { placeOf } from "../state/places.ts";
import { WordChoice } from "./word-choice.tsx";

const words: Readonly<Record<LastedMapOf, string>> = {
  most: "how far the leather is stretched",
  least: "how far the leather is gathered",
  along: "stretch along its direction of least stretch",
  across: "stretch across it",
  "stands off": "where the upper stands off the last",
};

interface LastingColoursProps {
  readonly pair: LastPair;
  readonly map: LastedMap;
  readonly onMap: (of: LastedMapOf) => void;
}

/** What the colours on the lasted upper show, their scale, and the worst place in words. */
export function LastingColours({ pair, map, onMap }: LastingColoursProps): ReactElement {
  const off = map.of === "stands off";
  const shares = off ? Array.from({ length: 5 }, (_, i) => i / 4) : Array.from({ length: 9 }, (_, i) => (i - 4) / 4);
  const does = off ? "It stands off" : map.worst.value < 0 ? "It is gathered" : "It is stretched";
  return (
    <>
      <p className="sentence">The colours show <WordChoice label="what the colours show" value={map.of} options={lastedMaps} say={(o) => words[o]} onChange={onMap} />.</p>
      <figure className={`legend${off ? " one-sided" : ""}`}>
        <div className="swatches" aria-hidden="true">{shares.map((s) => <span key={s} style={{ background: mapCss(s) }} />)}</div>
        <div className="marks" aria-hidden="true">{shares.map((s) => <span key={s}>{lastedNumber(map.of, s * map.end)}</span>)}</div>
        <figcaption>{off ? "mm between the upper and what it should lie on." : "Percent of the flat piece’s own length: plus is stretched, minus is gathered."} The numbered lines on the picture say the same.</figcaption>
      </figure>
      <p className="sentence">{does} most {placeOf(pair.last, map.worst.at)}: <b>{lastedWorst(map)}</b>.</p>
    </>
  );
}
