import { diagonal, triangleArea } from "#mesh/area.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { boundaryLoops, neighbours, vertexCorners } from "#mesh/neighbours.ts";
import { keepTriangles } from "#mesh/weld.ts";

/** Shorter loops are pinholes, not the edge of a table. */
const SHORTEST_LOOP = 12;
/** How far from flat the table's own edge may be, against the diagonal of the scan. */
const FLATNESS = 0.004;
/** A smaller share of the surface is the ragged edge of a cut, not a table. */
const LEAST_SHARE = 0.005;

/**
 * Takes off pieces of the table that a last stood on: a flat margin along an open edge whose visible face looks toward the body, so
 * that it meets the body in a hollow corner. (A cone top with a hole in it is flat too, but looks away from the body.) The mesh must face
 * outward. `share`: area taken off against the area before, 0 when there was none.
 */
export function dropTable(mesh: Mesh): { mesh: Mesh; share: number } {
  const size = diagonal(mesh);
  let dropped: Uint8Array | undefined;
  for (const loop of boundaryLoops(neighbours(mesh).twin)) {
    if (loop.length < SHORTEST_LOOP) continue;
    const region = flatMargin(mesh, loop, size);
    if (!region || !isTable(mesh, region)) continue;
    dropped ??= new Uint8Array(triangleCount(mesh));
    for (const t of region.triangles) dropped[t] = 1;
  }
  if (!dropped) return { mesh, share: 0 };
  let gone = 0;
  let all = 0;
  for (let t = 0; t < dropped.length; t++) {
    const a = triangleArea(mesh, t);
    all += a;
    if (dropped[t]) gone += a;
  }
  return { mesh: keepTriangles(mesh, (t) => !dropped[t]), share: gone / all };
}

interface Region {
  readonly triangles: readonly number[];
  readonly normal: readonly [number, number, number];
  /** normal · point of the plane. */
  readonly offset: number;
  readonly tolerance: number;
}

/** The triangles that lie in the plane of the loop and hang together with it; undefined when the loop is not flat. */
function flatMargin(mesh: Mesh, loop: Int32Array, size: number): Region | undefined {
  const { positions: p, triangles } = mesh;
  const plane = planeOf(mesh, loop);
  if (!plane || plane.rms > FLATNESS * size) return undefined;
  const { normal: [nx, ny, nz], offset } = plane;
  const tolerance = Math.max(6 * plane.rms, 0.001 * size);
  const near = (v: number): boolean => Math.abs(p[3 * v]! * nx + p[3 * v + 1]! * ny + p[3 * v + 2]! * nz - offset) <= tolerance;
  const corners = vertexCorners(mesh);
  const seen = new Uint8Array(triangleCount(mesh));
  const members: number[] = [];
  const front = Array.from(loop, (h) => triangles[h]!);
  const area = [0, 0, 0];
  while (front.length > 0) {
    const v = front.pop()!;
    for (let i = corners.start[v]!; i < corners.start[v + 1]!; i++) {
      const t = (corners.items[i]! - (corners.items[i]! % 3)) / 3;
      if (seen[t]) continue;
      seen[t] = 1;
      const [a, b, c] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!];
      if (!near(a) || !near(b) || !near(c)) continue;
      members.push(t);
      crossInto(area, p, a, b, c);
      front.push(a, b, c);
    }
  }
  const length = Math.sqrt(area[0]! ** 2 + area[1]! ** 2 + area[2]! ** 2);
  if (length === 0) return undefined;
  // the side the margin shows, which the loop's own turning sense does not tell
  const side = area[0]! * nx + area[1]! * ny + area[2]! * nz > 0 ? 1 : -1;
  return { triangles: members, normal: [side * nx, side * ny, side * nz], offset: side * offset, tolerance };
}

function isTable(mesh: Mesh, region: Region): boolean {
  const { positions: p, triangles } = mesh;
  const inside = new Uint8Array(triangleCount(mesh));
  for (const t of region.triangles) inside[t] = 1;
  const [nx, ny, nz] = region.normal;
  let above = 0;
  let below = 0;
  let own = 0;
  let all = 0;
  for (let t = 0; t < inside.length; t++) {
    const a = triangleArea(mesh, t);
    all += a;
    if (inside[t]) own += a;
    if (inside[t]) continue;
    const v = 3 * triangles[3 * t]!;
    const height = p[v]! * nx + p[v + 1]! * ny + p[v + 2]! * nz - region.offset;
    if (height > region.tolerance) above++;
    else if (height < -region.tolerance) below++;
  }
  return own > LEAST_SHARE * all && above > 0 && below < 0.02 * above;
}

/** Plane through the loop by its area vector (Newell), and how far its points lie from it. */
function planeOf({ positions: p, triangles }: Mesh, loop: Int32Array): { normal: readonly [number, number, number]; offset: number; rms: number } | undefined {
  const area = [0, 0, 0];
  const o = triangles[loop[0]!]!;
  for (let i = 0; i < loop.length; i++) crossInto(area, p, o, triangles[loop[i]!]!, triangles[loop[(i + 1) % loop.length]!]!);
  const length = Math.sqrt(area[0]! ** 2 + area[1]! ** 2 + area[2]! ** 2);
  if (length === 0) return undefined;
  const [nx, ny, nz] = [area[0]! / length, area[1]! / length, area[2]! / length];
  const heights = Array.from(loop, (h) => p[3 * triangles[h]!]! * nx + p[3 * triangles[h]! + 1]! * ny + p[3 * triangles[h]! + 2]! * nz);
  const offset = heights.reduce((a, b) => a + b, 0) / heights.length;
  const rms = Math.sqrt(heights.reduce((a, b) => a + (b - offset) ** 2, 0) / heights.length);
  return { normal: [nx, ny, nz], offset, rms };
}

/** Adds twice the area vector of triangle (a, b, c). */
function crossInto(out: number[], p: Float64Array, a: number, b: number, c: number): void {
  const ux = p[3 * b]! - p[3 * a]!, uy = p[3 * b + 1]! - p[3 * a + 1]!, uz = p[3 * b + 2]! - p[3 * a + 2]!;
  const vx = p[3 * c]! - p[3 * a]!, vy = p[3 * c + 1]! - p[3 * a + 1]!, vz = p[3 * c + 2]! - p[3 * a + 2]!;
  out[0]! += uy * vz - uz * vy;
  out[1]! += uz * vx - ux * vz;
  out[2]! += ux * vy - uy * vx;
}
