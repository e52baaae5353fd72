import type { Sheet } from "./sheet.ts";

/** Values of the points, `each` numbers a point, as values of the vertices. */
export const ofVertices = ({ pointOf }: Pick<Sheet, "pointOf">, values: Float64Array, each: number): Float64Array =>
  Float64Array.from({ length: each * pointOf.length }, (_, k) => values[each * pointOf[Math.floor(k / each)]! + (k % each)]!);

/** Positions of the points, x y z; vertices that are joined meet half way. */
export function pointsAt({ pointOf, points }: Pick<Sheet, "pointOf" | "points">, start: Float64Array): Float64Array {
  const x = new Float64Array(3 * points), count = new Uint32Array(points);
  pointOf.forEach((p, v) => {
    count[p]!++;
    for (let d = 0; d < 3; d++) x[3 * p + d]! += start[3 * v + d]!;
  });
  return x.map((sum, k) => sum / count[Math.floor(k / 3)]!);
}
