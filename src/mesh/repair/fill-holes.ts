import { evenPatch } from "#mesh/even-patch.ts";
import { creaseAcross } from "./crease.ts";
import { fair } from "./fair.ts";
import { fillLoop } from "./fill-loop.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { boundaryLoops, neighbours, nextCorner, vertexCorners, type Groups } from "#mesh/neighbours.ts";
import { diagonal, triangleArea } from "#mesh/area.ts";

/** One hole that was closed; lengths and areas in the mesh's unit. */
export interface FilledHole {
  readonly edges: number;
  /** Longest extent of its edge along an axis. */
  readonly across: number;
  readonly area: number;
  readonly middle: readonly [number, number, number];
  /** Whether the cap runs on smoothly from its surroundings, closes them off like a lid, or carries on an edge of the body that crosses it. */
  readonly shape: "smooth" | "lid" | "edged";
}

/** A cap whose edge meets its surroundings at a sharper angle than this is a lid: cos 50°. */
const SMOOTH_COSINE = 0.64;
/** A hole of so few edges, and no wider than this share of the mesh, is closed by plain triangles: a finer cap would look the same. */
const PLAIN_EDGES = 6;
const PLAIN_SHARE = 0.03;
/** Caps of huge holes get larger triangles, so that none has more than about this many. */
const MOST_TRIANGLES = 20_000;

/**
 * Closes every hole of a manifold mesh with even triangles. Where the surface around the hole runs on across it the cap is faired to
 * follow; where it stands off (a missing cone top) the cap is a lid stretched flat over the edge. Each hole costs by its own size.
 */
export function fillHoles(mesh: Mesh): { mesh: Mesh; holes: FilledHole[] } {
  const { twin } = neighbours(mesh);
  const loops = boundaryLoops(twin).filter((loop) => loop.length >= 3);
  if (loops.length === 0) return { mesh, holes: [] };
  const size = diagonal(mesh);
  const points = Array.from(mesh.positions);
  const faces = Array.from(mesh.triangles);
  const rims = loops.map((loop) => rimsOf(mesh, twin, loop, points));
  const withCreases: Mesh = { positions: Float64Array.from(points), triangles: mesh.triangles };
  const corners = vertexCorners(withCreases);
  const holes: FilledHole[] = [];
  loops.forEach((loop, i) => {
    const done = rims[i]!.map((names) => {
      const closed = closeOne(withCreases, corners, names, size);
      const first = points.length / 3;
      for (const v of closed.patch.triangles) faces.push(v < names.length ? names[v]! : first + v - names.length);
      for (let c = 3 * names.length; c < closed.patch.positions.length; c++) points.push(closed.patch.positions[c]!);
      return closed;
    });
    const edge = new Float64Array(loop.length * 3);
    loop.forEach((h, k) => edge.set(mesh.positions.subarray(3 * mesh.triangles[h]!, 3 * mesh.triangles[h]! + 3), 3 * k));
    holes.push({ edges: loop.length, area: done.reduce((sum, d) => sum + d.area, 0), shape: done.length > 1 ? "edged" : done[0]!.shape, ...extent(edge) });
  });
  return { mesh: { positions: Float64Array.from(points), triangles: Uint32Array.from(faces) }, holes };
}

/** The loop of a hole as vertices, turned as the cap turns; two loops where an edge of the body crosses it, whose points are added to `points`. */
function rimsOf(mesh: Mesh, twin: Int32Array, loop: Int32Array, points: number[]): number[][] {
  // the open half-edges run with the hole on their right; the cap turns the other way
  const names = Array.from(loop, (h) => mesh.triangles[h]!);
  const crease = creaseAcross(mesh, twin, loop);
  if (!crease) return [names.reverse()];
  const between = Array.from({ length: crease.points.length / 3 }, (_, q) => points.length / 3 + q);
  for (const x of crease.points) points.push(x);
  const inner = names.slice(crease.from, crease.to + 1);
  const outer = [...names.slice(crease.to), ...names.slice(0, crease.from + 1)];
  return [[...inner, ...between.toReversed()].reverse(), [...outer, ...between].reverse()];
}

/** The patch over the loop of vertices `names`; its first vertices are those, in order. */
function closeOne(mesh: Mesh, corners: Groups, names: readonly number[], size: number): { patch: Mesh; area: number; shape: "smooth" | "lid" } {
  const edge = new Float64Array(names.length * 3);
  names.forEach((v, i) => edge.set(mesh.positions.subarray(3 * v, 3 * v + 3), 3 * i));
  const taken = names.length === 3 ? () => false : chordsTaken(mesh, corners, names);
  const coarse: Mesh = { positions: edge, triangles: fillLoop(edge, taken) };
  const plain = names.length <= PLAIN_EDGES && loopLength(edge) < 2 * PLAIN_SHARE * size && !hasTaken(coarse, taken);
  const { patch, shape } = plain ? { patch: coarse, shape: "smooth" as const } : evenCap(mesh, corners, names, coarse, taken);
  let area = 0;
  for (let t = 0; t < patch.triangles.length / 3; t++) area += triangleArea(patch, t);
  return { patch, area, shape };
}

function hasTaken({ triangles }: Mesh, taken: (i: number, j: number) => boolean): boolean {
  return triangles.some((v, h) => taken(v, triangles[nextCorner(h)]!));
}

/** The coarse cap cut into even triangles, and faired when the surface runs on across it. */
function evenCap(mesh: Mesh, corners: Groups, names: readonly number[], coarse: Mesh, taken: (i: number, j: number) => boolean): { patch: Mesh; shape: "smooth" | "lid" } {
  const around = loopLength(coarse.positions);
  const mean = around / names.length;
  // a round hole has an area of around² / 4π, an even triangle one of edge² · √3 / 4
  const coarsest = Math.sqrt(((around * around) / (4 * Math.PI) / MOST_TRIANGLES) * (4 / Math.sqrt(3)));
  const skin = evenPatch(coarse, Math.max(mean, coarsest), taken);
  const place = surroundings(mesh, corners, names, skin);
  const shape = runsOn(place, skin.triangles.length) ? "smooth" : "lid";
  if (shape === "lid" || skin.positions.length === coarse.positions.length) return { patch: skin, shape };
  const free = new Uint8Array(place.positions.length / 3);
  free.fill(1, names.length, skin.positions.length / 3);
  const bend = new Uint8Array(free.length); // points of an edge across the hole belong to no triangle yet
  names.forEach((v, i) => (bend[i] = corners.start[v] === corners.start[v + 1] ? 1 : 0));
  return { patch: { positions: fair(place, free, mean * 1e-4, bend).slice(0, skin.positions.length), triangles: skin.triangles }, shape };
}

/** Tells whether points i and j of the loop are joined by an edge of the mesh already, so that the cap must not join them again. */
function chordsTaken({ triangles }: Mesh, corners: Groups, names: readonly number[]): (i: number, j: number) => boolean {
  const place = new Map(names.map((v, i) => [v, i]));
  const n = names.length;
  const taken = new Set<number>();
  names.forEach((v, i) => {
    for (let c = corners.start[v]!; c < corners.start[v + 1]!; c++) {
      const t = corners.items[c]! - (corners.items[c]! % 3);
      for (let k = 0; k < 3; k++) {
        const j = place.get(triangles[t + k]!);
        if (j !== undefined && j !== i && j !== (i + 1) % n && i !== (j + 1) % n) taken.add(i * n + j);
      }
    }
  });
  return taken.size === 0 ? () => false : (i, j) => i < n && j < n && taken.has(i * n + j);
}

/** The patch first, then two rings of triangles of the mesh around it; the patch's vertices keep their numbers. */
function surroundings(mesh: Mesh, corners: Groups, names: readonly number[], patch: Mesh): Mesh {
  const number = new Map(names.map((v, i) => [v, i]));
  const positions = Array.from(patch.positions);
  const triangles = Array.from(patch.triangles);
  const seen = new Set<number>();
  let front: readonly number[] = names;
  for (let ring = 0; ring < 2; ring++) {
    const next: number[] = [];
    for (const v of front) {
      for (let c = corners.start[v]!; c < corners.start[v + 1]!; c++) {
        const t = (corners.items[c]! - (corners.items[c]! % 3)) / 3;
        if (seen.has(t)) continue;
        seen.add(t);
        for (let k = 0; k < 3; k++) {
          const w = mesh.triangles[3 * t + k]!;
          let own = number.get(w);
          if (own === undefined) {
            own = positions.length / 3;
            number.set(w, own);
            positions.push(mesh.positions[3 * w]!, mesh.positions[3 * w + 1]!, mesh.positions[3 * w + 2]!);
            next.push(w);
          }
          triangles.push(own);
        }
      }
    }
    front = next;
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Whether the cap, the first `end` corners, goes on in the direction of its surroundings along most of its edge. */
function runsOn(mesh: Mesh, end: number): boolean {
  const { twin } = neighbours(mesh);
  let smooth = 0;
  let all = 0;
  for (let h = 0; h < end; h++) {
    const g = twin[h]!;
    if (g < end) continue;
    const [a, b] = [normal(mesh, (h - (h % 3)) / 3), normal(mesh, (g - (g % 3)) / 3)];
    all++;
    if (a[0] * b[0] + a[1] * b[1] + a[2] * b[2] > SMOOTH_COSINE) smooth++;
  }
  return smooth > 0.6 * all;
}

function loopLength(edge: Float64Array): number {
  let sum = 0;
  for (let i = 0, j = edge.length - 3; i < edge.length; j = i, i += 3) sum += Math.sqrt((edge[i]! - edge[j]!) ** 2 + (edge[i + 1]! - edge[j + 1]!) ** 2 + (edge[i + 2]! - edge[j + 2]!) ** 2);
  return sum;
}

function normal({ positions: p, triangles }: Mesh, t: number): readonly [number, number, number] {
  const [a, b, c] = [3 * triangles[3 * t]!, 3 * triangles[3 * t + 1]!, 3 * triangles[3 * t + 2]!];
  const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
  const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const s = 1 / Math.max(Math.sqrt(nx * nx + ny * ny + nz * nz), 1e-300);
  return [nx * s, ny * s, nz * s];
}

function extent(edge: Float64Array): { across: number; middle: readonly [number, number, number] } {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < edge.length; i++) {
    low[i % 3] = Math.min(low[i % 3]!, edge[i]!);
    high[i % 3] = Math.max(high[i % 3]!, edge[i]!);
  }
  const size = (k: number): number => high[k]! - low[k]!;
  return { across: Math.max(size(0), size(1), size(2)), middle: [(low[0]! + high[0]!) / 2, (low[1]! + high[1]!) / 2, (low[2]! + high[2]!) / 2] };
}
