import { edgeLength, type Edge } from "../net-upper.ts";
import type { PieceSettings } from "../settings.ts";
import { widthsAlong } from "../zones.ts";

export type BackIn = Pick<PieceSettings, "liningBackInTopMm" | "liningBackInMiddleMm" | "liningBackInFeatherMm">;

/**
 * How far the lining's seam line lies inside the upper's at each point of a back edge: the parabola through the three values
 * at feather, middle and topline, so that the seam line gets no wave. `fromTop`: the edge runs down.
 */
export function backReduction(edge: Edge, settings: BackIn, fromTop: boolean): Float64Array {
  const length = edgeLength(edge);
  const { liningBackInFeatherMm: low, liningBackInMiddleMm: middle, liningBackInTopMm: top } = settings;
  return widthsAlong(edge.arc, (s) => {
    const t = (fromTop ? length - s : s) / length;
    return low * (1 - t) * (1 - 2 * t) + 4 * middle * t * (1 - t) + top * t * (2 * t - 1);
  });
}
