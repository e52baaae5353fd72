import type { Mesh } from "#mesh/mesh.ts";
import { gridMesh } from "./formula-surfaces.ts";

/** A sheet with its places in the flat and in space. */
export interface FormedSheet {
  readonly mesh: Mesh;
  readonly flat: Float64Array;
}

export interface Grid {
  readonly columns: number;
  readonly rows: number;
}

/** Strip rolled on an upright cylinder from angle 0 to `angle`, `lift` outside it; its flat has the true arc lengths. Outside faces out. */
export function rolledStrip({ radius, angle, height, lift = 0 }: { radius: number; angle: number; height: number; lift?: number }, { columns, rows }: Grid): FormedSheet {
  const at = radius + lift;
  return {
    mesh: gridMesh((s, t) => [at * Math.cos(s * angle), at * Math.sin(s * angle), height * t], columns, rows),
    flat: flatGrid((s, t) => [radius * angle * s, height * t], { columns, rows }),
  };
}

/** Places x y of a regular grid, in the order of gridMesh. */
export function flatGrid(place: (s: number, t: number) => readonly [number, number], { columns, rows }: Grid): Float64Array {
  const out: number[] = [];
  for (let r = 0; r <= rows; r++) for (let c = 0; c <= columns; c++) out.push(...place(c / columns, r / rows));
  return Float64Array.from(out);
}

/** First and last vertex of every row of a grid, as pairs. */
export const rowEnds = ({ columns, rows }: Grid): Uint32Array => Uint32Array.from({ length: 2 * (rows + 1) }, (_, k) => Math.floor(k / 2) * (columns + 1) + (k % 2) * columns);

/** Upright cylinder, finely cut. */
export const cylinder = (radius: number, low: number, high: number): Mesh =>
  gridMesh((s, t) => [radius * Math.cos(2 * Math.PI * s), radius * Math.sin(2 * Math.PI * s), low + (high - low) * t], 720, 8);

export const largest = (values: ArrayLike<number>): number => Array.from(values).reduce((a, b) => Math.max(a, Math.abs(b)), 0);
