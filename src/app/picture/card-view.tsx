import { useEffect, useMemo, useRef, type ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import { say } from "../state/numbers.ts";
import { cardOutline, type DrawnLine, type LineKey } from "./drawn-lines.ts";
import { Grip, type Pull } from "./grip.tsx";
import type { Handle } from "./handles.ts";
import { lineInk } from "./ink.ts";
import type { Named } from "./margin-labels.ts";
import { MarginWords } from "./margin-words.tsx";
import type { StretchMap } from "./stretch-map.ts";
import { useSize } from "./use-size.ts";

export interface CardViewProps {
  readonly pair: Pair;
  readonly lines: readonly DrawnLine[];
  readonly handles: readonly Handle[];
  readonly map: StretchMap | undefined;
  readonly notes: readonly { readonly key: string; readonly text: string; readonly onCard: readonly number[] }[];
  readonly lit: LineKey | undefined;
  readonly onLit: (key: LineKey | undefined) => void;
  readonly onPull: Pull;
  readonly onDone: () => void;
}

/** Lies the card on the screen with the toe upward, as the last is looked down upon; v points to the left. */
interface Laying {
  readonly pxPerMm: number;
  readonly x: (u: number, v: number) => number;
  readonly y: (u: number, v: number) => number;
}

function laying(outline: Float64Array, width: number, height: number): Laying {
  let [u0, u1, v0, v1] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < outline.length; i += 2) {
    u0 = Math.min(u0, outline[i]!);
    u1 = Math.max(u1, outline[i]!);
    v0 = Math.min(v0, outline[i + 1]!);
    v1 = Math.max(v1, outline[i + 1]!);
  }
  const pxPerMm = Math.max(0.1, Math.min((width - 56) / (v1 - v0), (height - 96) / (u1 - u0)));
  return {
    pxPerMm,
    x: (_, v) => width / 2 - (v - (v0 + v1) / 2) * pxPerMm,
    y: (u) => (height - 40) / 2 + 8 - (u - (u0 + u1) / 2) * pxPerMm,
  };
}

/** The upper laid flat, net, on card. */
export function CardView({ pair, lines, handles, map, notes, lit, onLit, onPull, onDone }: CardViewProps): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const { width, height } = useSize(frame);
  const outline = useMemo(() => cardOutline(pair), [pair]);
  const lay = useMemo(() => laying(outline, width, height), [outline, width, height]);
  const path = (points: Float64Array): string => {
    let d = "";
    for (let i = 0; i < points.length; i += 2) d += `${i === 0 ? "M" : "L"}${lay.x(points[i]!, points[i + 1]!).toFixed(1)} ${lay.y(points[i]!, points[i + 1]!).toFixed(1)}`;
    return d;
  };
  useEffect(() => {
    if (canvas.current) paint(canvas.current, width, height, pair, map, lay);
  }, [width, height, pair, map, lay]);

  const labels: Named[] = notes.map((n) => ({ key: n.key, text: n.text, x: lay.x(n.onCard[0]!, n.onCard[1]!), y: lay.y(n.onCard[0]!, n.onCard[1]!) }));
  const litLine = lines.find((l) => l.key === lit);
  const bar = 50 * lay.pxPerMm;
  return (
    <section className={`view card${map ? " on-map" : ""}`} aria-label="The card">
      <div className="frame" ref={frame} onPointerLeave={() => onLit(undefined)}>
        <canvas ref={canvas} aria-hidden="true" />
        <svg className="overlay" width={width} height={height} role="group" aria-label={`The upper of the ${pair.last.side} shoe laid flat, net, toe upward.`}>
          <path className="sheet-of-card" d={`${path(outline)}Z`} fillOpacity={map ? 0 : 1} onPointerMove={() => onLit(undefined)} />
          {map?.onCard.map((l, i) => <path key={i} className="level-line" d={path(l)} />)}
          {lines.map((l) => {
            const { accent, width: w, dash } = lineInk(l.key);
            return l.onCard.map((points, i) => (
              <path key={`${l.key} ${i}`} d={path(points)} className={`line${accent ? " accent" : ""}`} strokeWidth={l.key === lit ? w + 2.5 : w} strokeDasharray={dash ? "9 5" : undefined} />
            ));
          })}
          {lines.map((l) => l.onCard.map((points, i) => <path key={`${l.key} ${i} touch`} d={path(points)} className="touch-line" onPointerEnter={() => onLit(l.key)} onPointerMove={(e) => (e.stopPropagation(), onLit(l.key))} />))}
          {map?.numbers.map((n) => <text key={n.key} className="level" x={lay.x(n.onCard[0]!, n.onCard[1]!)} y={lay.y(n.onCard[0]!, n.onCard[1]!)} textAnchor="middle" dominantBaseline="middle">{n.text}</text>)}
          <MarginWords items={labels} width={width} height={height - 40} />
          <g className="scale" transform={`translate(${((width - bar) / 2).toFixed(1)} ${height - 20})`}>
            <path d={`M0 -5V5M0 0H${bar.toFixed(1)}M${bar.toFixed(1)} -5V5`} />
            <text x={bar / 2} y={-6} textAnchor="middle">50 mm</text>
          </g>
          {handles.flatMap((h) => h.onCard.map((at, i) => {
            const directions = h.moves.map((m) => ({ x: -m.onCard[i]![1]! * lay.pxPerMm, y: -m.onCard[i]![0]! * lay.pxPerMm }));
            return <Grip key={`${h.key} ${i}`} picture="card" handle={h} pair={pair} x={lay.x(at[0]!, at[1]!)} y={lay.y(at[0]!, at[1]!)} directions={directions} origin={() => frame.current?.getBoundingClientRect()} onPull={onPull} onDone={onDone} />;
          }))}
        </svg>
        {litLine && <p className="lit">{litLine.name}, {say(litLine.lengthOnCardMm, 0)} mm on the card</p>}
      </div>
    </section>
  );
}

/** Fills the triangles of the card with the colours of the map; without a map the canvas stays clear. */
function paint(canvas: HTMLCanvasElement, width: number, height: number, { flat }: Pair, map: StretchMap | undefined, lay: Laying): void {
  const dots = Math.min(2, globalThis.devicePixelRatio || 1);
  canvas.width = width * dots;
  canvas.height = height * dots;
  const pen = canvas.getContext("2d");
  if (!pen || !map) return;
  pen.scale(dots, dots);
  const { triangles } = flat.shell.mesh;
  const at = (v: number): [number, number] => [lay.x(flat.uv[2 * v]!, flat.uv[2 * v + 1]!), lay.y(flat.uv[2 * v]!, flat.uv[2 * v + 1]!)];
  pen.lineWidth = 0.7;
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    const mix = [0, 1, 2].map((c) => corners.reduce((s, v) => s + map.colours[3 * v + c]!, 0) / 3);
    pen.fillStyle = pen.strokeStyle = `rgb(${mix.map(Math.round).join(" ")})`;
    pen.beginPath();
    pen.moveTo(...at(corners[0]!));
    pen.lineTo(...at(corners[1]!));
    pen.lineTo(...at(corners[2]!));
    pen.closePath();
    pen.fill();
    // A hair of the same colour closes the gaps between neighbours.
    pen.stroke();
  }
}
