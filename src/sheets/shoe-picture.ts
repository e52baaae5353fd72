import type { Last, SurfaceCurve } from "#last/last.ts";
import { featherHalf } from "#lines/feather.ts";
import type { Lines } from "#lines/lines.ts";
import { bounds } from "#plane/measure.ts";
import { partOf } from "./shoe-part.ts";

/** The last seen square from its outside, toe to the right: x along, y up, mm, as flat polylines x0 y0 …. */
export interface Profile {
  /** Closed; the first point is repeated at the end. */
  readonly silhouette: Float64Array;
  readonly bottom: Float64Array;
  /** The upper between feather line and topline, closed, first point repeated. */
  readonly upper: Float64Array;
  readonly topline: Float64Array;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** x and z of a curve's points, about `most` of them, ends kept. */
function sideView({ points: p }: SurfaceCurve, most: number): number[] {
  const n = p.length / 3;
  const parts = Math.min(n - 1, most);
  const out: number[] = [];
  for (let k = 0; k <= parts; k++) {
    const i = Math.round((k * (n - 1)) / parts);
    out.push(p[3 * i]!, p[3 * i + 2]!);
  }
  return out;
}

/** The last's middle section with the upper on its outer side. */
export function profileOf(last: Last, lines: Lines, most = 60): Profile {
  const bottom = sideView(last.bottomCentre, most);
  const silhouette = [...bottom, ...sideView(last.centreRidge, most), ...backward(sideView(last.backCurve, most))];
  const upper = [
    ...sideView(lines.toplineLateral, most),
    ...backward(sideView(lines.centre, most)),
    ...backward(sideView(featherHalf(last.feather, "lateral"), most)),
    ...sideView(lines.back, most),
  ];
  const box = bounds({ xy: Float64Array.from(silhouette) });
  const shift = (xy: readonly number[]) => Float64Array.from(xy, (v, i) => v - (i % 2 === 0 ? box.minX : box.minY));
  const ring = (xy: readonly number[]) => shift([...xy, xy[0]!, xy[1]!]);
  return { silhouette: ring(silhouette), bottom: shift(bottom), upper: ring(upper), topline: shift(sideView(lines.toplineLateral, most)), widthMm: box.maxX - box.minX, heightMm: box.maxY - box.minY };
}

/** The picture `widthMm` wide with its lower left corner at (x, y): thin strokes, and the bold ones of where a piece of this name lies. */
export function shoePicture(profile: Profile, pieceName: string, toeRight: boolean, at: readonly [number, number], widthMm: number): { readonly thin: readonly Float64Array[]; readonly bold: readonly Float64Array[]; readonly heightMm: number } {
  const scale = widthMm / profile.widthMm;
  const set = (xy: Float64Array) => xy.map((v, i) => (i % 2 === 1 ? at[1] + scale * v : at[0] + (toeRight ? scale * v : widthMm - scale * v)));
  const part = partOf(pieceName);
  const bold = part ? within(profile[part.of], part.from * profile.widthMm, part.to * profile.widthMm, part.of === "upper") : [];
  // A part that is not the upper itself is easier to place beside its outline.
  const thin = part && part.of !== "bottom" && !(part.of === "upper" && part.from === 0 && part.to === 1) ? [profile.silhouette, profile.upper] : [profile.silhouette];
  return { thin: thin.map(set), bold: bold.map(set), heightMm: scale * profile.heightMm };
}

/** What of a line lies between two upright lines; of an area its own outline and the straight edges where it is cut. */
function within(xy: Float64Array, from: number, to: number, area: boolean): readonly Float64Array[] {
  const left = cutAt(xy, (x) => x - from, area);
  return left.flatMap((part) => cutAt(part, (x) => to - x, area)).filter((part) => part.length >= 4);
}

/** The part of a polyline where `over` is not negative: of an area one ring, its first point repeated; of a line each run. */
function cutAt(xy: Float64Array, over: (x: number) => number, area: boolean): readonly Float64Array[] {
  const runs: number[][] = [[]];
  for (let i = 0; i < xy.length; i += 2) {
    const a = over(xy[i]!);
    const b = i + 2 < xy.length ? over(xy[i + 2]!) : a;
    const run = runs[runs.length - 1]!;
    if (a >= 0) run.push(xy[i]!, xy[i + 1]!);
    if (a >= 0 === b >= 0) continue;
    const t = a / (a - b);
    run.push(xy[i]! + t * (xy[i + 2]! - xy[i]!), xy[i + 1]! + t * (xy[i + 3]! - xy[i + 1]!));
    if (a >= 0 && !area) runs.push([]);
  }
  const found = runs.filter((run) => run.length > 0);
  if (area && found[0]) found[0].push(found[0][0]!, found[0][1]!);
  return found.map((run) => Float64Array.from(run));
}

function backward(xy: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = xy.length - 2; i >= 0; i -= 2) out.push(xy[i]!, xy[i + 1]!);
  return out;
}
