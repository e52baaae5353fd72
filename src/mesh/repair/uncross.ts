import { area, triangleArea } from "#mesh/area.ts";
import { crossingTriangles } from "#mesh/crossings.ts";
import { triangleCount, vertexCount, type Mesh } from "#mesh/mesh.ts";
import { keepTriangles } from "#mesh/weld.ts";
import { fillHoles } from "./fill-holes.ts";
import { largestPart } from "./main-part.ts";
import { untangle } from "./untangle.ts";

const ROUNDS = 8;
/** More of the surface than this share is not cut out: then the scan is better made anew. */
const MOST_CUT = 0.06;

/** What was done where a closed surface runs through itself. */
export interface Uncrossed {
  /** Without crossings; undefined when cutting out did not help. */
  readonly mesh: Mesh | undefined;
  /** Triangles that others ran through, at first. */
  readonly triangles: number;
  /** The middle of the first of them; undefined when there was none. */
  readonly at: readonly [number, number, number] | undefined;
}

/**
 * Cuts out the triangles that the surface runs through, from round to round with one more ring around them, and closes the holes; flaps that
 * fall off go (as in Attene 2010, A lightweight approach to repairing digitized polygon meshes; from memory).
 */
export function uncross(mesh: Mesh): Uncrossed {
  const whole = area(mesh);
  let now = mesh;
  let triangles = 0;
  let at: Uncrossed["at"];
  let cut = 0;
  let fresh = 0; // what is left of a round crosses nothing; only the caps that came are asked again
  for (let round = 0; ; round++) {
    const { crossing, count } = crossingTriangles(now, fresh);
    if (round === 0) {
      triangles = count;
      at = count > 0 ? middleOf(now, crossing.indexOf(1)) : undefined;
    }
    if (count === 0) return { mesh: now, triangles, at };
    if (round === ROUNDS) return { mesh: undefined, triangles, at };
    for (let ring = 0; ring < round; ring++) grow(now, crossing);
    for (let t = 0; t < crossing.length; t++) if (crossing[t]) cut += triangleArea(now, t);
    if (cut > MOST_CUT * whole) return { mesh: undefined, triangles, at };
    const left = largestPart(untangle(keepTriangles(now, (t) => !crossing[t])).mesh);
    if (triangleCount(left) < triangleCount(now) / 2) return { mesh: undefined, triangles, at };
    fresh = triangleCount(left);
    now = fillHoles(left).mesh;
  }
}

function middleOf({ positions: p, triangles }: Mesh, t: number): readonly [number, number, number] {
  const [a, b, c] = [3 * triangles[3 * t]!, 3 * triangles[3 * t + 1]!, 3 * triangles[3 * t + 2]!];
  const along = (k: number): number => (p[a + k]! + p[b + k]! + p[c + k]!) / 3;
  return [along(0), along(1), along(2)];
}

/** Marks the triangles around those marked, too. */
function grow(mesh: Mesh, marked: Uint8Array): void {
  const touched = new Uint8Array(vertexCount(mesh));
  for (let h = 0; h < mesh.triangles.length; h++) if (marked[(h - (h % 3)) / 3]) touched[mesh.triangles[h]!] = 1;
  for (let h = 0; h < mesh.triangles.length; h++) if (touched[mesh.triangles[h]!]) marked[(h - (h % 3)) / 3] = 1;
}
