import { useEffect, useMemo, useRef, type ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { LineSettings } from "#lines/lines.ts";
import { say } from "../state/numbers.ts";
import { useCardPlace, type CardPlace } from "./card-place.ts";
import { ringHalf, type InTheWay, type Place } from "./clear-place.ts";
import { cardOutline, outerFolded, type DrawnLine, type LineKey } from "./drawn-lines.ts";
import { Grip, type Pull } from "./grip.tsx";
import type { Handle } from "./handles.ts";
import { lineInk } from "./ink.ts";
import type { Named } from "./margin-labels.ts";
import { alongLines, PinnedNotes } from "./margin-words.tsx";
import { ScaleBar } from "./scale-bar.tsx";
import type { ShellMap } from "./shell-map.ts";
import { useSize } from "./use-size.ts";

export interface CardViewProps {
  readonly pair: LastPair;
  readonly lines: readonly DrawnLine[];
  readonly handles: readonly Handle[];
  readonly map: ShellMap | undefined;
  readonly notes: readonly { readonly key: string; readonly text: string; readonly onCard: readonly number[] }[];
  /** Cuts in from the feather edge, each x0 y0 x1 y1. */
  readonly nicks: readonly Float64Array[];
  /** Another outline of the same card, drawn broken over it. */
  readonly beside?: Float64Array | undefined;
  /** The outer half is drawn folded over the inner one as well. */
  readonly folded: boolean;
  readonly lit: LineKey | undefined;
  readonly onLit: (key: LineKey | undefined) => void;
  readonly asked: Partial<LineSettings>;
  readonly busy: boolean;
  readonly onPull: Pull;
  readonly onDone: () => void;
}

/** The upper laid flat, net, on card. */
export function CardView({ pair, lines, handles, map, notes, nicks, beside, folded, lit, onLit, asked, busy, onPull, onDone }: CardViewProps): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const { width, height } = useSize(frame);
  const outline = useMemo(() => cardOutline(pair), [pair]);
  const overInner = useMemo(() => (folded ? outerFolded(pair) : []), [pair, folded]);
  const lay = useCardPlace(outline, width, height, pair.last);
  const path = (points: Float64Array): string => {
    let d = "";
    for (let i = 0; i < points.length; i += 2) d += `${i === 0 ? "M" : "L"}${lay.x(points[i]!, points[i + 1]!).toFixed(1)} ${lay.y(points[i]!, points[i + 1]!).toFixed(1)}`;
    return d;
  };
  useEffect(() => {
    if (canvas.current) paint(canvas.current, width, height, map, lay);
  }, [width, height, map, lay]);

  const labels: Named[] = notes.map((n) => ({ key: n.key, text: n.text, x: lay.x(n.onCard[0]!, n.onCard[1]!), y: lay.y(n.onCard[0]!, n.onCard[1]!) }));
  const drawn = (points: Float64Array): readonly Place[] => Array.from({ length: points.length / 2 }, (_, i) => ({ x: lay.x(points[2 * i]!, points[2 * i + 1]!), y: lay.y(points[2 * i]!, points[2 * i + 1]!) }));
  const linesAt = alongLines(lines.flatMap((l) => l.onCard.map(drawn)));
  const gripsAt = handles.flatMap((h) => h.onCard.map((at) => ({ x: lay.x(at[0]!, at[1]!), y: lay.y(at[0]!, at[1]!), half: ringHalf })));
  const clearOf: readonly InTheWay[] = [...linesAt, ...gripsAt];
  const litLine = lines.find((l) => l.key === lit);
  return (
    <section className={`view card${map ? " on-map" : ""}`} aria-label="The card">
      <div className="frame" ref={frame} onPointerLeave={(e) => e.pointerType === "mouse" && onLit(undefined)}>
        <canvas ref={canvas} aria-hidden="true" />
        <svg className="overlay" width={width} height={height} role="group" aria-label={`The upper of the ${pair.last.side} shoe laid flat, net, toe upward.`}>
          <path className="sheet-of-card" d={`${path(outline)}Z`} fillOpacity={map ? 0 : 1} onPointerMove={() => onLit(undefined)} />
          {map?.onCard.map((l, i) => <path key={i} className="level-line" d={path(l)} />)}
          {beside && <path className="beside" d={`${path(beside)}Z`} />}
          {overInner.map((points, i) => <path key={i} className="folded" d={path(points)} />)}
          {nicks.map((cut, i) => <path key={i} className="nick" d={path(cut)} />)}
          {lines.map((l) => {
            const { accent, width: w, dash } = lineInk(l.key);
            return l.onCard.map((points, i) => (
              <path key={`${l.key} ${i}`} d={path(points)} className={`line${accent ? " accent" : ""}`} strokeWidth={l.key === lit ? w + 2.5 : w} strokeDasharray={dash ? "9 5" : undefined} />
            ));
          })}
          {lines.map((l) => l.onCard.map((points, i) => <path key={`${l.key} ${i} touch`} d={path(points)} className="touch-line" onPointerEnter={() => onLit(l.key)} onPointerMove={() => onLit(l.key)} />))}
          {map?.numbers.map((n) => <text key={n.key} className="level" x={lay.x(n.onCard[0]!, n.onCard[1]!)} y={lay.y(n.onCard[0]!, n.onCard[1]!)} textAnchor="middle" dominantBaseline="middle">{n.text}</text>)}
          <PinnedNotes items={labels} width={width} height={height - 40} clearOf={clearOf} />
          <ScaleBar pxPerMm={lay.pxPerMm} width={width} height={height} />
          {handles.flatMap((h) => h.onCard.map((at, i) => {
            const directions = h.moves.map((m) => ({ x: -m.onCard[i]![1]! * lay.pxPerMm, y: -m.onCard[i]![0]! * lay.pxPerMm }));
            return <Grip key={`${h.key} ${i}`} picture="card" handle={h} pair={pair} asked={asked} busy={busy} clearOf={() => clearOf} x={lay.x(at[0]!, at[1]!)} y={lay.y(at[0]!, at[1]!)} directions={directions} origin={() => frame.current?.getBoundingClientRect()} onPull={onPull} onDone={onDone} />;
          }))}
        </svg>
        {litLine && <p className="lit">{litLine.name}, {say(litLine.lengthOnCardMm, 0)} mm on the card</p>}
      </div>
    </section>
  );
}

/** So many triangles look smooth, though each is of one colour. */
const smoothTriangles = 10_000;

/** Fills the triangles of the card with the colours of the map; without a map the canvas stays clear. */
function paint(canvas: HTMLCanvasElement, width: number, height: number, map: ShellMap | undefined, lay: CardPlace): void {
  const dots = Math.min(2, globalThis.devicePixelRatio || 1);
  canvas.width = width * dots;
  canvas.height = height * dots;
  const pen = canvas.getContext("2d");
  if (!pen || !map) return;
  pen.scale(dots, dots);
  const { mesh: { triangles }, uv } = map;
  // A coarse card is painted in smaller triangles, or its own would be seen.
  const parts = Math.max(1, Math.ceil(Math.sqrt((3 * smoothTriangles) / triangles.length)));
  pen.lineWidth = 0.7;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    /** What lies i of the parts from a toward b and j toward c. */
    const mix = (from: ArrayLike<number>, size: number, k: number, i: number, j: number): number => from[size * a + k]! + ((from[size * b + k]! - from[size * a + k]!) * i + (from[size * c + k]! - from[size * a + k]!) * j) / parts;
    const at = (i: number, j: number): [number, number] => {
      const [x, y] = [mix(uv, 2, 0, i, j), mix(uv, 2, 1, i, j)];
      return [lay.x(x, y), lay.y(x, y)];
    };
    const fill = (corners: readonly (readonly [number, number])[]): void => {
      const colour = [0, 1, 2].map((k) => Math.round(corners.reduce((sum, [i, j]) => sum + mix(map.colours, 3, k, i, j), 0) / 3));
      pen.fillStyle = pen.strokeStyle = `rgb(${colour.join(" ")})`;
      pen.beginPath();
      corners.forEach(([i, j], n) => (n === 0 ? pen.moveTo(...at(i, j)) : pen.lineTo(...at(i, j))));
      pen.closePath();
      pen.fill();
      // A hair of the same colour closes the gaps between neighbours.
      pen.stroke();
    };
    for (let i = 0; i < parts; i++)
      for (let j = 0; i + j < parts; j++) {
        fill([[i, j], [i + 1, j], [i, j + 1]]);
        if (i + j + 1 < parts) fill([[i + 1, j], [i + 1, j + 1], [i, j + 1]]);
      }
  }
}
