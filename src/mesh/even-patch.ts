import { EditMesh } from "./edit-mesh.ts";
import type { Mesh } from "./mesh.ts";
import { nextCorner, previousCorner } from "./neighbours.ts";

const FINE_ROUNDS = 5;
const MOST_ROUNDS = 24;

/**
 * A patch cut up again into even triangles of about `edge`, its open edge kept as it is. Inner points settle in the middle of their
 * neighbours, so the patch becomes a thin skin stretched over its edge. The first vertices must be those of the
 * patch's edge and stay so. Chords between them that are `taken` outside get a point in their middle.
 */
export function evenPatch(patch: Mesh, edge: number, taken: (i: number, j: number) => boolean): Mesh {
  const m = new EditMesh(patch);
  let fine = 0; // rounds since no edge was far too long
  for (let round = 0; round < MOST_ROUNDS && fine < FINE_ROUNDS; round++) {
    const longest = edge * (fine === 0 ? 1.6 : 4 / 3);
    const split = splitWhere(m, (h) => m.squareLength(h) > longest * longest);
    if (fine > 0 || split === 0) fine++;
    collapseShort(m, edge * 0.7);
    flipToDelaunay(m);
    settle(m, fine === 0 ? 10 : 4);
  }
  // a split renumbers half-edges next to it, so one pass can miss some
  while (splitWhere(m, (h) => taken(m.corners[h]!, m.corners[nextCorner(h)]!)) > 0);
  return m.taken().mesh;
}

/** Halves the chosen ones of the inner edges that are there at the start; open ones stay. How many. */
function splitWhere(m: EditMesh, chosen: (h: number) => boolean): number {
  const end = m.triangles * 3;
  let split = 0;
  for (let h = 0; h < end; h++) {
    if (m.corners[h]! < 0 || m.twin[h]! < h || !chosen(h)) continue;
    const p = m.positions;
    const a = 3 * m.corners[h]!;
    const b = 3 * m.corners[nextCorner(h)]!;
    m.split(h, (p[a]! + p[b]!) / 2, (p[a + 1]! + p[b + 1]!) / 2, (p[a + 2]! + p[b + 2]!) / 2);
    split++;
  }
  return split;
}

function collapseShort(m: EditMesh, shortest: number): void {
  for (let h = 0; h < m.triangles * 3; h++) {
    if (m.corners[h]! < 0 || m.isOpen(m.corners[h]!)) continue;
    if (m.squareLength(h) < shortest * shortest && m.canCollapse(h)) m.collapse(h);
  }
}

/** Turns edges until no pair of opposite angles sums to more than 180°, with a bound on the number of passes. */
export function flipToDelaunay(m: EditMesh, mayFlip: (h: number) => boolean = () => true): void {
  for (let pass = 0; pass < 10; pass++) {
    let turned = 0;
    for (let h = 0; h < m.triangles * 3; h++) {
      const g = m.twin[h]!;
      if (m.corners[h]! < 0 || g < h) continue;
      if (cotangent(m, h) + cotangent(m, g) < -1e-9 && mayFlip(h) && m.canFlip(h)) {
        m.flip(h);
        turned++;
      }
    }
    if (turned === 0) return;
  }
}

/** Cotangent of the angle opposite to half-edge `h`; very large for a triangle without area. */
function cotangent(m: EditMesh, h: number): number {
  const p = m.positions;
  const a = 3 * m.corners[h]!, b = 3 * m.corners[nextCorner(h)]!, c = 3 * m.corners[previousCorner(h)]!;
  const ux = p[a]! - p[c]!, uy = p[a + 1]! - p[c + 1]!, uz = p[a + 2]! - p[c + 2]!;
  const vx = p[b]! - p[c]!, vy = p[b + 1]! - p[c + 1]!, vz = p[b + 2]! - p[c + 2]!;
  const nx = uy * vz - uz * vy, ny = uz * vx - ux * vz, nz = ux * vy - uy * vx;
  return (ux * vx + uy * vy + uz * vz) / Math.max(Math.sqrt(nx * nx + ny * ny + nz * nz), 1e-300);
}

function settle(m: EditMesh, sweeps: number): void {
  const ring: number[] = [];
  const p = m.positions;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    for (let v = 0; v < m.vertices; v++) {
      if (m.leaving[v]! < 0 || m.isOpen(v)) continue;
      const n = m.ringInto(ring, v);
      for (let k = 0; k < 3; k++) {
        let sum = 0;
        for (let i = 0; i < n; i++) sum += p[3 * ring[i]! + k]!;
        p[3 * v + k] = sum / n;
      }
    }
  }
}
