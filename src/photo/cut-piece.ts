import { largestLoop, loopsAt, type Loop } from "./contour.ts";
import type { FlatPicture } from "./flatten-picture.ts";
import { groundAt, type Ground } from "./ground.ts";
import { above, depthOf, distanceFrom, filled, type Cutting } from "./masks.ts";
import { tidyShareInto } from "./tidy-share.ts";

/** The colour of a piece is taken from its inside, at least this far from its edge, and within this reach, mm. */
const insideMm = 1;
const reachMm = 3;
/** Farther out than this all is ground. */
const strayMm = 1;

export interface PieceEdge {
  /** In cells of the flat picture. */
  readonly loop: Loop;
  /** How far the piece's colour is from the ground's along the loop, in standard deviations of a cell, one per point. */
  readonly contrast: Float32Array;
}

/**
 * The edge of a piece of one colour or of slowly changing ones: where a cell is half piece and half ground. The colours on
 * both sides are known near every place (the ground from all around, the piece from its own inside), and a cell's share of
 * piece is where its colour lies on the line between the two, each colour weighed by how surely it is seen. The outermost
 * loop counts: marks drawn on the piece make loops of their own inside.
 */
export function edgeOfPiece(flat: FlatPicture, ground: Ground, cutting: Cutting): PieceEdge | undefined {
  const { width, height } = cutting;
  const whole = filled(cutting);
  const depth = depthOf(whole);
  const out = distanceFrom(whole);
  const inner = above(depth, insideMm / flat.stepMm);
  if (!inner.includes(1)) return undefined;
  const colour = nearMeans(flat, cutting, inner);
  const share = new Float32Array(width * height);
  const contrast = new Float32Array(width * height);
  const size = flat.width * flat.height;
  for (let j = 0; j < height; j++) for (let i = 0; i < width; i++) {
    const k = j * width + i;
    if (out[k]! * flat.stepMm > strayMm) continue;
    const fi = i + cutting.fromI, fj = j + cutting.fromJ;
    if (fi < 0 || fj < 0 || fi >= flat.width || fj >= flat.height) continue;
    let along = 0, across = 0;
    for (let c = 0; c < 3; c++) {
      const under = groundAt(ground, c, fi, fj);
      const step = (colour[c]![k]! - under) / ground.grain[c]!;
      along += (step * (flat.light[c * size + fj * flat.width + fi]! - under)) / ground.grain[c]!;
      across += step * step;
    }
    contrast[k] = Math.sqrt(across);
    share[k] = Math.max(-0.5, Math.min(1.5, along / across));
  }
  tidyShareInto(share, width, height, flat.stepMm);
  const loop = largestLoop(loopsAt(share, width, height, 0.5));
  if (!loop) return undefined;
  const seen = Float32Array.from({ length: loop.length / 2 }, (_, n) => contrast[Math.round(loop[2 * n + 1]!) * width + Math.round(loop[2 * n]!)]!);
  return { loop: loop.map((v, n) => v + (n % 2 === 0 ? cutting.fromI : cutting.fromJ)), contrast: seen };
}

/** Mean colour of the inner cells within the reach of each cell; of all inner cells where there is none near. Sums over boxes. */
function nearMeans(flat: FlatPicture, { width, height, fromI, fromJ }: Cutting, inner: Uint8Array): readonly Float32Array[] {
  const reach = Math.round(reachMm / flat.stepMm);
  const wide = width + 1;
  const sums = (value: (k: number, at: number) => number): Float64Array => {
    const table = new Float64Array(wide * (height + 1));
    for (let j = 0; j < height; j++) for (let i = 0, row = 0; i < width; i++) {
      const k = j * width + i;
      if (inner[k] === 1) row += value(k, (j + fromJ) * flat.width + i + fromI);
      table[(j + 1) * wide + i + 1] = table[j * wide + i + 1]! + row;
    }
    return table;
  };
  const box = (table: Float64Array, i: number, j: number, r: number): number => {
    const i0 = Math.max(0, i - r), i1 = Math.min(width, i + r + 1), j0 = Math.max(0, j - r), j1 = Math.min(height, j + r + 1);
    return table[j1 * wide + i1]! - table[j0 * wide + i1]! - table[j1 * wide + i0]! + table[j0 * wide + i0]!;
  };
  const count = sums(() => 1);
  const size = flat.width * flat.height;
  return [0, 1, 2].map((c) => {
    const table = sums((_, at) => flat.light[c * size + at]!);
    const all = table[table.length - 1]! / count[count.length - 1]!;
    const means = new Float32Array(width * height);
    for (let j = 0; j < height; j++) for (let i = 0; i < width; i++) {
      const n = box(count, i, j, reach);
      means[j * width + i] = n >= 4 ? box(table, i, j, reach) / n : all;
    }
    return means;
  });
}
