import type { FeatherLine, SurfaceCurve } from "#last/last.ts";
import { featherRuns, type Sureness } from "./feather-runs.ts";
import { onMap, type Ink } from "./ink.ts";
import type { LastScene, SceneLine } from "./last-scene.ts";

/** How a stretch of the feather line is drawn: solid where the edge is clear, broken where it is soft, dotted where it is guessed. */
export const surenessInk: Readonly<Record<Sureness, { readonly accent: boolean; readonly widthPx: number; readonly dash?: readonly [number, number] }>> = {
  clear: { accent: false, widthPx: 3 },
  soft: { accent: true, widthPx: 3, dash: [6, 2.5] },
  guessed: { accent: true, widthPx: 3.4, dash: [1.6, 2.4] },
};

/** Drawn this far above the last, mm. */
const liftMm = 1;

interface FoundLines {
  readonly feather: FeatherLine;
  /** The course of the feather line that is shown: it may be pulled already. */
  readonly points: Float64Array;
  readonly centres: readonly SurfaceCurve[];
  readonly ink: Ink;
  readonly mapped: boolean;
}

/** The lines of the first station as the scene draws them. */
export function foundLines(scene: LastScene, { feather, points, centres, ink, mapped }: FoundLines): readonly SceneLine[] {
  const colour = (accent: boolean): string => (mapped ? (accent ? onMap.accent : onMap.ink) : accent ? ink.accent : ink.ink);
  const runs = featherRuns(feather, scene.lifted(points, liftMm, true)).map((run, i): SceneLine => {
    const { accent, widthPx, dash } = surenessInk[run.sureness];
    return { key: `feather ${i}`, points: [run.points], colour: colour(accent), widthPx, dash };
  });
  return [...runs, { key: "centre", points: centres.map((c) => scene.lifted(c.points, liftMm, false)), colour: colour(false), widthPx: 1.3, dash: [5, 3] }];
}

/** Places along the line where a handle stands ready, none of them near one that the maker has set. */
export function readyPlaces(points: Float64Array, pulls: readonly (readonly number[])[], count = 16, apartMm = 14): readonly (readonly [number, number, number])[] {
  const n = points.length / 3;
  return Array.from({ length: count }, (_, k) => {
    const i = Math.round(((k + 0.5) * n) / count) % n;
    return [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!] as const;
  }).filter((p) => pulls.every((q) => Math.hypot(p[0] - q[0]!, p[1] - q[1]!, p[2] - q[2]!) > apartMm));
}
