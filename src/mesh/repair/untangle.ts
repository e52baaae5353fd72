import { triangleCount, vertexCount, type Mesh } from "#mesh/mesh.ts";
import { CROWDED, edgePartners, nextCorner, previousCorner } from "#mesh/neighbours.ts";
import { compact, keepTriangles } from "#mesh/weld.ts";

/**
 * Takes a consistently turned mesh apart where surfaces touch: at an edge of three or more triangles those that bound one wedge of the
 * body stay together, and a point that joins several fans is given to each of them (cutting as in Guéziec et al. 2001, from memory).
 * Triangles at an edge that cannot be taken apart so are dropped. Afterwards no edge has more than two triangles.
 */
export function untangle(mesh: Mesh): { mesh: Mesh; crowded: number; dropped: number } {
  let crowded = 0;
  const before = triangleCount(mesh);
  for (;;) {
    const { partner, crowdedEdges } = edgePartners(mesh);
    crowded = Math.max(crowded, crowdedEdges);
    if (crowdedEdges > 0) pairWedges(mesh, partner);
    for (let h = 0; h < partner.length; h++) if (partner[h]! >= 0 && mesh.triangles[partner[h]!] === mesh.triangles[h]) partner[h] = -1;
    const split = splitFans(mesh, partner);
    const left = edgePartners(split);
    if (left.crowdedEdges === 0) return { mesh: split, crowded, dropped: before - triangleCount(split) };
    mesh = keepTriangles(split, (t) => left.partner[3 * t] !== CROWDED && left.partner[3 * t + 1] !== CROWDED && left.partner[3 * t + 2] !== CROWDED);
  }
}

/** Gives each fan of triangles around a point a point of its own; fans hang together over `twin`. */
function splitFans(mesh: Mesh, twin: Int32Array): Mesh {
  const { positions, triangles } = mesh;
  const owner = new Int32Array(triangles.length).fill(-1);
  const first = new Int32Array(vertexCount(mesh)).fill(-1);
  const extra: number[] = [];
  const renamed = new Uint32Array(triangles.length);
  let count = vertexCount(mesh);
  for (let h = 0; h < triangles.length; h++) {
    if (owner[h] !== -1) continue;
    const v = triangles[h]!;
    const name = first[v] === -1 ? v : count++;
    if (name !== v) extra.push(positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!);
    first[v] = h;
    // round the fan one way, then the other from the same corner if it is open
    let e = h;
    do {
      owner[e] = name;
      renamed[e] = name;
      e = twin[previousCorner(e)]!;
    } while (e >= 0 && owner[e] === -1);
    for (e = twin[h]!; e >= 0 && owner[nextCorner(e)] === -1; e = twin[nextCorner(e)]!) {
      owner[nextCorner(e)] = name;
      renamed[nextCorner(e)] = name;
    }
  }
  if (extra.length === 0) return mesh;
  const all = new Float64Array(count * 3);
  all.set(positions);
  all.set(extra, positions.length);
  return compact({ positions: all, triangles: renamed });
}

/** Pairs the half-edges at crowded edges, each with the other side of its wedge; writes into `partner`. */
function pairWedges(mesh: Mesh, partner: Int32Array): void {
  const { triangles } = mesh;
  const edges = new Map<string, number[]>();
  for (let h = 0; h < partner.length; h++) {
    if (partner[h] !== CROWDED) continue;
    const [a, b] = [triangles[h]!, triangles[nextCorner(h)]!];
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    const list = edges.get(key);
    if (list) list.push(h);
    else edges.set(key, [h]);
    partner[h] = -1;
  }
  for (const halves of edges.values()) pairAround(mesh, halves, partner);
}

/**
 * Around the edge from its lower to its upper point, a triangle that runs backward opens a wedge of the body and one that runs forward
 * closes it, as brackets on a circle.
 */
function pairAround(mesh: Mesh, halves: readonly number[], partner: Int32Array): void {
  const { triangles } = mesh;
  const sorted = halves.map((h) => ({ h, forward: triangles[h]! < triangles[nextCorner(h)]!, angle: 0 }));
  const angleOf = angleAround(mesh, halves[0]!);
  for (const s of sorted) s.angle = angleOf(triangles[previousCorner(s.h)]!);
  sorted.sort((p, q) => p.angle - q.angle || Number(q.forward) - Number(p.forward) || p.h - q.h);
  const opened: number[] = [];
  for (const { h, forward } of [...sorted, ...sorted]) {
    if (partner[h] !== -1) continue;
    if (!forward) {
      if (!opened.includes(h)) opened.push(h);
    } else {
      const mate = opened.pop();
      if (mate !== undefined) [partner[h], partner[mate]] = [mate, h];
    }
  }
}

/** Angle of a point around the edge of half-edge `h`, taken from its lower to its upper point. */
function angleAround({ positions: p, triangles }: Mesh, h: number): (v: number) => number {
  const [a, b] = [Math.min(triangles[h]!, triangles[nextCorner(h)]!), Math.max(triangles[h]!, triangles[nextCorner(h)]!)];
  const from = (v: number): [number, number, number] => [p[3 * v]! - p[3 * a]!, p[3 * v + 1]! - p[3 * a + 1]!, p[3 * v + 2]! - p[3 * a + 2]!];
  const cross = (u: readonly number[], w: readonly number[]): [number, number, number] => [u[1]! * w[2]! - u[2]! * w[1]!, u[2]! * w[0]! - u[0]! * w[2]!, u[0]! * w[1]! - u[1]! * w[0]!];
  const dot = (u: readonly number[], w: readonly number[]): number => u[0]! * w[0]! + u[1]! * w[1]! + u[2]! * w[2]!;
  const axis = from(b);
  const length = Math.sqrt(dot(axis, axis)) || 1;
  const zero = from(triangles[previousCorner(h)]!);
  const side = cross(axis, zero);
  return (v) => {
    const d = from(v);
    const out = cross(axis, d); // turned by a quarter with the plane across the axis
    return Math.atan2(dot(cross(side, out), axis) / length, dot(side, out));
  };
}
