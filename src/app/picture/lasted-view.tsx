import { useEffect, useMemo, type ReactElement } from "react";
import type { Lasted } from "#lasting/lasted.ts";
import type { LastPair } from "#job/pair.ts";
import { mm, percent } from "../state/numbers.ts";
import { eyes, type EyeName } from "./eyes.ts";
import { drawnLines } from "./drawn-lines.ts";
import { onMap, type Ink } from "./ink.ts";
import type { SceneLine } from "./last-scene.ts";
import { outlineOf, type LastedMap } from "./lasted-map.ts";
import { LevelNumbers, type LevelNumber } from "./level-numbers.tsx";
import type { Named } from "./margin-labels.ts";
import { PinnedNotes } from "./margin-words.tsx";
import { useTurning } from "./turning.ts";
import { useScene } from "./use-scene.ts";

interface LastedViewProps {
  readonly pair: LastPair;
  readonly lasted: Lasted;
  /** Which of its frames is shown; the last one is the upper at rest, in colours. */
  readonly at: number;
  readonly map: LastedMap;
  readonly ink: Ink;
  /** Where to look from; a new object looks from there again. */
  readonly from: { readonly name: EyeName };
}

const troubleWords: Readonly<Record<Lasted["troubles"][number]["kind"], (by: number) => string>> = {
  "stands off": (by) => `stands off ${mm(by)}`,
  pleats: (by) => `pleats, gathered ${percent(by, 0)}`,
  grain: (by) => `grain may crack, ${percent(by, 0)}`,
  tears: (by) => `tears, ${percent(by, 0)}`,
};

/** The upper as it is pulled over the last, step by step; at rest in colours, with what is amiss pinned to its place. */
export function LastedView({ pair, lasted, at, map, ink, from }: LastedViewProps): ReactElement {
  const eye = useMemo(() => ({ ...eyes[from.name] }), [from]);
  const { canvas, frame, size, scene: live, none } = useScene(pair.last, eye);
  const atRest = at >= lasted.frames.length - 1;
  const mesh = useMemo(() => (atRest ? map.mesh : { triangles: lasted.triangles, positions: Float64Array.from(lasted.frames[at]!.positions) }), [atRest, at, lasted, map.mesh]);
  const asked = useMemo(() => drawnLines(pair).find((l) => l.key === "topline")!, [pair]);
  useEffect(() => live?.paintLast(ink.wood), [live, pair.last.mesh, ink.wood]);
  useEffect(() => live?.setShell(mesh, ink.card, atRest ? map.colours : undefined), [live, mesh, atRest, map, ink.card]);
  useEffect(() => {
    const dark = atRest ? onMap : ink;
    const thick: SceneLine[] = [{ key: "asked", points: asked.onLast, colour: dark.accent, widthPx: 2.4, dash: [4, 3] }];
    const outline: SceneLine = { key: "outline", points: outlineOf(mesh), colour: dark.ink, widthPx: 2 };
    live?.setLines(thick, [outline, ...(atRest ? [{ key: "levels", points: map.lines, colour: onMap.ink, widthPx: 1 }] : [])]);
  }, [live, mesh, asked, atRest, map, ink]);
  const turn = useTurning(live);
  const step = lasted.frames[at]?.what ?? "";

  const pins: Named[] = [];
  const levels: LevelNumber[] = [];
  if (live && size.width > 0) {
    const seen = (p: readonly number[]): { readonly x: number; readonly y: number } | undefined => {
      const { x, y, seen: is } = live.project(p);
      return is ? { x, y } : undefined;
    };
    const pin = (key: string, text: string, p: readonly number[]): void => {
      const place = seen(p);
      if (place) pins.push({ key, text, ...place });
    };
    if (atRest) {
      lasted.troubles.forEach(({ kind, at: p, by }, i) => pin(`trouble ${i}`, troubleWords[kind](by), p));
      for (const n of map.numbers) {
        const place = seen(n.at);
        if (place) levels.push({ key: n.key, text: n.text, ...place });
      }
    } else for (const d of lasted.drafts) if (draftsOf(step).includes(d.number)) pin(`draft ${d.number}`, `${d.number} · ${d.name}`, d.at);
  }
  return (
    <section className="view last" aria-label="The upper pulled over the last">
      <div
        className="frame"
        ref={frame}
        tabIndex={0}
        role="group"
        aria-label={`The upper on the ${pair.last.side} last, ${step}. Arrow keys turn it, plus and minus bring it nearer or take it farther.`}
        onKeyDown={turn.key}
        onPointerDown={turn.down}
        onPointerMove={turn.move}
        onWheel={(e) => live?.zoom(Math.exp(-e.deltaY * 0.0015))}
        onPointerUp={turn.up}
        onPointerCancel={turn.up}
      >
        <canvas ref={canvas} aria-hidden="true" />
        {none && <p className="nothing">This browser cannot draw the last in three dimensions. The tables and all numbers still work.</p>}
        <svg className="overlay" width={size.width} height={size.height} aria-hidden={pins.length === 0}>
          <LevelNumbers numbers={levels} />
          {pins.length > 0 && <PinnedNotes items={pins} width={size.width} height={size.height} clearOf={levels} />}
        </svg>
        <p className="lit">{atRest ? "At rest. Broken line: the topline that was asked for." : step}</p>
      </div>
    </section>
  );
}

/** Numbers of the drafts that a step is about: "drafts 2 and 3, toe corners". */
function draftsOf(step: string): readonly number[] {
  const [, first, second] = /^drafts? (\d+)(?: and (\d+))?/.exec(step) ?? [];
  return [first, second].filter((n) => n !== undefined).map(Number);
}
