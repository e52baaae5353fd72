import type { Point3 } from "./last.ts";

export const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const add = (a: Point3, b: Point3): Point3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Point3, k: number): Point3 => [a[0] * k, a[1] * k, a[2] * k];
export const mix = (a: Point3, b: Point3, t: number): Point3 => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
export const norm = (a: Point3): number => Math.sqrt(dot(a, a));
export const distance = (a: Point3, b: Point3): number => norm(sub(a, b));

export function cross(a: Point3, b: Point3): Point3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** Unit vector; a zero vector stays zero. */
export function unit(a: Point3): Point3 {
  const n = norm(a);
  return n > 0 ? scale(a, 1 / n) : a;
}

/** Point i of a flat x y z … array. */
export function pointAt(points: Float64Array, i: number): Point3 {
  return [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!];
}
