import { edgeLength, type NetUpper } from "../net-upper.ts";
import type { Strip } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";

/** The tape over the back seam of a lining in one piece. */
export function seamTapes({ backMedial }: NetUpper, { seamTapeMm, stripEndsMm }: Pick<PieceSettings, "seamTapeMm" | "stripEndsMm">): readonly Strip[] {
  return [{ name: "seam tape of the lining", material: "tape", widthMm: seamTapeMm, lengthMm: edgeLength(backMedial) + 2 * stripEndsMm, perPair: 2, where: "over the lining's back seam, on its flesh side" }];
}
