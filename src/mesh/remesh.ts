import type { Watch } from "#base/watch.ts";
import { ClosestPoint } from "./closest.ts";
import { EditMesh } from "./edit-mesh.ts";
import { flipToDelaunay } from "./even-patch.ts";
import { keepsShape } from "./keeps-shape.ts";
import type { Mesh } from "./mesh.ts";
import { nextCorner, previousCorner } from "./neighbours.ts";
import { normalAcross, normalOf, Ridges } from "./ridges.ts";

const ROUNDS = 5;
/** Normals of neighbours that turn by more than 22° make a ridge, which keeps its place. */
const RIDGE_COSINE = 0.927;
/** A change must not turn any triangle by more than 20°. */
const KEEPS_COSINE = 0.94;
/** Where normals around turn by less than 10° an edge of the wanted length stays near the surface without a look. */
const PLAIN_COSINE = 0.985;
/** How far the middle of an edge may lie off the surface, against the wanted edge: 0.04 mm for 2 mm. */
const OFF = 0.02;
/** A ridge point may go when it lies nearer than this share of the wanted edge to the line between its neighbours. */
const RIDGE_SLACK = 0.012;

/**
 * Cuts a closed mesh up again into even triangles with edges of about `edge` (its own unit), all points on the given surface and ridges
 * in place: split long edges, draw short ones together, turn edges to Delaunay, let points settle and put them back on the surface
 * (Botsch and Kobbelt 2004, A remeshing approach to multiresolution modeling; from memory). Where the surface bends too fast for `edge`
 * triangles stay smaller. The mesh must be manifold and turned alike.
 */
export function remesh(mesh: Mesh, edge: number, watch: Watch): Mesh {
  const m = new EditMesh(mesh);
  const surface = new ClosestPoint(mesh);
  const ridges = new Ridges(m, RIDGE_COSINE);
  const near = new NearTriangles(m, mesh);
  for (let round = 0; round < ROUNDS; round++) {
    watch("remesh", round / ROUNDS);
    splitLong(m, ridges, near, surface, (edge * 4) / 3);
    collapseShort(m, ridges, near, surface, edge);
    flipToDelaunay(m, (h) => mayFlip(m, ridges, near, surface, edge, h));
    settle(m, ridges, near, surface, round + 1 < ROUNDS ? 1 : 2);
  }
  watch("remesh", 1);
  return m.taken().mesh;
}

/** The triangle of the given surface that each point was last found on, so that it is found again fast. */
class NearTriangles {
  #of: Int32Array;
  readonly scratch = new Float64Array(3);
  constructor(m: EditMesh, mesh: Mesh) {
    this.#of = new Int32Array(m.vertices).fill(-1);
    mesh.triangles.forEach((v, i) => (this.#of[v] = (i - (i % 3)) / 3));
  }
  get(v: number): number {
    return this.#of[v] ?? -1;
  }
  set(v: number, t: number): void {
    if (v >= this.#of.length) {
      const wider = new Int32Array(v * 2 + 16).fill(-1);
      wider.set(this.#of);
      this.#of = wider;
    }
    this.#of[v] = t;
  }
}

function splitLong(m: EditMesh, ridges: Ridges, near: NearTriangles, surface: ClosestPoint, longest: number): void {
  const out = new Float64Array(3);
  const end = m.triangles * 3;
  for (let h = 0; h < end; h++) {
    if (m.corners[h]! < 0 || m.twin[h]! < h || m.squareLength(h) <= longest * longest) continue;
    const p = m.positions;
    const a = m.corners[h]!;
    const b = m.corners[nextCorner(h)]!;
    const [x, y, z] = [(p[3 * a]! + p[3 * b]!) / 2, (p[3 * a + 1]! + p[3 * b + 1]!) / 2, (p[3 * a + 2]! + p[3 * b + 2]!) / 2];
    if (ridges.has(a, b)) {
      // a ridge edge lies on the surface already, or as near as its own points do
      ridges.split(a, b, m.split(h, x, y, z));
      continue;
    }
    const t = surface.findInto(out, x, y, z, near.get(a));
    near.set(m.split(h, out[0]!, out[1]!, out[2]!), t);
  }
}

function collapseShort(m: EditMesh, ridges: Ridges, near: NearTriangles, surface: ClosestPoint, edge: number): void {
  const ring: number[] = [];
  const shortest = edge * 0.8;
  for (let h = 0; h < m.triangles * 3; h++) {
    if (m.corners[h]! < 0 || m.squareLength(h) >= shortest * shortest) continue;
    const a = m.corners[h]!;
    const b = m.corners[nextCorner(h)]!;
    const n = m.ringInto(ring, a);
    if (ridges.meeting(a) > 0 && !ridgeMayLose(m, ridges, a, b, ring, n, shortest)) continue;
    if (m.isOpen(a) || !m.canCollapse(h) || !keepsShape(m, a, b, ring, n, (edge * 4) / 3, KEEPS_COSINE)) continue;
    if (!isPlain(m, a, ring, n) && !ring.slice(0, n).every((w) => w === b || middleIsNear(m, near, surface, b, w, edge * OFF))) continue;
    ridges.collapse(a, b, ring, n);
    m.collapse(h);
  }
}

/** Whether the triangles around v all look nearly the same way. */
function isPlain(m: EditMesh, v: number, ring: readonly number[], n: number): boolean {
  const first = normalAcross(m.positions, v, ring[0]!, ring[1]!);
  for (let i = 1; i < n; i++) {
    const s = normalAcross(m.positions, v, ring[i]!, ring[(i + 1) % n]!);
    if (first[0] * s[0] + first[1] * s[1] + first[2] * s[2] < PLAIN_COSINE) return false;
  }
  return true;
}

function middleIsNear(m: EditMesh, near: NearTriangles, surface: ClosestPoint, a: number, b: number, off: number): boolean {
  const p = m.positions;
  surface.findInto(near.scratch, (p[3 * a]! + p[3 * b]!) / 2, (p[3 * a + 1]! + p[3 * b + 1]!) / 2, (p[3 * a + 2]! + p[3 * b + 2]!) / 2, near.get(a));
  return surface.squaredDistance <= off * off;
}

/** Whether ridge point a may be drawn along the ridge to b: it has one ridge through it, nearly straight there. */
function ridgeMayLose(m: EditMesh, ridges: Ridges, a: number, b: number, ring: readonly number[], n: number, shortest: number): boolean {
  if (ridges.meeting(a) !== 2 || !ridges.has(a, b)) return false;
  let c = -1;
  for (let i = 0; i < n; i++) if (ring[i] !== b && ridges.has(a, ring[i]!)) c = ring[i]!;
  if (c < 0) return false;
  const p = m.positions;
  const ux = p[3 * b]! - p[3 * c]!, uy = p[3 * b + 1]! - p[3 * c + 1]!, uz = p[3 * b + 2]! - p[3 * c + 2]!;
  const vx = p[3 * a]! - p[3 * c]!, vy = p[3 * a + 1]! - p[3 * c + 1]!, vz = p[3 * a + 2]! - p[3 * c + 2]!;
  const nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
  const off = (nx * nx + ny * ny + nz * nz) / (ux * ux + uy * uy + uz * uz);
  return off < (RIDGE_SLACK * shortest) ** 2;
}

function mayFlip(m: EditMesh, ridges: Ridges, near: NearTriangles, surface: ClosestPoint, edge: number, h: number): boolean {
  const g = m.twin[h]!;
  const [a, b] = [m.corners[h]!, m.corners[g]!];
  if (ridges.has(a, b)) return false;
  const [c, d] = [m.corners[previousCorner(h)]!, m.corners[previousCorner(g)]!];
  const [s, t] = [normalOf(m, h), normalOf(m, g)];
  const [u, v] = [normalAcross(m.positions, a, d, c), normalAcross(m.positions, d, b, c)];
  if (!(dot(s, u) > KEEPS_COSINE && dot(s, v) > KEEPS_COSINE && dot(t, u) > KEEPS_COSINE && dot(t, v) > KEEPS_COSINE)) return false;
  return dot(s, t) > PLAIN_COSINE || middleIsNear(m, near, surface, c, d, edge * OFF);
}

const dot = (x: readonly [number, number, number], y: readonly [number, number, number]): number => x[0] * y[0] + x[1] * y[1] + x[2] * y[2];

/** Moves each point off ridges and tight bends to the middle of its neighbours and back on to the surface, unless that folds a triangle. */
function settle(m: EditMesh, ridges: Ridges, near: NearTriangles, surface: ClosestPoint, sweeps: number): void {
  const ring: number[] = [];
  const out = new Float64Array(3);
  const p = m.positions;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    for (let v = 0; v < m.vertices; v++) {
      if (m.leaving[v]! < 0 || ridges.meeting(v) > 0) continue;
      const n = m.ringInto(ring, v);
      if (!isPlain(m, v, ring, n)) continue; // on a bend too tight for a ridge or a plain: leave it
      let [x, y, z] = [0, 0, 0];
      for (let i = 0; i < n; i++) {
        const w = 3 * ring[i]!;
        x += p[w]!;
        y += p[w + 1]!;
        z += p[w + 2]!;
      }
      const t = surface.findInto(out, x / n, y / n, z / n, near.get(v));
      const before = [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!] as const;
      const normals = ring.slice(0, n).map((w, i) => normalAcross(p, v, w, ring[(i + 1) % n]!));
      p.set(out, 3 * v);
      const folds = normals.some((s, i) => {
        const u = normalAcross(p, v, ring[i]!, ring[(i + 1) % n]!);
        return s[0] * u[0] + s[1] * u[1] + s[2] * u[2] < KEEPS_COSINE;
      });
      if (folds) p.set(before, 3 * v);
      else near.set(v, t);
    }
  }
}
