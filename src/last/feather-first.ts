import type { Mesh } from "#mesh/mesh.ts";
import type { Sectioner } from "#mesh/section.ts";
import type { Point3 } from "./last.ts";

/** Places of the two fans, as shares of the length: within them the outline turns, between them it runs along. */
const heelFan = 0.13;
const toeFan = 0.88;

/**
 * A first feather line, right to a few millimetres: in half planes that stand all round on a spine along the middle, the point
 * that lies farthest outward-and-down at 45 degrees. On an edge between bottom and wall that is the edge; on a foot it is where the
 * sole turns up. Closed, counter-clockwise from above, starting at the heel; fewer points where the scan has gaps.
 */
export function firstFeather(cutter: Sectioner, length: number): Float64Array {
  const out: number[] = [];
  for (const { at, out: u } of halfPlanes(cutter.mesh, length)) {
    const p = farthest(cutter, at, u);
    if (p) out.push(...p);
  }
  return Float64Array.from(out);
}

interface HalfPlane {
  readonly at: Point3;
  readonly out: Point3;
}

/** Half planes in counter-clockwise order from the heel: right side heel to toe (−y), toe fan, left side back, heel fan. */
function halfPlanes(mesh: Mesh, length: number): HalfPlane[] {
  const middle = middleLine(mesh, length);
  const along = 56;
  const fan = 28;
  const planes: HalfPlane[] = [];
  const spine = (x: number): Point3 => [x, middle(x), 0];
  const x0 = heelFan * length;
  const x1 = toeFan * length;
  for (let i = 0; i < along; i++) planes.push({ at: spine(x0 + ((x1 - x0) * i) / along), out: [0, -1, 0] });
  for (let i = 0; i < fan; i++) planes.push({ at: spine(x1), out: halfTurn(i / fan, 1) });
  for (let i = 0; i < along; i++) planes.push({ at: spine(x1 - ((x1 - x0) * i) / along), out: [0, 1, 0] });
  for (let i = 0; i < fan; i++) planes.push({ at: spine(x0), out: halfTurn(i / fan, -1) });
  return planes;
}

/** From −y (share 0) through ±x to +y (share 1) for sign +1; from +y through −x to −y for sign −1. */
function halfTurn(share: number, sign: 1 | -1): Point3 {
  const t = 2 * share - 1; // −1 … 1; directions spread by the rational circle, near enough to even
  const d = 1 + t * t;
  return [(sign * (1 - t * t)) / d, (sign * 2 * t) / d, 0];
}

/** y of the middle between the two walls over the lower part, by x; straight between 16 places. */
function middleLine({ positions: p }: Mesh, length: number): (x: number) => number {
  const bins = 16;
  const low = new Float64Array(bins).fill(Infinity);
  const high = new Float64Array(bins).fill(-Infinity);
  for (let i = 0; i < p.length; i += 3) {
    if (p[i + 2]! > 0.16 * length) continue;
    const k = Math.max(0, Math.min(bins - 1, Math.floor((p[i]! / length) * bins)));
    low[k] = Math.min(low[k]!, p[i + 1]!);
    high[k] = Math.max(high[k]!, p[i + 1]!);
  }
  const mid = low.map((v, k) => (Number.isFinite(v) ? (v + high[k]!) / 2 : 0));
  return (x) => {
    const f = Math.max(0, Math.min(bins - 1, (x / length) * bins - 0.5));
    const k = Math.min(bins - 2, Math.floor(f));
    return mid[k]! + (mid[k + 1]! - mid[k]!) * (f - k);
  };
}

/** The section point on the `out` side of `at` that lies farthest along out − z. */
function farthest(cutter: Sectioner, at: Point3, out: Point3): Point3 | undefined {
  let best: Point3 | undefined;
  let reach = -Infinity;
  for (const { points } of cutter.cut(at, [-out[1], out[0], 0])) {
    for (let i = 0; i < points.length; i += 3) {
      const u = (points[i]! - at[0]) * out[0] + (points[i + 1]! - at[1]) * out[1];
      if (u < 0) continue;
      const value = u - points[i + 2]!;
      if (value > reach) {
        reach = value;
        best = [points[i]!, points[i + 1]!, points[i + 2]!];
      }
    }
  }
  return best;
}
