import { useMemo, useRef, type ReactElement } from "react";
import type { TapedPair } from "#job/pair.ts";
import { reversed } from "#plane/along.ts";
import type { TapedHalf } from "#tape/taped-shell.ts";
import { mm } from "../state/numbers.ts";
import { boxRound } from "../state/photo-place.ts";
import { lineInk } from "./ink.ts";
import type { Named } from "./margin-labels.ts";
import { alongLines, PinnedNotes } from "./margin-words.tsx";
import { ScaleBar } from "./scale-bar.tsx";
import { useSize } from "./use-size.ts";

type Edge = "feather" | "back" | "topline" | "centre";
const edges: readonly Edge[] = ["centre", "feather", "back", "topline"];

/** Both halves of the taped upper laid to one centre line, toe upward as the last is looked down upon. */
export function TapeView({ pair }: { readonly pair: TapedPair }): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(frame);
  const { tape } = pair;
  const box = useMemo(() => boxRound([tape.medial, tape.lateral].flatMap((half) => edges.map((edge) => half[edge]))), [tape]);
  const pxPerMm = Math.max(0.1, Math.min((width - 320) / (box.maxY - box.minY), (height - 96) / (box.maxX - box.minX)));
  // The shell lies as on a right last; a left one is its mirror image.
  const hand = tape.side === "right" ? -1 : 1;
  const x = (v: number): number => width / 2 + hand * (v - (box.minY + box.maxY) / 2) * pxPerMm;
  const y = (u: number): number => (height - 40) / 2 + 8 - (u - (box.minX + box.maxX) / 2) * pxPerMm;
  const path = (xy: Float64Array): string => {
    let d = "";
    for (let i = 0; i < xy.length; i += 2) d += `${i === 0 ? "M" : "L"}${x(xy[i + 1]!).toFixed(1)} ${y(xy[i]!).toFixed(1)}`;
    return d;
  };
  const words = [tape.medial, tape.lateral].flatMap((half) => wordsOf(half)).map(({ at, ...word }): Named => ({ ...word, x: x(at[1]), y: y(at[0]) }));
  const drawn = [tape.medial, tape.lateral].flatMap((half) => edges.map((edge) => Array.from({ length: half[edge].xy.length / 2 }, (_, i) => ({ x: x(half[edge].xy[2 * i + 1]!), y: y(half[edge].xy[2 * i]!) }))));
  const clearOf = alongLines(drawn, 10);
  return (
    <section className="view taped" aria-label="The taped upper">
      <div className="frame" ref={frame}>
        <svg className="overlay" width={width} height={height} role="img" aria-label={`Both halves of the taped upper of the ${tape.side} shoe, laid to one centre line, toe upward.`}>
          {[tape.medial, tape.lateral].map((half) => <path key={half.half} className="sheet-of-card" d={`${path(roundHalf(half))}Z`} />)}
          {[tape.medial, tape.lateral].flatMap((half) => edges.map((edge) => {
            const { accent, width: w, dash } = lineInk(edge);
            return <path key={`${half.half} ${edge}`} className={`line${accent ? " accent" : ""}`} strokeWidth={w} strokeDasharray={dash ? "9 5" : undefined} d={path(half[edge].xy)} />;
          }))}
          <PinnedNotes items={words} width={width} height={height - 40} clearOf={clearOf} />
          <ScaleBar pxPerMm={pxPerMm} width={width} height={height} />
        </svg>
      </div>
      <p className="under">The two halves as you taped them, laid to one centre line. There is no last here, so nothing is shown on one.</p>
    </section>
  );
}

/** The words of one half; the toe is common to both and named once. */
function wordsOf({ half, topline, feather, back, lengths }: TapedHalf): readonly { readonly key: string; readonly text: string; readonly at: readonly [number, number] }[] {
  const name = half === "medial" ? "inner" : "outer";
  const common = half === "medial" ? [{ key: "toe", text: "toe point", at: endOf(feather.xy) }, { key: "throat", text: `throat, ${mm(lengths.centre)} from the toe`, at: endOf(topline.xy) }] : [];
  return [
    ...common,
    { key: `${name} topline`, text: `${name} topline ${mm(lengths.topline)}`, at: partOf(topline.xy, 0.45) },
    { key: `${name} back`, text: `${name} back ${mm(lengths.back)}`, at: partOf(back.xy, 0.5) },
    { key: `${name} feather`, text: `${name} feather edge ${mm(lengths.feather, 0)}`, at: partOf(feather.xy, 0.42) },
  ];
}

/** The half once round: feather edge, centre, topline and back. */
const roundHalf = ({ feather, centre, topline, back }: TapedHalf): Float64Array => Float64Array.of(...feather.xy, ...centre.xy, ...reversed(topline).xy, ...reversed(back).xy);

const endOf = (xy: Float64Array): readonly [number, number] => [xy.at(-2)!, xy.at(-1)!];

function partOf(xy: Float64Array, share: number): readonly [number, number] {
  const i = 2 * Math.floor(share * (xy.length / 2 - 1));
  return [xy[i]!, xy[i + 1]!];
}
