import { useMemo, useRef, useState, type ReactElement, type ReactNode } from "react";
import type { Piece } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";
import { followedWords, type Followed } from "../state/follow.ts";
import { mm } from "../state/numbers.ts";
import { byGroup, kindsOf, type KindGroup, type PieceKind } from "../state/piece-kinds.ts";
import type { PieceWork } from "../state/piece-work.ts";
import type { Compared } from "../state/variant.ts";
import { layOut, manyKinds, nameHeight, sizedWords, underWords, type PlacedKind } from "./lay-kinds.ts";
import { letterWidth, type Named, type Span } from "./margin-labels.ts";
import { MarginWords } from "./margin-words.tsx";
import { MarkShape, pathOf } from "./mark-shape.tsx";
import { useSize } from "./use-size.ts";

interface PiecesViewProps {
  readonly pieces: readonly Piece[];
  readonly work: PieceWork;
  /** Words that stand below beside the others. */
  readonly children?: ReactNode;
}

/** All pieces of one foot at one scale, or one of them large; the other foot's are their mirror images. */
export function PiecesView({ pieces, work, children }: PiecesViewProps): ReactElement {
  const { onChoose, followed, kept, compared } = work;
  const frame = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(frame);
  const kinds = useMemo(() => kindsOf(pieces), [pieces]);
  // A choice may take away the very piece that was looked at.
  const chosen = kinds.some((k) => k.name === work.chosen) ? work.chosen : undefined;
  const groups = useMemo(() => byGroup(kinds), [kinds]);
  const [wanted, setWanted] = useState<KindGroup>();
  const only = kinds.length > manyKinds ? wanted : undefined;
  const shown = chosen ? kinds.filter((k) => k.name === chosen) : only ? kinds.filter((k) => k.group === only) : kinds;
  const former = useMemo(() => (compared && kept ? new Map(kindsOf(kept.pieces).map((k) => [k.name, k.shown])) : undefined), [compared, kept]);
  const another = new Set(compared?.pieces.map((p) => p.name));
  const changed = new Set([...(followed?.changed ?? []), ...(followed?.come ?? [])]);
  const placed = useMemo(() => layOut(shown, width, height, chosen ? roomForWords(shown[0], width) : 0), [shown, width, height, chosen]);
  const side = shown[0]?.shown.side;
  const words = chosen ? sizedWords : underWords;
  const brokenDrawn = former !== undefined && shown.some((k) => former.has(k.name) && another.has(k.name));
  return (
    <section className={shown.length > manyKinds ? "view pieces many" : "view pieces"} aria-label="The pieces">
      <div className="frame" ref={frame}>
        <svg className="overlay" width={width} height={height} role="group" aria-label="All pieces at one scale">
          {placed.map(({ kind, x, y, pxPerMm, left, top, wide, high }) => (
            <g
              key={kind.name}
              className={changed.has(kind.name) ? "piece changed" : "piece"}
              role="button"
              tabIndex={0}
              aria-pressed={chosen !== undefined}
              onClick={() => onChoose(chosen ? undefined : kind.name)}
              onKeyDown={(e) => {
                if (e.key !== "Enter" && e.key !== " ") return;
                e.preventDefault();
                onChoose(chosen ? undefined : kind.name);
              }}
            >
              <rect x={left} y={top} width={wide} height={high} className="ground" />
              <g transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) scale(${pxPerMm.toFixed(4)} ${(-pxPerMm).toFixed(4)})`}>
                <path d={`${pathOf(kind.shown.outline.xy)}Z`} className="cut" />
                {former?.has(kind.name) && another.has(kind.name) && (
                  <>
                    <path d={`${pathOf(former.get(kind.name)!.outline.xy)}Z`} className="of-a" />
                    <path d={`${pathOf(kind.shown.outline.xy)}Z`} className="cut over-a" />
                  </>
                )}
                {kind.shown.marks.map((m, i) => <MarkShape key={i} mark={m} />)}
              </g>
              <text x={left + wide / 2} y={top + high - 22} textAnchor="middle" className="name">{words(kind)[0]}</text>
              <text x={left + wide / 2} y={top + high - 5} textAnchor="middle" className="what">{words(kind)[1]}</text>
            </g>
          ))}
          {chosen && placed[0] && <MarginWords items={[...markWords(placed[0]), ...apartWords(placed[0], compared)]} width={width} height={height - nameHeight} body={spanOf(placed[0])} />}
        </svg>
      </div>
      <div className="under">
        <p>
          {side === "left" ? "Pieces of the left shoe" : "Pieces of the right shoe"}; the other shoe’s are their exact mirror images.
          {brokenDrawn && <span>Broken line: A.</span>}
          {chosen && <button type="button" className="word" onClick={() => onChoose(undefined)}>Show all pieces</button>}
        </p>
        {!chosen && kinds.length > manyKinds && (
          <p>
            <span>Show</span>
            <button type="button" className="word" aria-pressed={only === undefined} onClick={() => setWanted(undefined)}>all</button>
            {groups.map(({ group }) => <button key={group} type="button" className="word" aria-pressed={only === group} onClick={() => setWanted(group)}>{group}</button>)}
          </p>
        )}
        {children}
        {followed && toldHere(followed) && <p className="followed">{followedWords(followed)}</p>}
      </div>
    </section>
  );
}

/** What was changed at this station is told under its own sentence; what came from another has none here. */
const toldHere = (followed: Followed): boolean => followedWords(followed) !== undefined && !followed.keys.some((key) => /^(pieces|parts) /.test(key));

/** From where to where the piece itself reaches, px: its words stand beside it. */
function spanOf({ kind, x, pxPerMm }: PlacedKind): Span {
  const { minX, maxX } = bounds(kind.shown.outline);
  return { left: x + minX * pxPerMm, right: x + maxX * pxPerMm };
}

/** Where the piece lies farthest from A's. */
function apartWords({ kind, x, y, pxPerMm }: PlacedKind, compared: Compared | undefined): readonly Named[] {
  const apart = compared?.pieces.find((p) => p.name === kind.name)?.apart;
  return apart ? [{ key: "apart from A", text: `${mm(apart.mm)} from A`, x: x + apart.at[0] * pxPerMm, y: y - apart.at[1] * pxPerMm }] : [];
}

/** Free room on either side of a piece shown large: as its longest name needs, and never more than leaves the piece itself a good third. */
function roomForWords(kind: PieceKind | undefined, width: number): number {
  const longest = Math.max(0, ...(kind?.shown.marks ?? []).map((m) => (m.kind === "text" ? 0 : m.name.length)));
  return Math.min(Math.max(150, letterWidth * longest + 40), 0.32 * width);
}

/** Names of the marks of a piece shown large, each where it stands. What stands on both halves is named on the inner one alone. */
function markWords({ kind, x, y, pxPerMm }: PlacedKind): readonly Named[] {
  const said = new Map<string, Named>();
  for (const m of kind.shown.marks) {
    if (m.kind === "text" || said.has(m.name) || m.name.endsWith(", outside")) continue;
    const at = m.kind === "arrow" ? m.from : m.kind === "line" ? partWay(m.line.xy) : m.at;
    said.set(m.name, { key: m.name, text: m.name.replace(", inside", ""), x: x + at[0] * pxPerMm, y: y - at[1] * pxPerMm });
  }
  return [...said.values()];
}

/** Not the middle, where at the toe and the throat many names would meet. */
function partWay(xy: Float64Array): readonly [number, number] {
  const i = 2 * Math.floor(0.36 * (xy.length / 2));
  return [xy[i]!, xy[i + 1]!];
}
