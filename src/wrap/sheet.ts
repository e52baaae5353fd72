import { must } from "#base/bug.ts";
import { neighbours, nextCorner, previousCorner } from "#mesh/neighbours.ts";

/** A sheet that lay flat: its triangles, the place of every vertex while it lies flat, and how it is joined and held. */
export interface SheetInput {
  /** a0 b0 c0 … counter-clockwise seen from the side that faces outward, in the flat as in space. */
  readonly triangles: Uint32Array;
  /** x0 y0 x1 y1 … mm, one pair a vertex. */
  readonly flat: Float64Array;
  /** Vertices taped together, a0 b0 a1 b1 …: both lie in one place in space, wherever they lie in the flat. */
  readonly taped?: Uint32Array;
  /** Vertices that stay where they start. */
  readonly held?: Uint32Array;
  /** Vertices that may only move square to a direction, as along a line drawn on the ground: a unit vector x y z each. A vertex may be named twice. */
  readonly guided?: { readonly vertices: Uint32Array; readonly across: Float64Array };
  /**
   * Share of the stiffness with which each triangle resists being pushed together, 1 for a whole sheet. Less where the sheet is cut
   * into tongues that slide over one another.
   */
  readonly pushed?: Float64Array;
}

/**
 * A sheet made ready: taped vertices are one point, and the three unknowns of every point that is free follow each other.
 */
export interface Sheet {
  /** Point of each vertex. */
  readonly pointOf: Uint32Array;
  readonly points: number;
  /** First of the three unknowns of each point, −1 for one that is held. */
  readonly unknown: Int32Array;
  readonly unknowns: number;
  /** Points of each triangle. */
  readonly corners: Uint32Array;
  /** Four numbers a triangle: gradients (gx, gy) and (0, hy) of the second and third corner's weights in a plane of its own, area. */
  readonly frames: Float64Array;
  readonly pushed: Float64Array;
  /** Four points a hinge: its edge's ends, then the two points opposite. */
  readonly hinges: Uint32Array;
  /** Four weights a hinge, √(1/(A+A′)) times the cotangent differences: its bending is the square of Σ weight · position. */
  readonly folds: Float64Array;
  /** Points that are guided and the directions they may not move in. */
  readonly guided: { readonly points: Uint32Array; readonly across: Float64Array };
  /** mm² of flat sheet round each point, a third of each of its triangles. */
  readonly areas: Float64Array;
}

export function sheetOf({ triangles, flat, taped, held, guided, pushed }: SheetInput): Sheet {
  const vertices = flat.length / 2;
  const { pointOf, points } = joined(vertices, taped);
  const corners = triangles.map((v) => pointOf[v]!);
  const unknown = new Int32Array(points);
  for (const v of held ?? []) unknown[pointOf[v]!] = -1;
  let unknowns = 0;
  for (let p = 0; p < points; p++) {
    if (unknown[p]! < 0) continue;
    unknown[p] = unknowns;
    unknowns += 3;
  }
  const count = triangles.length / 3;
  must(pushed === undefined || pushed.length === count, "one share a triangle");
  const frames = framesOf(triangles, flat);
  const areas = new Float64Array(points);
  for (let k = 0; k < corners.length; k++) areas[corners[k]!]! += frames[4 * ((k - (k % 3)) / 3) + 3]! / 3;
  const guides = { points: Uint32Array.from(guided?.vertices ?? [], (v) => pointOf[v]!), across: guided?.across ?? new Float64Array(0) };
  return { pointOf, points, unknown, unknowns, corners, frames, pushed: pushed ?? new Float64Array(count).fill(1), areas, guided: guides, ...hingesOf(triangles, flat, pointOf) };
}

function joined(vertices: number, taped: Uint32Array = new Uint32Array(0)): { pointOf: Uint32Array; points: number } {
  const root = Uint32Array.from({ length: vertices }, (_, v) => v);
  const find = (v: number): number => {
    while (root[v] !== v) v = root[v]!;
    return v;
  };
  for (let k = 0; k < taped.length; k += 2) {
    const a = find(taped[k]!), b = find(taped[k + 1]!);
    root[Math.max(a, b)] = Math.min(a, b);
  }
  const pointOf = new Uint32Array(vertices);
  let points = 0;
  for (let v = 0; v < vertices; v++) pointOf[v] = root[v] === v ? points++ : pointOf[find(v)]!;
  return { pointOf, points };
}

/** Every flat triangle in a plane of its own, corner 0 at the origin and corner 1 on the first axis. */
function framesOf(triangles: Uint32Array, flat: Float64Array): Float64Array {
  const frames = new Float64Array((4 * triangles.length) / 3);
  for (let k = 0, f = 0; k < triangles.length; k += 3, f += 4) {
    const a = 2 * triangles[k]!, b = 2 * triangles[k + 1]!, c = 2 * triangles[k + 2]!;
    const px = flat[b]! - flat[a]!, py = flat[b + 1]! - flat[a + 1]!, qx = flat[c]! - flat[a]!, qy = flat[c + 1]! - flat[a + 1]!;
    const x1 = Math.sqrt(px * px + py * py);
    const x2 = (px * qx + py * qy) / x1, y2 = Math.abs(px * qy - py * qx) / x1;
    must(x1 > 0 && y2 > 0, "a triangle of the flat sheet has no area");
    frames[f] = 1 / x1;
    frames[f + 1] = -x2 / (x1 * y2);
    frames[f + 2] = 1 / y2;
    frames[f + 3] = 0.5 * x1 * y2;
  }
  return frames;
}

/** Hinges at the edges inside the flat sheet; a taped seam bends freely. */
function hingesOf(triangles: Uint32Array, flat: Float64Array, pointOf: Uint32Array): Pick<Sheet, "hinges" | "folds"> {
  const { twin } = neighbours({ positions: new Float64Array((flat.length / 2) * 3), triangles });
  const hinges: number[] = [], folds: number[] = [];
  for (let h = 0; h < twin.length; h++) {
    const other = twin[h]!;
    if (other < h) continue;
    const a = triangles[h]!, b = triangles[nextCorner(h)]!, c = triangles[previousCorner(h)]!, d = triangles[previousCorner(other)]!;
    const at = cot(flat, a, b, c), bt = cot(flat, b, a, c), au = cot(flat, a, b, d), bu = cot(flat, b, a, d);
    const scale = Math.sqrt(1 / (area(flat, a, b, c) + area(flat, a, b, d)));
    hinges.push(pointOf[a]!, pointOf[b]!, pointOf[c]!, pointOf[d]!);
    folds.push(scale * (bt + bu), scale * (at + au), -scale * (at + bt), -scale * (au + bu));
  }
  return { hinges: Uint32Array.from(hinges), folds: Float64Array.from(folds) };
}

/** Cotangent of the angle at `at` between the ways to `to` and `across`. */
function cot(flat: Float64Array, at: number, to: number, across: number): number {
  const ux = flat[2 * to]! - flat[2 * at]!, uy = flat[2 * to + 1]! - flat[2 * at + 1]!;
  const vx = flat[2 * across]! - flat[2 * at]!, vy = flat[2 * across + 1]! - flat[2 * at + 1]!;
  return (ux * vx + uy * vy) / Math.abs(ux * vy - uy * vx);
}

function area(flat: Float64Array, a: number, b: number, c: number): number {
  const ux = flat[2 * b]! - flat[2 * a]!, uy = flat[2 * b + 1]! - flat[2 * a + 1]!;
  const vx = flat[2 * c]! - flat[2 * a]!, vy = flat[2 * c + 1]! - flat[2 * a + 1]!;
  return 0.5 * Math.abs(ux * vy - uy * vx);
}
