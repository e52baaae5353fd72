import type { Mesh } from "#mesh/mesh.ts";

/** A 4-sided pyramid with triangle base, corner at the origin; outward. */
export function tetrahedron(size = 1): Mesh {
  return { positions: Float64Array.from([0, 0, 0, size, 0, 0, 0, size, 0, 0, 0, size]), triangles: Uint32Array.from([0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]) };
}

/** Box from the origin to (a, b, c); outward. */
export function box(a: number, b: number, c: number): Mesh {
  const positions = Float64Array.from([0, 0, 0, a, 0, 0, a, b, 0, 0, b, 0, 0, 0, c, a, 0, c, a, b, c, 0, b, c]);
  const quads = [[0, 3, 2, 1], [4, 5, 6, 7], [0, 1, 5, 4], [1, 2, 6, 5], [2, 3, 7, 6], [3, 0, 4, 7]];
  return { positions, triangles: Uint32Array.from(quads.flatMap(([p, q, r, s]) => [p!, q!, r!, p!, r!, s!])) };
}

export function icosahedron(): Mesh {
  const g = (1 + Math.sqrt(5)) / 2;
  const positions = Float64Array.from([-1, g, 0, 1, g, 0, -1, -g, 0, 1, -g, 0, 0, -1, g, 0, 1, g, 0, -1, -g, 0, 1, -g, g, 0, -1, g, 0, 1, -g, 0, -1, -g, 0, 1]);
  const triangles = Uint32Array.from([0, 11, 5, 0, 5, 1, 0, 1, 7, 0, 7, 10, 0, 10, 11, 1, 5, 9, 5, 11, 4, 11, 10, 2, 10, 7, 6, 7, 1, 8, 3, 9, 4, 3, 4, 2, 3, 2, 6, 3, 6, 8, 3, 8, 9, 4, 9, 5, 2, 4, 11, 6, 2, 10, 8, 6, 7, 9, 8, 1]);
  return { positions, triangles };
}

/** Ellipsoid with half axes a, b, c from an icosahedron quartered `times` times, its points on the surface. */
export function ellipsoid(a: number, b: number, c: number, times: number): Mesh {
  let mesh = icosahedron();
  for (let i = 0; i < times; i++) mesh = quartered(mesh);
  const positions = mesh.positions.slice();
  for (let i = 0; i < positions.length; i += 3) {
    const s = 1 / Math.hypot(positions[i]!, positions[i + 1]!, positions[i + 2]!);
    positions[i]! *= a * s;
    positions[i + 1]! *= b * s;
    positions[i + 2]! *= c * s;
  }
  return { positions, triangles: mesh.triangles };
}

/** Every triangle cut into four at the middles of its edges. */
export function quartered({ positions, triangles }: Mesh): Mesh {
  const places = Array.from(positions);
  const middles = new Map<string, number>();
  const middle = (a: number, b: number): number => {
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    let v = middles.get(key);
    if (v === undefined) {
      v = places.length / 3;
      middles.set(key, v);
      for (let k = 0; k < 3; k++) places.push((places[3 * a + k]! + places[3 * b + k]!) / 2);
    }
    return v;
  };
  const faces: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!];
    const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
    faces.push(a, ab, ca, b, bc, ab, c, ca, bc, ab, bc, ca);
  }
  return { positions: Float64Array.from(places), triangles: Uint32Array.from(faces) };
}

/** Ring with radii R and r, m by n quads; outward. */
export function torus(R: number, r: number, m: number, n: number): Mesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let i = 0; i < m; i++)
    for (let j = 0; j < n; j++) {
      const [u, v] = [(2 * Math.PI * i) / m, (2 * Math.PI * j) / n];
      positions.push((R + r * Math.cos(v)) * Math.cos(u), (R + r * Math.cos(v)) * Math.sin(u), r * Math.sin(v));
      const [a, b, c, d] = [i * n + j, ((i + 1) % m) * n + j, ((i + 1) % m) * n + ((j + 1) % n), i * n + ((j + 1) % n)];
      triangles.push(a, b, c, a, c, d);
    }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Both meshes in one. */
export function together(...meshes: readonly Mesh[]): Mesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const mesh of meshes) {
    const first = positions.length / 3;
    for (const x of mesh.positions) positions.push(x);
    for (const v of mesh.triangles) triangles.push(first + v);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Each point by `to`. */
export function moved(mesh: Mesh, to: (x: number, y: number, z: number) => readonly [number, number, number]): Mesh {
  const positions = mesh.positions.slice();
  for (let i = 0; i < positions.length; i += 3) positions.set(to(positions[i]!, positions[i + 1]!, positions[i + 2]!), i);
  return { positions, triangles: mesh.triangles };
}

/** Every triangle with points of its own, as in STL. */
export function loose({ positions, triangles }: Mesh): Mesh {
  const out = new Float64Array(triangles.length * 3);
  triangles.forEach((v, i) => out.set(positions.subarray(3 * v, 3 * v + 3), 3 * i));
  return { positions: out, triangles: Uint32Array.from(triangles, (_, i) => i) };
}

/** Only the triangles that `keep` chooses by their middle. */
export function where({ positions: p, triangles }: Mesh, keep: (x: number, y: number, z: number) => boolean): Mesh {
  const kept: number[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const at = (k: number): number => (p[3 * triangles[i]! + k]! + p[3 * triangles[i + 1]! + k]! + p[3 * triangles[i + 2]! + k]!) / 3;
    if (keep(at(0), at(1), at(2))) kept.push(triangles[i]!, triangles[i + 1]!, triangles[i + 2]!);
  }
  return { positions: p, triangles: Uint32Array.from(kept) };
}

/** Sum over all points of 2π − the angles of their triangles. */
export function angleDefects({ positions: p, triangles }: Mesh): number {
  let sum = 0;
  const used = new Set<number>();
  for (let i = 0; i < triangles.length; i += 3)
    for (let k = 0; k < 3; k++) {
      const [a, b, c] = [3 * triangles[i + k]!, 3 * triangles[i + ((k + 1) % 3)]!, 3 * triangles[i + ((k + 2) % 3)]!];
      used.add(a);
      const u = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!] as const;
      const v = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!] as const;
      const cross = Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]);
      sum -= Math.atan2(cross, u[0] * v[0] + u[1] * v[1] + u[2] * v[2]);
    }
  return sum + 2 * Math.PI * used.size;
}
