import type { Polyline } from "#plane/outline.ts";
import { acrossAt } from "../marks.ts";
import { squareAt, straight, bowed } from "./bottom-lines.ts";
import type { NetBottom } from "./net-bottom.ts";

/** The heel's breast, straight: square to the line seat-waist, where the heel's length ends. */
export const heelBreast = (net: NetBottom): Polyline => straight(squareAt(net, net.breastX));

/** The same with its hollow: the middle lies behind the corners. */
export function hollowBreast(net: NetBottom, hollowMm: number): Polyline {
  return bowed(squareAt(net, net.breastX), -hollowMm, breadthAt(net, net.breastX));
}

/** How broad the bottom is at an x, mm. */
export function breadthAt(net: NetBottom, x: number): number {
  const across = acrossAt(net.outline, x);
  return across ? across[1][1] - across[0][1] : 0;
}
