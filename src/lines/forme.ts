import { must } from "#base/bug.ts";
import { Flattener } from "#flatten/flatten.ts";
import type { Last, Point3, SurfaceCurve } from "#last/last.ts";
import { area } from "#mesh/area.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import { cornerWeights } from "#mesh/corner-weights.ts";
import { vertexCount, type Mesh } from "#mesh/mesh.ts";
import { TriangleLocator } from "#plane/triangle-locator.ts";
import type { Arcs } from "./arcs.ts";
import { arcNearest, curveLength, curveOf, upTo } from "#last/surface-curve.ts";
import { featherHalf, halves, type Half } from "./feather.ts";
import { weave } from "./weave.ts";

export type Xy = readonly [number, number];

/** A curve known both on the last and on the drawing plane, point by point. */
export interface DoubleCurve extends SurfaceCurve {
  /** x0 y0 …, one pair a point. */
  readonly flat: Float64Array;
}

/**
 * The forme: the last's surface from the feather line up to well above any topline, woven from tapes laid up from the feather
 * line, open at the back, and laid on a drawing plane by a conformal map (angles are kept, so a line that is smooth and
 * square to the centre on the plane is so on the last). Lines are drawn here; lengths are always measured on the last.
 * Drawing plane: toe point at the origin, centre line toward the throat along −x near the toe, medial +y on a right last,
 * areas on the whole true to size.
 */
export interface Forme {
  readonly mesh: Mesh;
  readonly flat: Float64Array;
  readonly feather: Readonly<Record<Half, DoubleCurve>>;
  /** The two banks of the opening at the back, from the seat point up; the same points in space. */
  readonly back: Readonly<Record<Half, DoubleCurve>>;
  /** Centre ridge from the toe point as far as the forme goes. */
  readonly centre: DoubleCurve;
  /** Surface point → drawing plane; not to be used on the opening at the back. */
  toFlat(p: Point3): Xy;
  /** Drawing plane → point of the last; undefined outside the forme. */
  toLast(at: Xy): Point3 | undefined;
  /** Where tapes end at the back, mm above the feather line. */
  readonly ceilingMm: number;
}

/** Weaves the forme of a last; `spacing` mm between tapes. */
export function formeOf(last: Last, arcs: Arcs, spacing = 3): Forme {
  const woven = weave(last, arcs, spacing, Math.min(72, 0.94 * curveLength(last.backCurve)));
  const flat = place(new Flattener(vertexCount(woven.mesh), woven.mesh.triangles).start(woven.mesh.positions), woven.mesh, woven.centre);
  const double = (ids: readonly number[]): DoubleCurve => {
    const p = woven.mesh.positions;
    const curve = curveOf(ids.flatMap((v) => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!]));
    return { ...curve, flat: Float64Array.from(ids.flatMap((v) => [flat[2 * v]!, flat[2 * v + 1]!])) };
  };
  const pair = (of: (half: Half) => DoubleCurve) => Object.fromEntries(halves.map((h) => [h, of(h)])) as Record<Half, DoubleCurve>;
  const onForme = new ClosestPoint(woven.mesh);
  const onLast = new ClosestPoint(last.mesh);
  const locator = new TriangleLocator(flat, woven.mesh.triangles);
  const { positions: p, triangles: t } = woven.mesh;
  const blended = (values: Float64Array, dims: number, d: number, triangle: number, w: readonly [number, number, number]): number =>
    w[0] * values[dims * t[3 * triangle]! + d]! + w[1] * values[dims * t[3 * triangle + 1]! + d]! + w[2] * values[dims * t[3 * triangle + 2]! + d]!;
  const third = [1 / 3, 1 / 3, 1 / 3] as const;
  // The last's triangle nearest to the middle of each of the forme's, looked for when it is first asked for: a place to start from.
  const nearby = new Int32Array(t.length / 3).fill(-1);
  const found = new Float64Array(3);
  const onLastNear = (triangle: number, w: readonly [number, number, number], hint: number): number =>
    onLast.findInto(found, blended(p, 3, 0, triangle, w), blended(p, 3, 1, triangle, w), blended(p, 3, 2, triangle, w), hint);
  return {
    mesh: woven.mesh,
    flat,
    feather: pair((h) => denser(double(woven.feather[h]), featherHalf(last.feather, h))),
    back: pair((h) => denser(double(woven.back[h]), last.backCurve)),
    centre: denser(double(woven.centre), last.centreRidge),
    ceilingMm: woven.ceilingMm,
    toFlat(p) {
      const hit = onForme.find(p);
      const w = weightsIn(woven.mesh, hit.triangle, hit.point);
      return [blended(flat, 2, 0, hit.triangle, w), blended(flat, 2, 1, hit.triangle, w)];
    },
    toLast(at) {
      const hit = locator.find(at[0], at[1], 1e-6);
      if (!hit) return undefined;
      const { triangle, weights } = hit;
      if (nearby[triangle]! < 0) nearby[triangle] = onLastNear(triangle, third, -1);
      onLastNear(triangle, weights, nearby[triangle]!);
      return [found[0]!, found[1]!, found[2]!];
    },
  };
}

/**
 * The exact curve of the last with its places on the plane taken from the nearest place of the forme's own edge, as far as that
 * edge reaches. Lengths along the two differ a little (the forme's is coarser), so places are matched in space.
 */
function denser(coarse: DoubleCurve, exact: SurfaceCurve): DoubleCurve {
  const end = coarse.points.length - 3;
  const reached = upTo(exact, arcNearest(exact, [coarse.points[end]!, coarse.points[end + 1]!, coarse.points[end + 2]!]));
  const n = reached.arc.length;
  const flat = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) flat.set(flatOn(coarse, arcNearest(coarse, [reached.points[3 * i]!, reached.points[3 * i + 1]!, reached.points[3 * i + 2]!])), 2 * i);
  return { ...reached, flat };
}

/** The place on the plane at a length (on the last) along a double curve. */
export function flatOn({ arc, flat }: DoubleCurve, at: number): Xy {
  let lo = 0, hi = arc.length - 1;
  while (hi - lo > 1) {
    const mid = (lo + hi) >> 1;
    if (arc[mid]! <= at) lo = mid;
    else hi = mid;
  }
  const t = Math.min(1, Math.max(0, (at - arc[lo]!) / (arc[hi]! - arc[lo]!)));
  return [flat[2 * lo]! + t * (flat[2 * hi]! - flat[2 * lo]!), flat[2 * lo + 1]! + t * (flat[2 * hi + 1]! - flat[2 * lo + 1]!)];
}

function weightsIn(mesh: Mesh, triangle: number, at: Point3): readonly [number, number, number] {
  const weights = cornerWeights(mesh, triangle, at);
  must(weights !== undefined, "a flat triangle in the forme");
  return weights;
}

/** Moves, turns and scales the map: toe at the origin, centre along −x, total area as on the last. */
function place(uv: Float64Array, mesh: Mesh, centre: readonly number[]): Float64Array {
  const t = mesh.triangles;
  let flatArea = 0;
  for (let f = 0; f < t.length; f += 3) {
    const a = t[f]!, b = t[f + 1]!, c = t[f + 2]!;
    flatArea += 0.5 * ((uv[2 * b]! - uv[2 * a]!) * (uv[2 * c + 1]! - uv[2 * a + 1]!) - (uv[2 * b + 1]! - uv[2 * a + 1]!) * (uv[2 * c]! - uv[2 * a]!));
  }
  must(flatArea > 0, "the forme's map is turned over");
  const scale = Math.sqrt(area(mesh) / flatArea);
  const toe = centre[0]!, end = centre[centre.length - 1]!;
  const dx = uv[2 * toe]! - uv[2 * end]!, dy = uv[2 * toe + 1]! - uv[2 * end + 1]!;
  const size = Math.sqrt(dx * dx + dy * dy);
  const cx = (scale * dx) / size, cy = (scale * dy) / size;
  const out = new Float64Array(uv.length);
  for (let i = 0; i < uv.length; i += 2) {
    const x = uv[i]! - uv[2 * toe]!, y = uv[i + 1]! - uv[2 * toe + 1]!;
    out[i] = cx * x + cy * y;
    out[i + 1] = cx * y - cy * x;
  }
  return out;
}
