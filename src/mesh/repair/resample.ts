import type { Watch } from "#base/watch.ts";
import { BoxTree } from "#mesh/box-tree.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import { crossingTriangles } from "#mesh/crossings.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { vertexRings, type Groups } from "#mesh/neighbours.ts";
import { faceNormals } from "#mesh/normals.ts";
import { remesh } from "#mesh/remesh.ts";
import { Sight } from "#mesh/sight.ts";
import { partOfTriangle } from "#mesh/topology.ts";
import { keepTriangles, weld } from "#mesh/weld.ts";
import { Winding } from "#mesh/winding.ts";
import { faceOut } from "./face-out.ts";
import { fillHoles } from "./fill-holes.ts";
import { largestPart } from "./main-part.ts";
import { orientAlike } from "./orient.ts";
import { solidOf } from "./solid.ts";
import { surfaceNet, type Net } from "./surface-net.ts";
import { untangle } from "./untangle.ts";

/** Steps of the grid along the diagonal of the scan: 1.25 mm on a last; fewer for a scan of few triangles, which tells no more: three to an edge of an even one. */
const STEPS = 250;
const stepsFor = (triangles: number): number => Math.min(STEPS, Math.round(40 + 1.6 * Math.sqrt(triangles)));
/** The new surface must lie on the scan for at least this share; less is a guess. */
const COVERED = 0.7;
/** Edges of the new triangles against a step of the grid. */
const EDGE = 1.2;
/** Points nearer than this share of the scan's size are one. */
const POINT = 1e-5;
/** Holes whose middle is so many rings from their edge are opened and closed as any hole: 8 mm across on a last. */
const WIDE = 4;
/** On both sides of a triangle, this share of the scan's size off it, it is asked whether one is inside: 0.03 mm on a last. */
const OFF = 1e-4;

export interface Resampled {
  readonly mesh: Mesh;
  /** Share of the new surface that lies on the scan; the rest closes its holes. */
  readonly covered: number;
}

/**
 * Makes a scan anew as one closed surface, whatever it is: torn, in several skins, running through itself. Sheets are turned to look out,
 * the body is what they wind around, its skin is put back on to those triangles that part inside from outside, and cut up evenly.
 * Undefined when the triangles wind around nothing, or too little of the surface is there.
 */
export function resample(mesh: Mesh, size: number, watch: Watch): Resampled | undefined {
  watch("clean: made anew", 0);
  const { mesh: turned, sheet, sheetAreas } = orientAlike(mesh);
  const tree = new BoxTree(turned);
  const out = faceOut(turned, sheet, sheetAreas.length, size, new Sight(turned, tree));
  watch("clean: made anew", 0.15);
  const winding = new Winding(out, tree);
  const skin = outerSkin(out, winding, size);
  if (triangleCount(skin) === 0) return undefined;
  watch("clean: made anew", 0.3);
  const step = size / stepsFor(triangleCount(mesh));
  const solid = solidOf(skin, winding, step, (f) => watch("clean: made anew", 0.3 + 0.25 * f));
  const net = surfaceNet(solid, new ClosestPoint(skin), (f) => watch("clean: made anew", 0.55 + 0.2 * f));
  const { held } = net;
  const covered = held.reduce((a, b) => a + b, 0) / held.length;
  if (!(covered >= COVERED)) return undefined;
  watch("clean: made anew", 0.75);
  const closed = withHolesClosed(net);
  const even = remesh(closed, EDGE * step, (_, f) => watch("clean: made anew", 0.8 + 0.2 * f));
  // points that were put on to one place of the scan are one
  return { mesh: withHolesPlain(weld(even, POINT * size)), covered };
}

/**
 * The net with its vertices off the scan put right: where the scan has a wide hole, it is opened and closed as any hole is; in cracks and
 * pinholes the net itself is smoothed. The net stays as it is where opening would tear it.
 */
function withHolesClosed({ mesh, held }: Net): Mesh {
  const rings = vertexRings(mesh);
  const wide = wideHoles(rings, held);
  const smooth = smoothed(mesh, rings, held);
  if (!wide.includes(1)) return smooth;
  const opened = untangle(keepTriangles(smooth, (t) => [0, 1, 2].every((k) => wide[mesh.triangles[3 * t + k]!] === 0))).mesh;
  const one = largestPart(opened);
  if (triangleCount(one) < 0.98 * triangleCount(opened)) return smooth;
  const closed = fillHoles(one).mesh;
  return crossingTriangles(closed).count === 0 ? closed : smooth;
}

/** What joining points has torn, if it has, closed again. */
const withHolesPlain = (mesh: Mesh): Mesh => fillHoles(largestPart(untangle(mesh).mesh)).mesh;

/** Marks the vertices of those holes that reach WIDE rings and more from their edges. */
function wideHoles({ start, items }: Groups, held: Uint8Array): Uint8Array {
  const depth = Int32Array.from(held, (h) => (h ? 0 : -1));
  let front: number[] = [];
  held.forEach((h, v) => h && front.push(v));
  for (let d = 1; front.length > 0; d++) {
    const next: number[] = [];
    for (const v of front)
      for (let i = start[v]!; i < start[v + 1]!; i++)
        if (depth[items[i]!] === -1) {
          depth[items[i]!] = d;
          next.push(items[i]!);
        }
    front = next;
  }
  const wide = new Uint8Array(held.length);
  const spread: number[] = [];
  depth.forEach((d, v) => d >= WIDE && spread.push(v));
  for (const v of spread) wide[v] = 1;
  while (spread.length > 0) {
    const v = spread.pop()!;
    for (let i = start[v]!; i < start[v + 1]!; i++)
      if (held[items[i]!] === 0 && !wide[items[i]!]) {
        wide[items[i]!] = 1;
        spread.push(items[i]!);
      }
  }
  return wide;
}

/** Vertices off the scan drawn to the middle of their neighbours, again and again. */
function smoothed(mesh: Mesh, { start, items }: Groups, held: Uint8Array): Mesh {
  const p = mesh.positions.slice();
  for (let sweep = 0; sweep < 30; sweep++)
    for (let v = 0; v < held.length; v++) {
      if (held[v] || start[v] === start[v + 1]) continue;
      for (let k = 0; k < 3; k++) {
        let sum = 0;
        for (let i = start[v]!; i < start[v + 1]!; i++) sum += p[3 * items[i]! + k]!;
        p[3 * v + k] = sum / (start[v + 1]! - start[v]!);
      }
    }
  return { positions: p, triangles: mesh.triangles };
}

/** The triangles with the body on one side and the outside on the other: not those inside it, nor fins that have the outside on both sides. */
function outerSkin(mesh: Mesh, winding: Winding, size: number): Mesh {
  const { positions: p, triangles } = mesh;
  const normals = faceNormals(mesh);
  const inside = (t: number, side: number): boolean => {
    const at = (k: number): number => (p[3 * triangles[3 * t]! + k]! + p[3 * triangles[3 * t + 1]! + k]! + p[3 * triangles[3 * t + 2]! + k]!) / 3 + side * OFF * size * normals[3 * t + k]!;
    return winding.at(at(0), at(1), at(2)) > 0.5;
  };
  const outer = keepTriangles(mesh, (t) => !inside(t, 1) && inside(t, -1));
  return withoutBits(outer);
}

/** Leaves out parts of a few triangles: noise of the asking. */
function withoutBits(mesh: Mesh): Mesh {
  const { part, count } = partOfTriangle(mesh);
  const size = new Uint32Array(count);
  for (const p of part) size[p]!++;
  const least = Math.min(4, Math.max(...size.subarray(0, 1000)));
  return keepTriangles(mesh, (t) => size[part[t]!]! >= least);
}
