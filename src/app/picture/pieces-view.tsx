import { useMemo, useRef, type ReactElement } from "react";
import type { Mark, Piece } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";
import { kindsOf, type PieceKind } from "../state/piece-kinds.ts";
import { inRows } from "../state/rows.ts";
import type { Named } from "./margin-labels.ts";
import { MarginWords } from "./margin-words.tsx";
import { useSize } from "./use-size.ts";

interface PiecesViewProps {
  readonly pieces: readonly Piece[];
  readonly chosen: string | undefined;
  readonly onChoose: (name: string | undefined) => void;
}

/** All pieces of one foot at one scale, or one of them large; the other foot's are their mirror images. */
export function PiecesView({ pieces, chosen, onChoose }: PiecesViewProps): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(frame);
  const kinds = useMemo(() => kindsOf(pieces), [pieces]);
  const shown = chosen ? kinds.filter((k) => k.name === chosen) : kinds;
  const placed = useMemo(() => layOut(shown, width, height, chosen ? 150 : 0), [shown, width, height, chosen]);
  const side = shown[0]?.shown.side;
  return (
    <section className="view pieces" aria-label="The pieces">
      <div className="frame" ref={frame}>
        <svg className="overlay" width={width} height={height} role="group" aria-label="All pieces at one scale">
          {placed.map(({ kind, x, y, pxPerMm, left, top, wide, high }) => (
            <g
              key={kind.name}
              className="piece"
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
                {kind.shown.marks.map((m, i) => <MarkShape key={i} mark={m} />)}
              </g>
              <text x={left + wide / 2} y={top + high - 22} textAnchor="middle" className="name">{kind.name}{kind.net && !/net/.test(kind.name) ? ", net" : ""}</text>
              <text x={left + wide / 2} y={top + high - 5} textAnchor="middle" className="what">{kind.count} of {kind.material}</text>
            </g>
          ))}
          {chosen && placed[0] && <MarginWords items={markWords(placed[0])} width={width} height={height - nameHeight} />}
        </svg>
      </div>
      <p className="under">
        {side === "left" ? "Pieces of the left shoe" : "Pieces of the right shoe"}; the other shoe’s are their exact mirror images.{" "}
        {chosen && <button type="button" className="word" onClick={() => onChoose(undefined)}>Show all pieces</button>}
      </p>
    </section>
  );
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

function MarkShape({ mark }: { readonly mark: Mark }): ReactElement | null {
  switch (mark.kind) {
    case "line":
      return <path d={pathOf(mark.line.xy)} className={`mark ${mark.use}`} />;
    case "notch":
      return <path d={`M${mark.at[0]} ${mark.at[1]}L${mark.toward[0]} ${mark.toward[1]}`} className="mark notch" />;
    case "prick":
      return <path d={`M${mark.at[0] - 1.6} ${mark.at[1]}h3.2M${mark.at[0]} ${mark.at[1] - 1.6}v3.2`} className="mark prick" />;
    case "arrow": {
      const [dx, dy] = [mark.to[0] - mark.from[0], mark.to[1] - mark.from[1]];
      const size = Math.hypot(dx, dy) || 1;
      const [ux, uy] = [(dx / size) * 5, (dy / size) * 5];
      // A head at both ends: least stretch is a direction and has no sense.
      const head = (x: number, y: number): string => `m${-x - y / 2} ${-y + x / 2}l${x + y / 2} ${y - x / 2}l${-x + y / 2} ${-y - x / 2}`;
      return <path d={`M${mark.to[0]} ${mark.to[1]}L${mark.from[0]} ${mark.from[1]}${head(-ux, -uy)}M${mark.to[0]} ${mark.to[1]}${head(ux, uy)}`} className="mark arrow" />;
    }
    case "text":
      return null;
  }
}

const pathOf = (xy: Float64Array): string => {
  let d = "";
  for (let i = 0; i < xy.length; i += 2) d += `${i === 0 ? "M" : "L"}${xy[i]!.toFixed(2)} ${xy[i + 1]!.toFixed(2)}`;
  return d;
};

interface PlacedKind {
  readonly kind: PieceKind;
  readonly x: number;
  readonly y: number;
  readonly pxPerMm: number;
  readonly left: number;
  readonly top: number;
  readonly wide: number;
  readonly high: number;
}

/** Room under each piece for its name, px. */
const nameHeight = 46;
const gap = 14;

function layOut(kinds: readonly PieceKind[], width: number, height: number, forWords: number): readonly PlacedKind[] {
  if (width < 50 || height < 50 || kinds.length === 0) return [];
  const boxes = kinds.map((k) => bounds(k.shown.outline));
  const sizes = boxes.map((b) => ({ wide: b.maxX - b.minX, high: b.maxY - b.minY }));
  const { scale, places } = inRows(sizes, { width: Math.max(200, width - 2 * forWords), height, gap, below: nameHeight, leastWide: 96 });
  return kinds.map((kind, i) => {
    const b = boxes[i]!;
    const p = places[i]!;
    const wide = Math.max(96, sizes[i]!.wide * scale);
    return {
      kind,
      pxPerMm: scale,
      x: forWords + p.x + wide / 2 - ((b.minX + b.maxX) / 2) * scale,
      y: p.y + b.maxY * scale,
      left: forWords + p.x,
      top: p.y,
      wide,
      high: sizes[i]!.high * scale + nameHeight,
    };
  });
}
