import { edgeLength, edgePoint, type NetUpper } from "../net-upper.ts";
import type { PieceSettings } from "../settings.ts";

/** The lining laid flat by itself from the last's own surface. */
export interface OwnLining {
  readonly net: NetUpper;
  /** By how much the upper over it is longer round the heel, level at half the back's height, mm a half. */
  readonly heelLongerMm: number;
}

const half = (a: number, b: number): number => (a + b) / 2;

/** From the back to the lowest place along the topline, mean of both halves, mm. */
export const toLowest = ({ topline, places }: NetUpper): number => half(places.lowestMedial, edgeLength(topline) - places.lowestLateral);
/** From the seat to the heel breast along the feather line, mean of both halves, mm. */
export const toBreast = ({ feather, places }: NetUpper): number => half(edgeLength(feather) - places.breastMedial, places.breastLateral);
/** From the throat to the toe point, mm. */
export const alongCentre = ({ feather, topline, places }: NetUpper): number => edgePoint(feather, places.toe)[0] - edgePoint(topline, places.throat)[0];

/** The settings with what the lining is smaller by already taken off. */
export function lackingOf(asked: PieceSettings, upper: NetUpper, { net, heelLongerMm }: OwnLining): PieceSettings {
  const lacks = (mm: number, has: number): number => Math.max(0, mm - has);
  return {
    ...asked,
    liningBackInTopMm: lacks(asked.liningBackInTopMm, toLowest(upper) - toLowest(net)),
    liningBackInMiddleMm: lacks(asked.liningBackInMiddleMm, heelLongerMm),
    liningBackInFeatherMm: lacks(asked.liningBackInFeatherMm, toBreast(upper) - toBreast(net)),
    liningToeInMm: lacks(asked.liningToeInMm, alongCentre(upper) - alongCentre(net)),
  };
}
