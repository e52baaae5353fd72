import type { Last, Point3 } from "#last/last.ts";
import { pointOn } from "#last/surface-curve.ts";
import { featherHalf, type Half } from "#lines/feather.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import type { LastingSettings } from "#pieces/rules/lasting.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { draftAlong, draftHalf } from "./draft-place.ts";
import { marginCut } from "./draft-margin.ts";
import type { Lasted } from "./lasted.ts";

/** Settings of the pieces that say how much is lasted under. */
export type MarginSettings = LastingSettings & Pick<PieceSettings, "liningLastingShorterMm">;

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
    const half = draftHalf(draft);
    const on = feather[half ?? "medial"];
    const alongMm = draftAlong(draft, half ?? "medial", on, last);
    const upperMm = marginCut(draft, settings);
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
