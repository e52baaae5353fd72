import type { NetPanel } from "../panel.ts";
import type { PieceSettings } from "../settings.ts";
import { widthsAlong } from "../zones.ts";
import { cutNet, evenAllowance, type Allowance } from "../edges/allowance.ts";

/** Widths along the feather line of a panel: of the lasting margin, and of what the feather line itself is taken in by. */
export interface Lasting {
  readonly marginMm: (s: number) => number;
  readonly takenInMm: (s: number) => number;
}

/**
 * What is added to a lining's edges. The joint's edge of the front piece lies under the rear one's by the lap, from which it is skived;
 * the rear one is cut net and skived a little, since it is seen. At the topline the lining stands up to be trimmed, or is sewn to the upper
 * and turned.
 */
export function liningAllowances({ edges }: NetPanel, { marginMm, takenInMm }: Lasting, settings: PieceSettings, bagged: boolean, laps: (seam: string) => boolean): readonly Allowance[] {
  const { liningTrimMm, toplineBagMm, liningLapMm, skiveRawMm } = settings;
  return edges.map((edge): Allowance => {
    switch (edge.role) {
      case "feather":
        return { finish: "lasting", widths: widthsAlong(edge.arc, marginMm), at: widthsAlong(edge.arc, (s) => -takenInMm(s)) };
      case "topline":
        return bagged ? evenAllowance(edge, "bag", toplineBagMm) : evenAllowance(edge, "trim", liningTrimMm);
      default:
        return laps(edge.seam ?? "") ? evenAllowance(edge, "lap", liningLapMm) : cutNet(edge, skiveRawMm);
    }
  });
}

/** How a label speaks of the topline. */
export const topWords = (bagged: boolean): string => (bagged ? "seam at the topline," : "trim at the topline,");
