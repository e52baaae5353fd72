import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { triangleArea } from "#mesh/area.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { partOfTriangle } from "#mesh/topology.ts";
import { keepTriangles } from "#mesh/weld.ts";

/** A second part with more than this share of the first one's area is no debris. */
const LIKE_SIZE = 0.4;
/** More bodies of like size than this are no lasts laid side by side but a torn surface. */
const MOST_BODIES = 8;

interface Extent {
  area: number;
  triangles: number;
  readonly low: [number, number, number];
  readonly high: [number, number, number];
}

/**
 * The part with the largest area. Throws a Refusal when there is another of like size beside it; one that lies inside it (the inner
 * wall of a hollow last) is left out with the debris and told.
 */
export function mainPart(mesh: Mesh): { mesh: Mesh; repairs: Finding[] } {
  const { part, count } = partOfTriangle(mesh);
  if (count === 1) return { mesh, repairs: [] };
  const extents = extentsOf(mesh, part, count);
  let main = 0;
  extents.forEach((e, i) => {
    if (e.area > extents[main]!.area) main = i;
  });
  const first = extents[main]!;
  const repairs: Finding[] = [];
  const big = extents.filter((e, i) => i !== main && e.area > LIKE_SIZE * first.area);
  const beside = big.filter((e) => !within(e, first));
  if (beside.length > MOST_BODIES) throw new Refusal(finding("mesh-no-body", { why: `it falls apart into ${count} pieces` }));
  if (beside.length > 0) throw new Refusal(finding("two-bodies", { parts: beside.length + 1, share: Math.max(...beside.map((e) => e.area)) / first.area }));
  for (const e of big) repairs.push(finding("inner-wall-dropped", { share: e.area / first.area }));
  const debris = extents.filter((e, i) => i !== main && !big.includes(e));
  if (debris.length > 0) repairs.push(finding("debris-dropped", { parts: debris.length, triangles: debris.reduce((n, e) => n + e.triangles, 0) }));
  return { mesh: keepTriangles(mesh, (t) => part[t] === main), repairs };
}

function extentsOf(mesh: Mesh, part: Uint32Array, count: number): Extent[] {
  const extents = Array.from({ length: count }, (): Extent => ({ area: 0, triangles: 0, low: [Infinity, Infinity, Infinity], high: [-Infinity, -Infinity, -Infinity] }));
  for (let t = 0; t < part.length; t++) {
    const e = extents[part[t]!]!;
    e.area += triangleArea(mesh, t);
    e.triangles++;
    for (let c = 3 * t; c < 3 * t + 3; c++)
      for (let k = 0; k < 3; k++) {
        const x = mesh.positions[3 * mesh.triangles[c]! + k]!;
        if (x < e.low[k]!) e.low[k] = x;
        if (x > e.high[k]!) e.high[k] = x;
      }
  }
  return extents;
}

function within(inner: Extent, outer: Extent): boolean {
  return [0, 1, 2].every((k) => inner.low[k]! >= outer.low[k]! && inner.high[k]! <= outer.high[k]!);
}
