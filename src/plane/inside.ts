import { orient2d } from "robust-predicates";
import type { Outline } from "./outline.ts";

/**
 * Whether a point lies in an outline of either winding; a point on the line counts as inside. Winding number with exact
 * orientation signs (Shewchuk's adaptive predicates), so the answer does not depend on rounding.
 */
export function contains({ xy }: Outline, x: number, y: number): boolean {
  let turns = 0;
  for (let i = 0, j = xy.length - 2; i < xy.length; j = i, i += 2) {
    const ax = xy[j]!;
    const ay = xy[j + 1]!;
    const bx = xy[i]!;
    const by = xy[i + 1]!;
    if (y < Math.min(ay, by) || y > Math.max(ay, by)) continue;
    const side = orient2d(ax, ay, bx, by, x, y);
    if (side === 0 && x >= Math.min(ax, bx) && x <= Math.max(ax, bx)) return true;
    // orient2d is negative where the point lies to the left, in a plane whose y points up.
    if (ay <= y && by > y && side < 0) turns++;
    else if (ay > y && by <= y && side > 0) turns--;
  }
  return turns !== 0;
}
