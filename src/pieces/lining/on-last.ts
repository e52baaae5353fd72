import { must } from "#base/bug.ts";
import { curveOf } from "#last/surface-curve.ts";
import type { Half } from "#lines/feather.ts";
import { nearestOn } from "#plane/along.ts";
import type { LaidOnLast } from "#shell/lay-flat.ts";
import type { Edge, NetUpper } from "../net-upper.ts";

/** Running lengths of the same places on the last and on a flat edge, both rising or the flat one falling; mm. */
export interface LastScale {
  readonly onLast: Float64Array;
  readonly flat: Float64Array;
}

/** The scales of one half: feather line from the seat point, topline from the back point. */
export interface HalfScales {
  readonly feather: LastScale;
  readonly topline: LastScale;
}
export type Scales = Readonly<Record<Half, HalfScales>>;

/** What is needed to carry lengths: a sheet's points on the last and on the flat; `sign` −1 turns a left one into a right one. */
export interface Sheet {
  readonly positions: Float64Array;
  readonly uv: Float64Array;
  readonly sign: 1 | -1;
}

/** The scale of a flat edge along a row of vertices that begins where lengths are counted from. */
export function scaleOf({ positions, uv, sign }: Sheet, ids: Uint32Array, edge: Edge): LastScale {
  must(ids.length >= 2, "an edge needs two points");
  const { arc } = curveOf(Array.from(ids).flatMap((v) => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!]));
  const flat = Float64Array.from(ids, (v) => nearestOn(edge.line, edge.arc, uv[2 * v]!, sign * uv[2 * v + 1]!).s);
  return { onLast: Float64Array.from(arc), flat };
}

/** How far the scale reaches on the last, mm. */
export const reachOf = ({ onLast }: LastScale): number => onLast[onLast.length - 1]!;

/** The place on the flat edge of a length on the last, held at the ends. */
export function flatAt({ onLast, flat }: LastScale, mm: number): number {
  const n = onLast.length;
  let k = 0;
  while (k < n - 2 && onLast[k + 1]! < mm) k++;
  const span = onLast[k + 1]! - onLast[k]!;
  const t = span > 0 ? Math.min(1, Math.max(0, (mm - onLast[k]!) / span)) : 0;
  return flat[k]! + t * (flat[k + 1]! - flat[k]!);
}

/** The scales of a sheet that is open at the back. */
export function scalesOf({ onLast, shell: { edges }, uv }: LaidOnLast, { feather, topline }: Pick<NetUpper, "feather" | "topline">, sign: 1 | -1): Scales {
  const sheet = { positions: onLast.mesh.positions, uv, sign };
  const of = (featherIds: Uint32Array, toplineIds: Uint32Array): HalfScales => ({ feather: scaleOf(sheet, featherIds, feather), topline: scaleOf(sheet, toplineIds, topline) });
  return { medial: of(edges.featherMedial, edges.toplineMedial), lateral: of(edges.featherLateral, edges.toplineLateral) };
}
