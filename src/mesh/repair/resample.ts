import type { Watch } from "#base/watch.ts";
import { BoxTree } from "#mesh/box-tree.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { faceNormals } from "#mesh/normals.ts";
import { remesh } from "#mesh/remesh.ts";
import { Sight } from "#mesh/sight.ts";
import { partOfTriangle } from "#mesh/topology.ts";
import { keepTriangles } from "#mesh/weld.ts";
import { Winding } from "#mesh/winding.ts";
import { faceOut } from "./face-out.ts";
import { fillHoles } from "./fill-holes.ts";
import { largestPart } from "./main-part.ts";
import { orientAlike } from "./orient.ts";
import { solidOf } from "./solid.ts";
import { surfaceNet } from "./surface-net.ts";
import { untangle } from "./untangle.ts";

/** Steps of the grid along the diagonal of the scan: 1.25 mm on a last; fewer for a scan of few triangles, which tells no more. */
const STEPS = 250;
const stepsFor = (triangles: number): number => Math.min(STEPS, Math.round(40 + 6 * Math.sqrt(triangles)));
/** The new surface must lie on the scan for at least this share; less is a guess. */
const COVERED = 0.6;
/** Edges of the new triangles against a step of the grid. */
const EDGE = 1.2;
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
  const solid = solidOf(skin, winding, step);
  watch("clean: made anew", 0.55);
  const net = surfaceNet(solid, new ClosestPoint(skin));
  const { held } = net;
  const covered = held.reduce((a, b) => a + b, 0) / held.length;
  if (!(covered >= COVERED)) return undefined;
  watch("clean: made anew", 0.75);
  const onScan = keepTriangles(net.mesh, (t) => [0, 1, 2].every((k) => held[net.mesh.triangles[3 * t + k]!] === 1));
  const closed = triangleCount(onScan) === 0 ? net.mesh : fillHoles(largestPart(untangle(onScan).mesh)).mesh;
  const even = remesh(closed, EDGE * step, (_, f) => watch("clean: made anew", 0.8 + 0.2 * f));
  return { mesh: even, covered };
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
