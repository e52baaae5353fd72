import type { Placement, Point3 } from "#last/last.ts";

/** A place on the last as the scan's own coordinates tell it: file = unitPerMm · (rotation · p + translationMm). */
export function toFile({ unitPerMm, rotation: r, translationMm: t }: Placement, p: readonly number[]): Point3 {
  const row = (k: number): number => unitPerMm * (r[3 * k]! * p[0]! + r[3 * k + 1]! * p[1]! + r[3 * k + 2]! * p[2]! + t[k]!);
  return [row(0), row(1), row(2)];
}

/** The way back: a place in the scan's own coordinates, in the last's frame, mm. */
export function toLast({ unitPerMm, rotation: r, translationMm: t }: Placement, f: readonly number[]): Point3 {
  const d = [0, 1, 2].map((k) => f[k]! / unitPerMm - t[k]!);
  const column = (k: number): number => r[k]! * d[0]! + r[3 + k]! * d[1]! + r[6 + k]! * d[2]!;
  return [column(0), column(1), column(2)];
}
