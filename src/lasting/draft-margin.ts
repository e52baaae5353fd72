import type { Draft } from "#pieces/draft-order.ts";
import type { LastingSettings } from "#pieces/rules/lasting.ts";

/** The lasting margin as it is cut at a draft, mm: drafts lie where the zones of the margin have their own numbers. */
export function marginCut({ place, half, onMm }: Draft, margins: LastingSettings): number {
  if (place === "toe") return onMm === undefined ? margins.lastingToeMm : margins.lastingToeSidesMm;
  if (place === "joint") return margins.lastingForepartMm;
  if (place === "waist") return half === "medial" ? margins.lastingInnerWaistMm : margins.lastingOuterWaistMm;
  return margins.lastingHeelMm;
}
