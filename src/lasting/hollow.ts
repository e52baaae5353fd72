import { vertexNormals } from "#mesh/normals.ts";
import type { Half } from "#lines/feather.ts";
import type { Shell } from "#shell/shell.ts";
import { toplineOf } from "#shell/tension.ts";

/** A chord may slant away from the surface's normal so much that lengths along it say nothing any more (cosine of 60 degrees). */
const leastCosine = 0.5;

/**
 * How far a taut thread along a half's topline would stand off where the last is hollow, mm at each of its vertices, back → throat: seen from
 * above the thread runs straight from where it leaves the last to where it comes to lie again (the convex hull of the topline, by Andrew's
 * chain); told square to the surface, as a stand-off is.
 */
export function hollowUnder({ mesh, edges }: Pick<Shell, "mesh" | "edges">, half: Half): Float64Array {
  const { positions: p } = mesh, normals = vertexNormals(mesh), ids = toplineOf({ mesh, edges }, half);
  const outward = Math.sign(p[3 * ids[ids.length >> 1]! + 1]!);
  const at = Array.from(ids, (v) => [p[3 * v]!, outward * p[3 * v + 1]!] as const);
  const hull: number[] = [];
  for (const i of at.map((_, k) => k).sort((a, b) => at[a]![0] - at[b]![0])) {
    while (hull.length > 1 && beside(at[hull.at(-2)!]!, at[i]!, at[hull.at(-1)!]!) >= 0) hull.pop();
    hull.push(i);
  }
  const out = new Float64Array(ids.length);
  for (let k = 0; k + 1 < hull.length; k++) {
    const a = at[hull[k]!]!, b = at[hull[k + 1]!]!, length = Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);
    ids.forEach((v, i) => {
      if (at[i]![0] < a[0] || at[i]![0] > b[0]) return;
      const cosine = ((a[1] - b[1]) * normals[3 * v]! + (b[0] - a[0]) * outward * normals[3 * v + 1]!) / length;
      out[i] = Math.max(0, beside(a, b, at[i]!) / length) / Math.max(leastCosine, cosine);
    });
  }
  return out;
}

type Place = readonly [number, number];
/** Twice the area between a → b and a point: above 0 where the point lies on the inner side of it. */
const beside = (a: Place, b: Place, c: Place): number => (b[1] - a[1]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[1] - a[1]);
