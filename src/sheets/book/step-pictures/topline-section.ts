import type { SheetInput } from "../../input.ts";
import { plain } from "../numbers.ts";
import { arcPoints, plyOf, scaled, straightPoints } from "./ply.ts";
import { scaleFor, type Picture } from "./sketch-lines.ts";
import { heavyMm, lightMm, plainMm, Sketch, type Xy } from "./sketch.ts";

/** What has been done to the topline when it is shown. */
export type ToplineStage = "folded" | "bound" | "stitched";

/** How thick a skived fold is (makers' practice: 0.4 to 0.6 mm), and a tape, mm; of the tape none is said. */
const foldThickMm = 0.5, tapeThickMm = 0.25;
/** So much of the upper is shown below its edge, mm. */
const shownMm = 7.5;
const roomMm = { wide: 40, high: 35 } as const;

/** The topline cut across: upper on the left as it is seen from outside, foot on the right. Nothing for edges that are turned out of a seam. */
export function toplineSection({ edge, pieceSettings: s, strips }: SheetInput, stage: ToplineStage): Picture | undefined {
  if (edge === "bagged" || edge === "wrapped") return undefined;
  const folds = s.toplineFoldMm > 0 && (edge === "taped" || edge === "folded");
  if (stage === "folded" && !folds) return undefined;
  const { scale, words } = scaleFor(8, shownMm + s.liningTrimMm + 1, roomMm.wide, roomMm.high);
  const draw = new Sketch();
  const ply = (xy: readonly number[], wideMm = plainMm): void => draw.stroke(scaled(xy, scale), wideMm, { closed: true });
  const at = ([x, y]: Xy): Xy => [scale * x, scale * y];
  const tape = edge === "taped" && strips.some(({ name }) => name === "fold tape") ? tapeThickMm : 0;
  const inner = folds ? foldedEdge(ply, s, tape) : edge === "bound" ? boundEdge(ply, s, stage) : rawEdge(ply, s);
  draw.key(`upper, ${plain(s.upperThicknessMm)} mm, its grain to the left`, at([-s.upperThicknessMm, -0.8 * shownMm]), [-1, 0]);
  if (folds) draw.key(`${plain(s.toplineFoldMm)} mm turned over${tape > 0 ? ` the tape of ${plain(s.foldTapeMm)} mm` : ""}`, at([inner, -s.toplineFoldMm + 0.6]), stage === "stitched" ? [-1, 0.6] : [1, 0]);
  if (edge === "bound") draw.key(`binding, ${plain(s.bindingThickMm)} mm, sewn on and brought over the edge`, at([-s.upperThicknessMm - s.bindingThickMm, -0.3]), [-1, 0.4]);
  if (stage === "stitched") liningOver(draw, ply, at, s, inner);
  if (stage !== "folded") stitches(draw, at, s, stage === "bound" ? 0.3 : inner + s.liningThicknessMm);
  return { title: `The topline cut across, ${words}`, sketch: draw };
}

type Ply = (xy: readonly number[], wideMm?: number) => void;
type Own = SheetInput["pieceSettings"];

/** The upper thinned and turned over its tape; gives where its inner face lies. */
function foldedEdge(ply: Ply, { upperThicknessMm: t, toplineFoldMm: fold, skiveFoldMoreMm: more, foldTapeMm }: Own, tape: number): number {
  const turn = (tape + foldThickMm) / 2, outside = -t;
  const down = straightPoints([0, -shownMm], [0, 0], 40);
  // The grain is straight on the outside; the flesh side comes toward it where it was skived.
  const thick = (y: number): number => (y < -fold - more ? t : y > -fold ? foldThickMm : t + ((foldThickMm - t) * (y + fold + more)) / more);
  const wall = down.map(([, y]): Xy => [outside + thick(y) / 2, y]);
  const centre: Xy = [outside + foldThickMm / 2 + turn, 0];
  const path = [...wall, ...arcPoints(centre, turn, 180, 0, 10).slice(1), ...straightPoints([centre[0] + turn, 0], [centre[0] + turn, -fold], 6).slice(1)];
  ply(plyOf(path, (i) => (i < wall.length ? thick(path[i]![1]) : foldThickMm)));
  const face = outside + foldThickMm;
  if (tape > 0) ply([face, -0.02, face + tape, -0.02, face + tape, -foldTapeMm, face, -foldTapeMm], heavyMm);
  return centre[0] + turn + foldThickMm / 2;
}

function rawEdge(ply: Ply, { upperThicknessMm: t }: Own): number {
  ply([-t, -shownMm, -t, 0, 0, 0, 0, -shownMm]);
  return 0;
}

/** The strip sewn grain to grain to the edge, turned up round its own seam, over the edge and down inside. */
function boundEdge(ply: Ply, s: Own, stage: ToplineStage): number {
  const { upperThicknessMm: t, bindingThickMm: b, stitchInMm: inMm, bindingBoundMm: wide } = s;
  ply([-t, -shownMm, -t, 0, 0, 0, 0, -shownMm]);
  const first = -t - b / 2, roll = b / 2 + 0.05, over = (t + 2 * b + 2 * roll) / 2, low = -inMm - 0.4;
  const up = straightPoints([first - 2 * roll, low], [first - 2 * roll, 0.1], 4);
  const top = arcPoints([first - 2 * roll + over, 0.1], over, 180, 0, 12);
  const used = -low * 2 + Math.PI * (roll + over), inside = Math.min(shownMm - 1, wide - used);
  const end = top[top.length - 1]!;
  const path = [...straightPoints([first, -0.05], [first, low], 4), ...arcPoints([first - roll, low], roll, 0, -180, 8).slice(1), ...up.slice(1), ...top.slice(1), ...straightPoints(end, [end[0], -inside], 6).slice(1)];
  ply(plyOf(path, b), stage === "bound" ? 0.35 : plainMm);
  return end[0] + b / 2;
}

/** The lining inside, standing above the edge until it is trimmed. */
function liningOver(draw: Sketch, ply: Ply, at: (p: Xy) => Xy, { liningThicknessMm: l, liningTrimMm: trim, toplineFoldMm: fold }: Own, inner: number): void {
  const bend = fold > 0 ? -fold - 1 : -shownMm + 1.5;
  const path: readonly Xy[] = inner > 0.01 ? [...straightPoints([l / 2, -shownMm], [l / 2, bend - 1], 3), ...straightPoints([inner + l / 2, bend + 1], [inner + l / 2, trim], 6)] : straightPoints([l / 2, -shownMm], [l / 2, trim], 6);
  ply(plyOf(path, l));
  draw.key(`lining, ${plain(l)} mm${trim > 0 ? `; ${plain(trim)} mm of it stand over and are trimmed afterwards` : ""}`, at([inner + l, trim - 0.8]), [1, 0]);
}

function stitches(draw: Sketch, at: (p: Xy) => Xy, { upperThicknessMm: t, stitchInMm, bindingThickMm }: Own, to: number): void {
  const from = -t - 2 * bindingThickMm;
  draw.line(at([from, -stitchInMm]), at([to + 0.4, -stitchInMm]), heavyMm);
  for (const x of [from, to + 0.4]) draw.line(at([x, -stitchInMm - 0.35]), at([x, -stitchInMm + 0.35]), lightMm);
  draw.key(`stitches, ${plain(stitchInMm)} mm in from the edge`, at([to + 0.4, -stitchInMm]), [1, -0.5]);
}
