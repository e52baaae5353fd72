import { area, triangleArea, volume } from "#mesh/area.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { neighbours } from "#mesh/neighbours.ts";
import { faceNormals } from "#mesh/normals.ts";
import { Sight } from "#mesh/sight.ts";
import { keepTriangles } from "#mesh/weld.ts";
import { largestPart } from "./main-part.ts";
import { untangle } from "./untangle.ts";

/** Volume against area^1.5 below which a body may be a shell: a last has about 0.056, its shell 6 mm thick 0.008. */
const SHELL = 0.02;
/** Outer and inner wall must each hold this share of the surface; the walls of a shell hold nearly half each. */
const LEAST = 0.3;
/** From so far off a triangle, as a share of the scan's size, one looks along its normal. */
const OFF = 1e-5;

/**
 * The outer wall of a shell with an open mouth, open at the mouth; undefined where the body is none. From the outer wall one sees out along
 * the normal, from the inner one the cavity's other side, but for what lies under the mouth: stretches of like sight are joined to that of
 * the two walls which they share most edges with.
 * @param mesh closed, manifold and facing outward
 */
export function outerWall(mesh: Mesh, size: number): Mesh | undefined {
  const whole = area(mesh);
  if (volume(mesh) > SHELL * whole ** 1.5) return undefined;
  const { twin } = neighbours(mesh);
  const seesOut = outlook(mesh, size);
  const { patch, areas, free } = patches(mesh, twin, seesOut);
  const widest = (want: boolean): number => areas.reduce((best, a, i) => (free[i] === want && (best < 0 || a > areas[best]!) ? i : best), -1);
  const [outer, inner] = [widest(true), widest(false)];
  if (outer < 0 || inner < 0) return undefined;
  const wall = joined(patch, areas.length, twin, outer, inner);
  let held = 0;
  for (let t = 0; t < patch.length; t++) if (wall[patch[t]!] === outer) held += triangleArea(mesh, t);
  if (held < LEAST * whole || held > (1 - LEAST) * whole) return undefined;
  return largestPart(untangle(keepTriangles(mesh, (t) => wall[patch[t]!] === outer)).mesh);
}

/** Per triangle whether the ray from its middle along its normal meets nothing. */
function outlook(mesh: Mesh, size: number): Uint8Array {
  const { positions: p, triangles } = mesh;
  const normals = faceNormals(mesh);
  const sight = new Sight(mesh);
  const out = new Uint8Array(triangleCount(mesh));
  for (let t = 0; t < out.length; t++) {
    const [a, b, c] = [3 * triangles[3 * t]!, 3 * triangles[3 * t + 1]!, 3 * triangles[3 * t + 2]!];
    const [nx, ny, nz] = [normals[3 * t]!, normals[3 * t + 1]!, normals[3 * t + 2]!];
    const from = (k: number, n: number): number => (p[a + k]! + p[b + k]! + p[c + k]!) / 3 + OFF * size * n;
    out[t] = sight.free(from(0, nx), from(1, ny), from(2, nz), nx, ny, nz) ? 1 : 0;
  }
  return out;
}

/** Stretches of triangles of like sight that hang together over edges. */
function patches(mesh: Mesh, twin: Int32Array, seesOut: Uint8Array): { patch: Int32Array; areas: number[]; free: boolean[] } {
  const patch = new Int32Array(seesOut.length).fill(-1);
  const areas: number[] = [];
  const free: boolean[] = [];
  for (let seed = 0; seed < patch.length; seed++) {
    if (patch[seed] !== -1) continue;
    const number = areas.push(0) - 1;
    free.push(seesOut[seed] === 1);
    patch[seed] = number;
    const stack = [seed];
    while (stack.length > 0) {
      const t = stack.pop()!;
      areas[number]! += triangleArea(mesh, t);
      for (let h = 3 * t; h < 3 * t + 3; h++) {
        const u = Math.floor(twin[h]! / 3);
        if (u < 0 || patch[u] !== -1 || seesOut[u] !== seesOut[t]) continue;
        patch[u] = number;
        stack.push(u);
      }
    }
  }
  return { patch, areas, free };
}

/** Each stretch given to the outer or the inner wall, from neighbour to neighbour, by the edges it shares with either; −1 where it touches none. */
function joined(patch: Int32Array, count: number, twin: Int32Array, outer: number, inner: number): Int32Array {
  const wall = new Int32Array(count).fill(-1);
  wall[outer] = outer;
  wall[inner] = inner;
  for (let grown = true; grown; ) {
    grown = false;
    const balance = new Map<number, number>();
    for (let h = 0; h < twin.length; h++) {
      if (twin[h]! < 0) continue;
      const own = patch[Math.floor(h / 3)]!;
      const beside = wall[patch[Math.floor(twin[h]! / 3)]!]!;
      if (wall[own] === -1 && beside !== -1) balance.set(own, (balance.get(own) ?? 0) + (beside === outer ? 1 : -1));
    }
    for (const [own, more] of balance) {
      wall[own] = more > 0 ? outer : inner;
      grown = true;
    }
  }
  return wall;
}
