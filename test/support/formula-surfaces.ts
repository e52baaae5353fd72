import type { Mesh } from "#mesh/mesh.ts";

/** Point at (s, t) in the unit square, mm. */
export type Patch = (s: number, t: number) => readonly [number, number, number];

/** Regular grid of `columns` × `rows` cells over the unit square, each cell cut in two; orientation of (s, t). */
export function gridMesh(patch: Patch, columns: number, rows: number): Mesh {
  const positions = new Float64Array(3 * (columns + 1) * (rows + 1));
  for (let r = 0, p = 0; r <= rows; r++) for (let c = 0; c <= columns; c++, p += 3) positions.set(patch(c / columns, r / rows), p);
  const triangles = new Uint32Array(6 * columns * rows);
  for (let r = 0, k = 0; r < rows; r++)
    for (let c = 0; c < columns; c++, k += 6) {
      const a = r * (columns + 1) + c;
      const d = a + columns + 1;
      triangles.set((r + c) % 2 === 0 ? [a, a + 1, d + 1, a, d + 1, d] : [a, a + 1, d, a + 1, d + 1, d], k);
    }
  return { positions, triangles };
}

/**
 * Spherical cap of radius `radius` and half-angle `degrees` round the z axis: rings of 6, 12, 18 … points at equal steps of
 * the polar angle, 6 · rings² triangles, outside up.
 */
export function capMesh(radius: number, degrees: number, rings: number): Mesh {
  const positions: number[] = [0, 0, radius];
  const triangles: number[] = [];
  const start = (ring: number) => (ring === 0 ? 0 : 1 + 3 * ring * (ring - 1));
  for (let ring = 1; ring <= rings; ring++) {
    const polar = ((degrees * Math.PI) / 180) * (ring / rings);
    for (let k = 0; k < 6 * ring; k++) {
      const around = (2 * Math.PI * k) / (6 * ring);
      positions.push(radius * Math.sin(polar) * Math.cos(around), radius * Math.sin(polar) * Math.sin(around), radius * Math.cos(polar));
    }
    for (let side = 0; side < 6; side++)
      for (let k = 0; k < ring; k++) {
        const outer = (j: number) => start(ring) + ((side * ring + j) % (6 * ring));
        const inner = (j: number) => (ring === 1 ? 0 : start(ring - 1) + ((side * (ring - 1) + j) % (6 * (ring - 1))));
        triangles.push(outer(k), outer(k + 1), inner(k));
        if (k < ring - 1) triangles.push(inner(k), outer(k + 1), inner(k + 1));
      }
  }
  return { positions: new Float64Array(positions), triangles: new Uint32Array(triangles) };
}

/**
 * A shell as of a pump's upper: a horseshoe open at the back, 250 mm long, between a feather line near the ground and a
 * slanting topline, bulged outward; own invented formula. s runs from the inner back edge round the toe to the outer one,
 * t from feather to topline. `girth` scales width and height.
 */
export function pumpShell(triangles: number, girth = 1): Mesh {
  const counts = pumpCounts(triangles);
  const rows = counts.length - 1;
  const positions: number[] = [];
  const start: number[] = [];
  counts.forEach((count, r) => {
    start.push(positions.length / 3);
    for (let k = 0; k <= count; k++) positions.push(...pumpPoint(k / count, r / rows, girth));
  });
  return { positions: new Float64Array(positions), triangles: stitchRows(new Float64Array(positions), start, counts) };
}

/** Number of edges along each row of {@link pumpShell}, from feather to topline; its vertices are numbered row by row. */
export function pumpCounts(triangles: number): number[] {
  const cells = triangles / 2;
  const rows = Math.max(3, Math.round(Math.sqrt(cells / 7.4)));
  const lengths = Array.from({ length: rows + 1 }, (_, r) => rowLength(r / rows));
  const mean = lengths.reduce((a, b) => a + b) / (rows + 1);
  return lengths.map((l) => Math.max(3, Math.round((cells / rows) * (l / mean))));
}

/** Joins rows of different counts by the shorter diagonal each time. */
function stitchRows(p: Float64Array, start: readonly number[], counts: readonly number[]): Uint32Array {
  const far = (a: number, b: number) => (p[3 * a]! - p[3 * b]!) ** 2 + (p[3 * a + 1]! - p[3 * b + 1]!) ** 2 + (p[3 * a + 2]! - p[3 * b + 2]!) ** 2;
  const triangles: number[] = [];
  for (let r = 0; r + 1 < counts.length; r++) {
    let [a, b] = [start[r]!, start[r + 1]!];
    const [lastA, lastB] = [a + counts[r]!, b + counts[r + 1]!];
    while (a < lastA || b < lastB) {
      if (b === lastB || (a < lastA && far(a + 1, b) < far(a, b + 1))) triangles.push(a, ++a, b);
      else triangles.push(a, b + 1, b++);
    }
  }
  return new Uint32Array(triangles);
}

function pumpPoint(s: number, t: number, girth: number): [number, number, number] {
  const turn = 2 * Math.PI * (s + 0.03 * Math.sin(2 * Math.PI * s)); // a little slower at the ends
  const c = Math.cos(turn);
  const w = Math.sin(turn);
  const bend = (x: number) => -5 * (x / 125 - 1) ** 2;
  const feather: [number, number, number] = [125 - 125 * c, w * (35 - 7 * c) + bend(125 - 125 * c), 3 + 4 * c * c];
  const top: [number, number, number] = [90 - 82 * c, w * (25 - 3 * c) + bend(90 - 82 * c), 54 + 5 * c - 6 * w * w];
  const bulge = 4 * t * (1 - t);
  const rise = t * (1.55 - 0.55 * t);
  return [
    feather[0] + (top[0] - feather[0]) * t - 11 * bulge * c,
    girth * (feather[1] + (top[1] - feather[1]) * t + 9 * bulge * w),
    girth * (feather[2] + (top[2] - feather[2]) * rise),
  ];
}

function rowLength(t: number): number {
  let sum = 0;
  let before = pumpPoint(0, t, 1);
  for (let k = 1; k <= 400; k++) {
    const now = pumpPoint(k / 400, t, 1);
    sum += Math.hypot(now[0] - before[0], now[1] - before[1], now[2] - before[2]);
    before = now;
  }
  return sum;
}
