import type { EndName } from "./log.ts";

/** What one more newton at a draft does, mm: to where the topline ends, and to the edge that comes over the feather line. */
export interface DraftEffect {
  readonly draft: number;
  readonly perN: Readonly<Record<EndName, number>>;
  readonly edgePerN: number;
  /** What a draft that stops at its mark took, N; left out for those that are pulled by feel. */
  readonly tookN?: number;
}

/** The effects of the drafts, and whether they were reckoned for this pair or are rules of thumb. */
export interface DraftEffects {
  readonly from: "reckoned" | "rule of thumb";
  readonly effects: readonly DraftEffect[];
}

const none: Readonly<Record<EndName, number>> = { throatDepthMm: 0, backHeightMm: 0, innerHeightMm: 0, outerHeightMm: 0 };
const effect = (draft: number, edgePerN: number, perN: Partial<Record<EndName, number>>, tookN?: number): DraftEffect => ({ draft, edgePerN, perN: { ...none, ...perN }, ...(tookN !== undefined && { tookN }) });

/** What a draft usually takes that stops at its mark, N: between just past tight and 25 N on the example, cut right and cut high. */
const usuallyTookN = 10;

/** For a pair that was not reckoned: what was reckoned for the example pair in usual goat at usual pulls, cut 1 to 1.5 mm high at back and sides, rounded. */
export const thumbEffects: DraftEffects = {
  from: "rule of thumb",
  effects: [
    effect(1, 0.07, { throatDepthMm: -0.06 }),
    effect(4, 0.08, { backHeightMm: -0.08 }, usuallyTookN),
    effect(5, 0.2, { innerHeightMm: -0.12 }, usuallyTookN),
    effect(6, 0.2, { outerHeightMm: -0.12 }, usuallyTookN),
    effect(7, 0.1, { innerHeightMm: -0.05 }),
    effect(8, 0.1, { outerHeightMm: -0.05 }),
    effect(9, 0.15, { innerHeightMm: -0.1 }, usuallyTookN),
    effect(10, 0.15, { outerHeightMm: -0.1 }, usuallyTookN),
  ],
};
