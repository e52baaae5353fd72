import { breastShare } from "#last/heel-breast.ts";
import type { Last, SurfaceCurve } from "#last/last.ts";
import { arcNearest, curveLength } from "#last/surface-curve.ts";
import { footAtX, type Half } from "#lines/feather.ts";
import type { Draft } from "#pieces/draft-order.ts";

/** The half that a draft is taken in, toe corners told by which way they lie from the toe; toe centre and back have none. */
export const draftHalf = ({ half, onMm }: Pick<Draft, "half" | "onMm">): Half | undefined => half ?? (onMm === undefined ? undefined : onMm < 0 ? "lateral" : "medial");

/** Where a draft is taken: running length of that half of the feather line (seat → toe) from the seat point, mm. The waist lies half-way between joint and heel breast. */
export function draftAlong({ place, onMm = 0 }: Draft, half: Half, feather: SurfaceCurve, { landmarks }: Pick<Last, "landmarks">): number {
  const end = curveLength(feather);
  if (place === "seat") return 0;
  if (place === "toe") return Math.max(0, end - Math.abs(onMm));
  const joint = arcNearest(feather, half === "medial" ? landmarks.jointMedial : landmarks.jointLateral);
  if (place === "joint") return joint;
  const seatX = feather.points[0]!, toeX = feather.points[feather.points.length - 3]!;
  const breast = footAtX(feather, seatX + breastShare * (toeX - seatX))?.along ?? 0;
  return place === "breast" ? breast : (joint + breast) / 2;
}
