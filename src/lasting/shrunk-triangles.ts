import { must } from "#base/bug.ts";
import { descend, settled } from "#flatten/descent.ts";
import { Dirichlet } from "#flatten/dirichlet.ts";
import { diskOf } from "#flatten/disk.ts";
import { framesOf } from "#flatten/frames.ts";
import type { LengthTerms } from "#flatten/length-terms.ts";
import { NewtonSystem } from "#flatten/newton-system.ts";
import { middlePins } from "#flatten/pins.ts";
import { placeInto } from "#flatten/rigid.ts";
import { adjacencyOf } from "#solve/adjacency.ts";

/** Edges of a flat sheet that come to a share of their length, and how firmly for each mm. */
export interface SharedEdges {
  readonly a: Uint32Array;
  readonly b: Uint32Array;
  readonly share: Float64Array;
  readonly perMm: number;
}

/** A step of this is good enough, mm. */
const toleranceMm = 0.002;
const mostSteps = 60;

/**
 * Lays a flat sheet anew whose triangles are each stretched by a symmetric U (U₁₁ U₂₂ U₁₂ a triangle, in the sheet's own axes): they
 * cannot all have their shape at once, so with least stretch from it, by the kernel that lays shells flat.
 * @returns x0 y0 … where nothing is said about where it lies; undefined where it does not come to rest
 */
export function layShrunk(uv: Float64Array, given: Uint32Array, stretch: Float64Array, edges: SharedEdges): Float64Array | undefined {
  const disk = diskOf(uv.length / 2, given), { triangles, turned } = disk;
  // One triangle after the other, with corners of its own: framesOf sees each by itself.
  const corners = new Float64Array(3 * triangles.length);
  for (let k = 0, t = 0; k < triangles.length; k += 3, t++) {
    const [u11, u22, u12] = [stretch[3 * t]!, stretch[3 * t + 1]!, stretch[3 * t + 2]!];
    for (let c = 0; c < 3; c++) {
      const x = uv[2 * triangles[k + c]!]!, y = uv[2 * triangles[k + c]! + 1]!;
      corners[3 * (k + c)] = u11 * x + u12 * y;
      corners[3 * (k + c) + 1] = u12 * x + u22 * y;
    }
  }
  const frames = framesOf(corners, Uint32Array.from(triangles.keys()));
  const start = turned ? uv.map((x, i) => (i % 2 === 1 ? 0 - x : x)) : uv.slice();
  const { pattern } = disk, [a, b] = middlePins(adjacencyOf(disk.vertices, pattern.low, pattern.high), disk.rim);
  const lengths = lengthsOf(edges, uv);
  for (let k = 0; k < lengths.a.length; k++) pattern.slot(lengths.a[k]!, lengths.b[k]!);
  placeInto(start, a, b);
  const system = new NewtonSystem(pattern);
  system.hold([2 * a, 2 * a + 1, 2 * b + 1]);
  const found = descend({ triangles, dirichlet: new Dirichlet(disk), system, frames, lengths }, start, { begin: "true", toleranceMm, mostSteps }, () => {});
  if (!settled(found.steps, toleranceMm)) return undefined;
  return turned ? found.uv.map((x, i) => (i % 2 === 1 ? 0 - x : x)) : found.uv;
}

function lengthsOf({ a, b, share, perMm }: SharedEdges, uv: Float64Array): LengthTerms {
  const mm = Float64Array.from(a, (v, k) => Math.sqrt((uv[2 * v]! - uv[2 * b[k]!]!) ** 2 + (uv[2 * v + 1]! - uv[2 * b[k]! + 1]!) ** 2));
  must(mm.every((length) => length > 0), "an edge of a flat sheet has a length");
  return { a, b, target: mm.map((length, k) => length * share[k]!), stiffness: mm.map((length) => perMm / length) };
}
