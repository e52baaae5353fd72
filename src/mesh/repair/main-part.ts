import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { triangleArea } from "#mesh/area.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { neighbours, nextCorner } from "#mesh/neighbours.ts";
import { partOfTriangle } from "#mesh/topology.ts";
import { keepTriangles } from "#mesh/weld.ts";
import { Winding } from "#mesh/winding.ts";

/** A part with less than this share of the first one's area is debris, alone … */
const SMALL = 0.1;
/** … and a second body beside the first is no debris when it has more than this share. */
const LIKE_SIZE = 0.4;
/** A part is a sheet, not a body, when the square of its open edge's length is over so many times its area; a last without cone top has 1. */
const SHEET = 4;
/** Sheets that hold more than this share of all area are torn bits of the surface that belong together. */
const TORN = 0.1;
/** Places on a part that are asked whether they lie in or near the first one (nearer than this share of its size). */
const ASKED = 200;
const NEAR = 0.03;

interface Extent {
  area: number;
  triangles: number;
  openLength: number;
}

export interface MainPart {
  readonly mesh: Mesh;
  readonly repairs: Finding[];
  /** Why the part alone will not do: its surface is torn into several, or lies in two skins that cross. */
  readonly whole: boolean;
}

/**
 * The part with the largest area. Debris and the inner wall of a hollow last are left out and told. Not `whole` when other parts hold too
 * much of the same surface to be left out. Throws a Refusal when there is a second body beside it.
 */
export function mainPart(mesh: Mesh, size: number): MainPart {
  const { part, count } = partOfTriangle(mesh);
  if (count === 1) return { mesh, repairs: [], whole: true };
  const extents = extentsOf(mesh, part, count);
  let main = 0;
  extents.forEach((e, i) => {
    if (e.area > extents[main]!.area) main = i;
  });
  const first = extents[main]!;
  const mainMesh = keepTriangles(mesh, (t) => part[t] === main);
  const isSheet = (e: Extent): boolean => e.openLength ** 2 > SHEET * e.area;
  const sheets = extents.filter((e, i) => i !== main && isSheet(e)).reduce((sum, e) => sum + e.area, 0);
  const all = extents.reduce((sum, e) => sum + e.area, 0);
  if (sheets > TORN * all) return { mesh: mainMesh, repairs: [], whole: false };
  const repairs: Finding[] = [];
  const gone = new Set(extents.keys());
  gone.delete(main);
  let beside = 0;
  let share = 0;
  const big = extents.map((e, i) => ({ e, i })).filter(({ e, i }) => i !== main && !isSheet(e) && e.area > SMALL * first.area);
  const asker = big.length > 0 ? new Nearness(mainMesh, size) : undefined;
  for (const { e, i } of big) {
    const { inside, near } = asker!.of(keepTriangles(mesh, (t) => part[t] === i));
    if (inside > 0.97) {
      repairs.push(finding("inner-wall-dropped", { share: e.area / first.area }));
      gone.delete(i);
    } else if (near > 0.6) return { mesh: mainMesh, repairs: [], whole: false };
    else if (e.area > LIKE_SIZE * first.area) {
      beside++;
      share = Math.max(share, e.area / first.area);
    }
  }
  if (beside > 0) throw new Refusal(finding("two-bodies", { parts: beside + 1, share }));
  if (gone.size > 0) repairs.push(finding("debris-dropped", { parts: gone.size, triangles: [...gone].reduce((n, i) => n + extents[i]!.triangles, 0) }));
  return { mesh: mainMesh, repairs, whole: true };
}

/** How much of another surface lies inside a body, and inside or near it. */
class Nearness {
  readonly #winding: Winding;
  readonly #closest: ClosestPoint;
  readonly #reach: number;
  constructor(body: Mesh, size: number) {
    this.#winding = new Winding(body);
    this.#closest = new ClosestPoint(body);
    this.#reach = NEAR * size;
  }

  of({ positions: p }: Mesh): { inside: number; near: number } {
    const out = new Float64Array(3);
    const step = 3 * Math.max(1, Math.floor(p.length / 3 / ASKED));
    let [asked, inside, near] = [0, 0, 0];
    for (let i = 0; i < p.length; i += step) {
      asked++;
      const within = Math.abs(this.#winding.at(p[i]!, p[i + 1]!, p[i + 2]!)) > 0.5;
      if (within) inside++;
      this.#closest.findInto(out, p[i]!, p[i + 1]!, p[i + 2]!);
      if (within || this.#closest.squaredDistance < this.#reach ** 2) near++;
    }
    return { inside: inside / asked, near: near / asked };
  }
}

function extentsOf(mesh: Mesh, part: Uint32Array, count: number): Extent[] {
  const { positions: p, triangles } = mesh;
  const extents = Array.from({ length: count }, (): Extent => ({ area: 0, triangles: 0, openLength: 0 }));
  const { twin } = neighbours(mesh);
  for (let t = 0; t < part.length; t++) {
    const e = extents[part[t]!]!;
    e.area += triangleArea(mesh, t);
    e.triangles++;
    for (let h = 3 * t; h < 3 * t + 3; h++) {
      if (twin[h] !== -1) continue;
      const [a, b] = [3 * triangles[h]!, 3 * triangles[nextCorner(h)]!];
      e.openLength += Math.sqrt((p[a]! - p[b]!) ** 2 + (p[a + 1]! - p[b + 1]!) ** 2 + (p[a + 2]! - p[b + 2]!) ** 2);
    }
  }
  return extents;
}

/** The part with the largest area and nothing else. */
export function largestPart(mesh: Mesh): Mesh {
  const { part, count } = partOfTriangle(mesh);
  if (count < 2) return mesh;
  const areas = new Float64Array(count);
  for (let t = 0; t < part.length; t++) areas[part[t]!]! += triangleArea(mesh, t);
  const main = areas.indexOf(Math.max(...areas));
  return keepTriangles(mesh, (t) => part[t] === main);
}
