import { useEffect, useMemo, type ReactElement } from "react";
import type { Lasted } from "#lasting/lasted.ts";
import type { LastPair } from "#job/pair.ts";
import { mm, percent, say } from "../state/numbers.ts";
import { placeOf } from "../state/places.ts";
import { stepWords, type PullStep } from "../state/pull-steps.ts";
import { placesBetween, useBetween } from "./between-frames.ts";
import { eyes, type EyeName } from "./eyes.ts";
import { drawnLines } from "./drawn-lines.ts";
import { onMap, type Ink } from "./ink.ts";
import type { SceneLine } from "./last-scene.ts";
import { outlineOf, rimOf, type LastedMap } from "./lasted-map.ts";
import { clearNumbers, LevelNumbers, type LevelNumber } from "./level-numbers.tsx";
import type { Named } from "./margin-labels.ts";
import { PinnedNotes } from "./margin-words.tsx";
import { pullArrow } from "./pull-arrows.ts";
import { PullMarks, type ArrowOnScreen, type TackOnScreen } from "./pull-marks.tsx";
import { useTurning } from "./turning.ts";
import { useScene } from "./use-scene.ts";

interface LastedViewProps {
  readonly pair: LastPair;
  readonly lasted: Lasted;
  /** Its steps, and which of them is shown; the last one is the upper at rest, in colours. */
  readonly steps: readonly PullStep[];
  readonly at: number;
  /** Nothing is to move by itself. */
  readonly still: boolean;
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
export function LastedView({ pair, lasted, steps, at, still, map, ink, from }: LastedViewProps): ReactElement {
  const eye = useMemo(() => ({ ...eyes[from.name] }), [from]);
  const { canvas, frame, size, scene: live, none } = useScene(pair.last, eye);
  const between = useBetween(at, still);
  const step = steps[at]!;
  const atRest = at === steps.length - 1 && between.share === 1;
  const mesh = useMemo(() => {
    const places = (i: number): Float32Array => lasted.frames[steps[Math.min(i, steps.length - 1)]!.frame]!.positions;
    return atRest ? map.mesh : { triangles: lasted.triangles, positions: placesBetween(places(between.from), places(between.to), between.share) };
  }, [atRest, between, steps, lasted, map.mesh]);
  const rim = useMemo(() => rimOf(lasted), [lasted]);
  const asked = useMemo(() => drawnLines(pair).find((l) => l.key === "topline")!, [pair]);
  useEffect(() => live?.paintLast(ink.wood), [live, pair.last.mesh, ink.wood]);
  useEffect(() => live?.setShell(mesh, ink.card, atRest ? map.colours : undefined), [live, mesh, atRest, map, ink.card]);
  useEffect(() => {
    const dark = atRest ? onMap : ink;
    const thick: SceneLine[] = [{ key: "asked", points: asked.onLast, colour: dark.accent, widthPx: 2.4, dash: [4, 3] }];
    const outline: SceneLine = { key: "outline", points: outlineOf(mesh, rim), colour: dark.ink, widthPx: 2 };
    // Where the edge lay in the step before, so that a still picture tells what moved.
    const before = steps[at - 1], faint: SceneLine[] = before && !atRest ? [{ key: "before", points: outlineOf({ triangles: lasted.triangles, positions: Float64Array.from(lasted.frames[before.frame]!.positions) }, rim), colour: ink.soft, widthPx: 1 }] : [];
    live?.setLines(thick, [...faint, outline, ...(atRest ? [{ key: "levels", points: map.lines, colour: onMap.ink, widthPx: 1 }] : [])]);
  }, [live, mesh, rim, asked, atRest, map, ink, lasted, steps, at]);
  const turn = useTurning(live);
  const words = stepWords(step, lasted.drafts);

  const pins: Named[] = [];
  const levels: LevelNumber[] = [];
  const arrows: ArrowOnScreen[] = [];
  const tacks: TackOnScreen[] = [];
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
      lasted.troubles.forEach(({ kind, at: p, by, spans }, i) => pin(`trouble ${i}`, spans ? `spans the hollow, ${mm(by)}` : troubleWords[kind](by), p));
      for (const n of map.numbers) {
        const place = seen(n.at);
        if (place) levels.push({ key: n.key, text: n.text, ...place });
      }
    } else {
      for (const { number, name, at: p, pullN } of lasted.drafts) {
        const drawn = step.drawn.includes(number), arrow = drawn ? pullArrow(mesh, rim, p, pullN) : undefined;
        const place = seen(arrow?.at ?? p);
        if (!place) continue;
        if (drawn) pin(`draft ${number}`, `${number} · ${name}, ${say(pullN, 0)} N`, arrow?.at ?? p);
        else if (step.holding.includes(number)) tacks.push({ number, half: 11, ...place });
        if (!arrow) continue;
        const move = live.projectMove([arrow.longMm * arrow.way[0], arrow.longMm * arrow.way[1], arrow.longMm * arrow.way[2]]);
        arrows.push({ key: `pull ${number}`, ...place, dx: move.x, dy: move.y });
      }
    }
  }
  return (
    <section className="view last" aria-label="The upper pulled over the last">
      <div
        className="frame"
        ref={frame}
        tabIndex={0}
        role="group"
        aria-label={`The upper on the ${pair.last.side} last. ${words}. Arrow keys turn it, plus and minus bring it nearer or take it farther.`}
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
          <PullMarks arrows={arrows} tacks={tacks} />
          {pins.length > 0 && <PinnedNotes items={pins} width={size.width} height={size.height} clearOf={[...clearNumbers(levels).map((l) => ({ ...l, half: 18 })), ...tacks, ...arrows.flatMap((a) => along(a))]} />}
        </svg>
        <p className="lit">
          {words}. {atRest ? "Broken line: the topline that was asked for." : moved(pair, step)}
        </p>
      </div>
    </section>
  );
}

/** What the leather does in a step, for the eye to look there. */
function moved(pair: LastPair, { moved }: PullStep): string {
  if (!moved || moved.mm < 0.05) return "";
  return `The leather moves most ${placeOf(pair.last, moved.at)}: ${mm(moved.mm)}. Thin line: its edge before.`;
}

/** Places along an arrow, for words to stand clear of. */
const along = ({ x, y, dx, dy }: ArrowOnScreen): readonly { readonly x: number; readonly y: number }[] => [0, 0.5, 1].map((s) => ({ x: x + s * dx, y: y + s * dy }));
