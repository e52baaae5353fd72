import type { Outline } from "#plane/outline.ts";

/** Where two outlines lie farthest apart. */
export interface Apart {
  readonly mm: number;
  /** On the second outline, or on the first where that lies out beyond; with the place nearest to it on the other. */
  readonly at: readonly [number, number];
  readonly from: readonly [number, number];
}

/**
 * The greatest distance of two closed outlines, mm: of every corner of one to the nearest place of the other, both ways (Hausdorff
 * distance of the corners; with corners every few mm and fair edges the places between them are no farther).
 */
export function greatestApart(a: Outline, b: Outline): Apart {
  const there = farthest(b.xy, a.xy);
  const back = farthest(a.xy, b.xy);
  return there.mm >= back.mm ? there : { mm: back.mm, at: back.from, from: back.at };
}

/** Of the corners of `of`, the one farthest from the closed line `to`. */
function farthest(of: Float64Array, to: Float64Array): Apart {
  let worst: Apart = { mm: 0, at: [of[0] ?? 0, of[1] ?? 0], from: [of[0] ?? 0, of[1] ?? 0] };
  for (let i = 0; i < of.length; i += 2) {
    const x = of[i]!, y = of[i + 1]!;
    const near = nearest(x, y, to, worst.mm);
    if (near && near.mm > worst.mm) worst = { mm: near.mm, at: [x, y], from: near.at };
  }
  return worst;
}

/** The nearest place of a closed line; nothing as soon as one is found that is nearer than `enough`. */
function nearest(x: number, y: number, to: Float64Array, enough: number): { readonly mm: number; readonly at: readonly [number, number] } | undefined {
  const n = to.length;
  let best = Infinity;
  let bestX = 0, bestY = 0;
  for (let j = 0; j < n; j += 2) {
    const ax = to[j]!, ay = to[j + 1]!;
    const k = (j + 2) % n;
    const dx = to[k]! - ax, dy = to[k + 1]! - ay;
    const size = dx * dx + dy * dy;
    const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / size));
    const px = ax + t * dx, py = ay + t * dy;
    const d = (x - px) * (x - px) + (y - py) * (y - py);
    if (d >= best) continue;
    best = d;
    bestX = px;
    bestY = py;
    if (best < enough * enough) return undefined;
  }
  return { mm: Math.sqrt(best), at: [bestX, bestY] };
}
