import { useEffect, useMemo, type PointerEvent, type ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { LineSettings } from "#lines/lines.ts";
import { say } from "../state/numbers.ts";
import type { DrawnLine, LineKey } from "./drawn-lines.ts";
import { ringHalf, type InTheWay } from "./clear-place.ts";
import { eyes, type EyeName } from "./eyes.ts";
import { Grip, type Pull } from "./grip.tsx";
import type { Handle } from "./handles.ts";
import { lineInk, onMap, type Ink } from "./ink.ts";
import type { SceneLine } from "./last-scene.ts";
import { LevelNumbers, type LevelNumber } from "./level-numbers.tsx";
import { alongLines, PinnedNotes } from "./margin-words.tsx";
import type { Named } from "./margin-labels.ts";
import { nearestLine } from "./nearest-line.ts";
import type { ShellMap } from "./shell-map.ts";
import { useTurning } from "./turning.ts";
import { useScene } from "./use-scene.ts";

export interface LastViewProps {
  readonly pair: LastPair;
  readonly ink: Ink;
  readonly lines: readonly DrawnLine[];
  readonly handles: readonly Handle[];
  readonly map: ShellMap | undefined;
  /** Findings, to stand near their places. */
  readonly words: readonly { readonly key: string; readonly text: string; readonly at: readonly number[] }[];
  /** Where to look from; a new object looks from there again. */
  readonly from: { readonly name: EyeName };
  readonly lit: LineKey | undefined;
  readonly onLit: (key: LineKey | undefined) => void;
  readonly asked: Partial<LineSettings>;
  readonly busy: boolean;
  readonly onPull: Pull;
  readonly onDone: () => void;
}

export function LastView(props: LastViewProps): ReactElement {
  const { pair, ink, lines, handles, map, words, from, lit, onLit, asked, busy, onPull, onDone } = props;
  const eye = useMemo(() => ({ ...eyes[from.name] }), [from]);
  const { canvas, frame, size, scene: live, none } = useScene(pair.last, eye);
  useEffect(() => live?.paintLast(ink.wood), [live, pair.last.mesh, ink.wood]);
  useEffect(() => live?.setShell(map?.mesh ?? pair.shell.mesh, ink.card, map?.colours), [live, pair.shell.mesh, map, ink.card]);
  useEffect(() => {
    const thick = lines.map((l): SceneLine => {
      const { accent, width, dash } = lineInk(l.key);
      return { key: l.key, points: l.onLast, colour: map ? (accent ? onMap.accent : onMap.ink) : accent ? ink.accent : ink.ink, widthPx: l.key === lit ? width + 2.5 : width, dash: dash ? [5, 3] : undefined };
    });
    const thin = map ? [{ key: "levels", points: map.onLast, colour: onMap.ink, widthPx: 1 }] : [];
    live?.setLines(thick, thin);
  }, [live, lines, map, lit, ink]);

  const turn = useTurning(live);
  const seek = (e: PointerEvent): void => {
    const box = frame.current?.getBoundingClientRect();
    if (!live || !box || turn.turning()) return;
    const project = (p: readonly number[]) => live.project(p);
    onLit(nearestLine(lines, project, e.clientX - box.left, e.clientY - box.top, e.pointerType === "touch" ? 20 : 9));
  };

  const labels: Named[] = [];
  const levels: LevelNumber[] = [];
  if (live && size.width > 0) {
    for (const w of words) {
      const { x, y, seen } = live.project(w.at);
      if (seen) labels.push({ key: w.key, x, y, text: w.text });
    }
    if (map) for (const n of map.numbers) {
      const { x, y, seen } = live.project(n.onLast);
      if (seen) levels.push({ key: n.key, x, y, text: n.text });
    }
  }
  // Only where words are to be placed: the last is drawn at every turn of it.
  const clearOf = (): readonly InTheWay[] => {
    if (!live) return [];
    const drawn = lines.flatMap((l) => l.onLast.map((points) => someOf(points).map((p) => live.project(p)).filter((p) => p.seen)));
    return [...alongLines(drawn), ...handles.map((h) => ({ ...live.project(h.onLast), half: ringHalf }))];
  };
  const litLine = lines.find((l) => l.key === lit);
  return (
    <section className="view last" aria-label="The last">
      <div
        className="frame"
        ref={frame}
        tabIndex={0}
        role="group"
        aria-label={`The ${pair.last.side} last. Arrow keys turn it, plus and minus bring it nearer or take it farther.`}
        onKeyDown={turn.key}
        onPointerDown={(e) => {
          seek(e);
          turn.down(e);
        }}
        onPointerMove={(e) => {
          turn.move(e);
          seek(e);
        }}
        onWheel={(e) => live?.zoom(Math.exp(-e.deltaY * 0.0015))}
        onPointerUp={turn.up}
        onPointerCancel={turn.up}
        onPointerLeave={(e) => e.pointerType === "mouse" && onLit(undefined)}
      >
        <canvas ref={canvas} aria-hidden="true" />
        {none && <p className="nothing">This browser cannot draw the last in three dimensions. The card and all numbers still work.</p>}
        <svg className="overlay" width={size.width} height={size.height} aria-hidden={handles.length === 0}>
          <LevelNumbers numbers={levels} />
          {live && labels.length > 0 && <PinnedNotes items={labels} width={size.width} height={size.height} clearOf={clearOf()} />}
          {live && handles.map((h) => {
            const { x, y, seen } = live.project(h.onLast);
            const directions = h.moves.map((m) => live.projectMove(m.onLast));
            return <Grip key={h.key} picture="last" handle={h} pair={pair} asked={asked} busy={busy} x={x} y={y} clearOf={clearOf} hidden={!seen} directions={directions} origin={() => frame.current?.getBoundingClientRect()} onPull={onPull} onDone={onDone} />;
          })}
        </svg>
        {litLine && <p className="lit">{litLine.name}, {say(litLine.lengthOnLastMm, 0)} mm on the last</p>}
      </div>
    </section>
  );
}

/** Some 40 points of a line (x y z …): to see whether one is hidden costs a look through the whole last. */
function someOf(points: Float64Array): readonly (readonly number[])[] {
  const n = points.length / 3;
  const step = Math.max(1, Math.floor(n / 40));
  return Array.from({ length: Math.ceil(n / step) }, (_, i) => [...points.subarray(3 * i * step, 3 * i * step + 3)]);
}
