import { breastShare } from "#last/heel-breast.ts";
import type { Last, Point3, SurfaceCurve } from "#last/last.ts";
import { arcNearest, curveLength, pointOn } from "#last/surface-curve.ts";
import { featherHalf, footAtX, type Half } from "#lines/feather.ts";
import { draftOrder, type Draft } from "#pieces/draft-order.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Lasted } from "./lasted.ts";

/** Settings of the pieces that say how much is lasted under. */
export type MarginSettings = Pick<PieceSettings, "lastingToeMm" | "lastingToeSidesMm" | "lastingForepartMm" | "lastingOuterWaistMm" | "lastingInnerWaistMm" | "lastingHeelMm" | "liningLastingShorterMm">;

/** One draft: where it is taken and how much margin must show inside the feather line there when the upper is at its marks, mm. */
export interface DraftGauge {
  readonly number: number;
  readonly name: string;
  /** Toe centre and back have none. */
  readonly half?: Half;
  readonly at: Point3;
  /** Running length from the seat point along its half; along the inner one where it has none. */
  readonly alongMm: number;
  readonly upperMm: number;
  readonly liningMm: number;
  /** Upper's margin as it was foretold, and how hard the pull is, in words. */
  readonly foretold?: { readonly marginMm: number; readonly word: string };
}

/**
 * Every draft with the margin of the pieces at its place. At its marks an upper's net edge lies on the feather line, and the lining's own
 * feather line too, so what shows inside it is what was added there: the margins change between the drafts, at each it is a number of its own.
 */
export function draftGauges(last: Last, settings: MarginSettings, lasted?: Lasted): readonly DraftGauge[] {
  const feather = { medial: featherHalf(last.feather, "medial"), lateral: featherHalf(last.feather, "lateral") };
  return draftOrder.map((draft): DraftGauge => {
    const half = halfOf(draft);
    const on = feather[half ?? "medial"];
    const alongMm = alongOf(draft, half ?? "medial", on, last);
    const upperMm = marginOf(draft, settings);
    const end = lasted?.drafts.find(({ number }) => number === draft.number);
    return {
      number: draft.number,
      name: draft.name,
      ...(half && { half }),
      at: pointOn(on, alongMm),
      alongMm,
      upperMm,
      liningMm: upperMm - settings.liningLastingShorterMm,
      ...(end && { foretold: { marginMm: end.marginMm, word: end.word } }),
    };
  });
}

/** Toe corners are told by which way they lie from the toe. */
const halfOf = ({ half, onMm }: Draft): Half | undefined => half ?? (onMm === undefined ? undefined : onMm < 0 ? "lateral" : "medial");

function alongOf({ place, onMm = 0 }: Draft, half: Half, feather: SurfaceCurve, { landmarks }: Last): number {
  const end = curveLength(feather);
  if (place === "seat") return 0;
  if (place === "toe") return Math.max(0, end - Math.abs(onMm));
  const joint = arcNearest(feather, half === "medial" ? landmarks.jointMedial : landmarks.jointLateral);
  if (place === "joint") return joint;
  const seatX = feather.points[0]!, toeX = feather.points[feather.points.length - 3]!;
  const breast = footAtX(feather, seatX + breastShare * (toeX - seatX))?.along ?? 0;
  return place === "breast" ? breast : (joint + breast) / 2;
}

function marginOf({ place, onMm, half }: Draft, s: MarginSettings): number {
  if (place === "toe") return onMm === undefined ? s.lastingToeMm : s.lastingToeSidesMm;
  if (place === "waist") return half === "medial" ? s.lastingInnerWaistMm : s.lastingOuterWaistMm;
  return place === "joint" ? s.lastingForepartMm : s.lastingHeelMm;
}
