import type { FeatherLine, Last, Point3, SurfaceCurve } from "#last/last.ts";
import { pointAtIndex } from "#last/closed-curve.ts";
import { curveOf } from "#last/surface-curve.ts";

export type Half = "medial" | "lateral";
export const halves: readonly Half[] = ["medial", "lateral"];

/** One half of the feather line, from seat point to toe point; the toe point may lie between two of the line's points. */
export function featherHalf({ points: p, toeIndex }: FeatherLine, half: Half): SurfaceCurve {
  const n = p.length / 3;
  const out: number[] = [];
  const put = (i: number) => out.push(p[3 * i]!, p[3 * i + 1]!, p[3 * i + 2]!);
  if (half === "medial") for (let i = 0; i < toeIndex; i++) put(i);
  else {
    put(0);
    for (let i = n - 1; i > toeIndex; i--) put(i);
  }
  out.push(...pointAtIndex(p, toeIndex));
  return curveOf(out);
}

/** +1 when the half lies on +y, −1 when on −y. */
export function halfSign(last: Last, half: Half): 1 | -1 {
  return (last.side === "right") === (half === "medial") ? 1 : -1;
}

/** The point of a feather half at a given x; the first such from the heel. Undefined where the half does not reach it. */
export function footAtX({ points: p, arc }: SurfaceCurve, x: number): { readonly foot: Point3; readonly along: number } | undefined {
  for (let i = 0; i + 1 < arc.length; i++) {
    const a = 3 * i, b = a + 3;
    if (p[a]! <= x && p[b]! >= x && p[b]! > p[a]!) {
      const t = (x - p[a]!) / (p[b]! - p[a]!);
      return {
        foot: [x, p[a + 1]! + t * (p[b + 1]! - p[a + 1]!), p[a + 2]! + t * (p[b + 2]! - p[a + 2]!)],
        along: arc[i]! + t * (arc[i + 1]! - arc[i]!),
      };
    }
  }
  return undefined;
}
