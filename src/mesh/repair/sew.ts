import { vertexCount, type Mesh } from "#mesh/mesh.ts";
import { edgePartners, nextCorner, OPEN, previousCorner } from "#mesh/neighbours.ts";
import { compact } from "#mesh/weld.ts";
import { Cells } from "./cells.ts";

/** Points on open edges are sewn when they lie nearer than this share of the shortest open edge at them … */
const OF_EDGE = 0.2;
/** … and of the diagonal of the scan: 0.3 mm on a last. */
const OF_SIZE = 1e-3;
const ROUNDS = 8;

export interface Sewn {
  readonly mesh: Mesh;
  /** Points joined with another, and points set into an edge that passed them by. */
  readonly points: number;
  /** Width of the widest crack that was sewn, in the mesh's unit. */
  readonly widest: number;
}

/**
 * Sews cracks: open edges that run along each other. Points of two edges that lie together become one in the middle; a point beside the
 * run of an edge is set into it (a T-junction). Only points on open edges move, so a closed scan comes back as it is.
 */
export function sew(mesh: Mesh, size: number): Sewn {
  let now = mesh;
  let points = 0;
  let widest = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const rim = openRim(now, size);
    if (rim.vertices.length === 0) break;
    const joined = joinPairs(now, rim, size);
    const set = joined.points > 0 ? joined : setIntoEdges(now, rim, size);
    if (set.points === 0) break;
    now = set.mesh;
    points += set.points;
    widest = Math.max(widest, set.widest);
  }
  return { mesh: now, points, widest };
}

interface Rim {
  readonly vertices: readonly number[];
  /** Open half-edges. */
  readonly edges: readonly number[];
  /** How far each vertex may be drawn; 0 off the rim. */
  readonly reach: Float64Array;
  /** The other ends of the open edges at each vertex. */
  readonly along: ReadonlyMap<number, readonly number[]>;
}

function openRim(mesh: Mesh, size: number): Rim {
  const { positions: p, triangles } = mesh;
  const { partner } = edgePartners(mesh);
  const reach = new Float64Array(vertexCount(mesh));
  const along = new Map<number, number[]>();
  const edges: number[] = [];
  for (let h = 0; h < partner.length; h++) {
    if (partner[h] !== OPEN) continue;
    edges.push(h);
    const [a, b] = [triangles[h]!, triangles[nextCorner(h)]!];
    const far = Math.min(OF_SIZE * size, OF_EDGE * Math.sqrt(square(p, a, b)));
    for (const [v, w] of [[a, b], [b, a]] as const) {
      reach[v] = along.has(v) ? Math.min(reach[v]!, far) : far;
      const list = along.get(v);
      if (list) list.push(w);
      else along.set(v, [w]);
    }
  }
  return { vertices: [...along.keys()].sort((a, b) => a - b), edges, reach, along };
}

/** Joins points that are each other's nearest on the rim, but for neighbours along it. */
function joinPairs(mesh: Mesh, rim: Rim, size: number): Sewn {
  const p = mesh.positions;
  const cells = new Cells(OF_SIZE * size);
  for (const v of rim.vertices) cells.add(v, p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!);
  const nearest = new Map<number, number>();
  for (const v of rim.vertices) {
    let least = Infinity;
    cells.near(p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!, (w) => {
      const limit = Math.min(rim.reach[v]!, rim.reach[w]!);
      const d = square(p, v, w);
      if (w === v || d > limit * limit || d >= least || rim.along.get(v)!.includes(w)) return;
      least = d;
      nearest.set(v, w);
    });
  }
  const target = Uint32Array.from({ length: vertexCount(mesh) }, (_, v) => v);
  const positions = p.slice();
  let points = 0;
  let widest = 0;
  for (const [v, w] of nearest) {
    if (w < v || nearest.get(w) !== v) continue;
    target[w] = v;
    widest = Math.max(widest, square(p, v, w));
    for (let k = 0; k < 3; k++) positions[3 * v + k] = (p[3 * v + k]! + p[3 * w + k]!) / 2;
    points++;
  }
  if (points === 0) return { mesh, points: 0, widest: 0 };
  const triangles: number[] = [];
  for (let i = 0; i < mesh.triangles.length; i += 3) {
    const [a, b, c] = [target[mesh.triangles[i]!]!, target[mesh.triangles[i + 1]!]!, target[mesh.triangles[i + 2]!]!];
    if (a !== b && b !== c && c !== a) triangles.push(a, b, c);
  }
  return { mesh: compact({ positions, triangles: Uint32Array.from(triangles) }), points, widest: Math.sqrt(widest) };
}

/** Sets rim points that lie beside the run of an open edge into it; one edge a triangle, the next round does the others. */
function setIntoEdges(mesh: Mesh, rim: Rim, size: number): Sewn {
  const { positions: p, triangles } = mesh;
  const cells = new Cells(4 * OF_SIZE * size);
  for (const v of rim.vertices) cells.add(v, p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!);
  const fans = new Map<number, { h: number; inside: { v: number; s: number }[] }>();
  const used = new Set<number>();
  let points = 0;
  let widest = 0;
  for (const h of rim.edges) {
    const t = (h - (h % 3)) / 3;
    if (fans.has(t)) continue;
    const [a, b, c] = [triangles[h]!, triangles[nextCorner(h)]!, triangles[previousCorner(h)]!];
    const inside: { v: number; s: number; off: number }[] = [];
    cells.along(p, a, b, (v) => {
      if (v === a || v === b || v === c || used.has(v)) return;
      const { s, off } = besideEdge(p, a, b, v);
      if (off <= rim.reach[v]! && s * s * square(p, a, b) > off * off && (1 - s) ** 2 * square(p, a, b) > off * off) inside.push({ v, s, off });
    });
    if (inside.length === 0) continue;
    inside.sort((x, y) => x.s - y.s || x.v - y.v);
    for (const { v, off } of inside) {
      used.add(v);
      widest = Math.max(widest, off);
    }
    points += inside.length;
    fans.set(t, { h, inside });
  }
  if (points === 0) return { mesh, points: 0, widest: 0 };
  const out: number[] = [];
  for (let t = 0; t < triangles.length / 3; t++) {
    const fan = fans.get(t);
    if (!fan) out.push(triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!);
    else {
      const c = triangles[previousCorner(fan.h)]!;
      const run = [triangles[fan.h]!, ...fan.inside.map(({ v }) => v), triangles[nextCorner(fan.h)]!];
      for (let i = 0; i + 1 < run.length; i++) out.push(run[i]!, run[i + 1]!, c);
    }
  }
  return { mesh: { positions: p, triangles: Uint32Array.from(out) }, points, widest };
}

/** Where on the edge a–b point v lies beside it, as a share of its length, and how far off; Infinity beyond its ends. */
function besideEdge(p: Float64Array, a: number, b: number, v: number): { s: number; off: number } {
  const [ux, uy, uz] = [p[3 * b]! - p[3 * a]!, p[3 * b + 1]! - p[3 * a + 1]!, p[3 * b + 2]! - p[3 * a + 2]!];
  const [x, y, z] = [p[3 * v]! - p[3 * a]!, p[3 * v + 1]! - p[3 * a + 1]!, p[3 * v + 2]! - p[3 * a + 2]!];
  const s = (ux * x + uy * y + uz * z) / (ux * ux + uy * uy + uz * uz);
  if (!(s > 0 && s < 1)) return { s, off: Infinity };
  return { s, off: Math.sqrt((x - s * ux) ** 2 + (y - s * uy) ** 2 + (z - s * uz) ** 2) };
}

function square(p: Float64Array, a: number, b: number): number {
  return (p[3 * a]! - p[3 * b]!) ** 2 + (p[3 * a + 1]! - p[3 * b + 1]!) ** 2 + (p[3 * a + 2]! - p[3 * b + 2]!) ** 2;
}
