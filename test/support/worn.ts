// Scans made worse in known ways. Invented fixtures.
import type { Mesh } from "#mesh/mesh.ts";
import { vertexRings } from "#mesh/neighbours.ts";
import { vertexNormals } from "#mesh/normals.ts";
import { keepTriangles } from "#mesh/weld.ts";

/**
 * An edge worn or scanned soft: every vertex within `reach` mm of the line goes half way to the mean of its neighbours, `rounds`
 * times. On edges of 1.5 mm 45 rounds spread a bend over a bell of about 4 mm, so 60 degrees get a radius of some 7 mm.
 */
export function softened(mesh: Mesh, line: readonly (readonly number[])[], rounds: number, reach = 20): Mesh {
  const cell = (p: ArrayLike<number>, k: number): number => Math.floor(p[k]! / reach);
  const near = new Set<string>();
  for (const p of line) for (const a of [-1, 0, 1]) for (const b of [-1, 0, 1]) for (const c of [-1, 0, 1]) near.add(`${cell(p, 0) + a} ${cell(p, 1) + b} ${cell(p, 2) + c}`);
  const rings = vertexRings(mesh);
  const moving: number[] = [];
  for (let v = 0; v < mesh.positions.length / 3; v++) {
    const p = mesh.positions.subarray(3 * v, 3 * v + 3);
    if (near.has(`${cell(p, 0)} ${cell(p, 1)} ${cell(p, 2)}`)) moving.push(v);
  }
  let now = mesh.positions;
  for (let round = 0; round < rounds; round++) {
    const next = now.slice();
    for (const v of moving) {
      const [from, to] = [rings.start[v]!, rings.start[v + 1]!];
      for (let k = 0; k < 3; k++) {
        let sum = 0;
        for (let i = from; i < to; i++) sum += now[3 * rings.items[i]! + k]!;
        next[3 * v + k] = (now[3 * v + k]! + sum / (to - from)) / 2;
      }
    }
    now = next;
  }
  return { positions: now, triangles: mesh.triangles };
}

/** Every vertex moved along its normal by a bell of `sd` mm; Park and Miller's generator. */
export function roughened(mesh: Mesh, sd: number, seed: number): Mesh {
  let s = seed;
  const next = (): number => (s = (s * 48271) % 2147483647) / 2147483647;
  const normals = vertexNormals(mesh);
  const positions = mesh.positions.slice();
  for (let i = 0; i < positions.length; i += 3) {
    const off = sd * Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    for (let k = 0; k < 3; k++) positions[i + k] = positions[i + k]! + off * normals[i + k]!;
  }
  return { positions, triangles: mesh.triangles };
}

/** What of a scan is left where `keep` says of the middle and unit normal of a triangle. */
export function partOf(mesh: Mesh, keep: (middle: readonly number[], normal: readonly number[]) => boolean): Mesh {
  const { positions: p, triangles } = mesh;
  return keepTriangles(mesh, (t) => {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * triangles[3 * t + k]!) as [number, number, number];
    const u = [0, 1, 2].map((k) => p[b + k]! - p[a + k]!);
    const v = [0, 1, 2].map((k) => p[c + k]! - p[a + k]!);
    const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    const size = Math.hypot(...n);
    return keep([0, 1, 2].map((k) => (p[a + k]! + p[b + k]! + p[c + k]!) / 3), n.map((x) => x / size));
  });
}

/** Distance of a point from a closed polyline, flat x y z …. */
export function fromLine(line: Float64Array, p: ArrayLike<number>): number {
  const n = line.length / 3;
  let best = Infinity;
  for (let i = 0; i < n; i++) {
    const [a, b] = [3 * i, 3 * ((i + 1) % n)];
    let [along, length] = [0, 0];
    for (let k = 0; k < 3; k++) {
      along += (p[k]! - line[a + k]!) * (line[b + k]! - line[a + k]!);
      length += (line[b + k]! - line[a + k]!) ** 2;
    }
    const t = length > 0 ? Math.max(0, Math.min(1, along / length)) : 0;
    let square = 0;
    for (let k = 0; k < 3; k++) square += (p[k]! - line[a + k]! - t * (line[b + k]! - line[a + k]!)) ** 2;
    best = Math.min(best, square);
  }
  return Math.sqrt(best);
}
