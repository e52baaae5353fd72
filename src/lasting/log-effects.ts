import type { EndName } from "./log.ts";

/** What one more newton at a draft does, mm: to where the topline ends, and to the edge that comes over the feather line. */
export interface DraftEffect {
  readonly draft: number;
  readonly perN: Readonly<Record<EndName, number>>;
  readonly edgePerN: number;
}

/** The effects of the drafts, and whether they were reckoned for this pair or are rules of thumb. */
export interface DraftEffects {
  readonly from: "reckoned" | "rule of thumb";
  readonly effects: readonly DraftEffect[];
}

const none: Readonly<Record<EndName, number>> = { throatDepthMm: 0, backHeightMm: 0, innerHeightMm: 0, outerHeightMm: 0 };
const effect = (draft: number, edgePerN: number, perN: Partial<Record<EndName, number>>): DraftEffect => ({ draft, edgePerN, perN: { ...none, ...perN } });

/**
 * For a pair that was not reckoned. A handbook's view of how far the edge moves at usual pulls (3 to 6 mm at the toe, 2 to 4 mm at the
 * sides, up to 1 mm at the back; common practice, no source) over these pulls; that half of it arrives at the topline, and all of it at
 * the back, is from memory.
 */
export const thumbEffects: DraftEffects = {
  from: "rule of thumb",
  effects: [
    effect(1, 0.22, { throatDepthMm: -0.11 }),
    effect(4, 0.07, { backHeightMm: -0.07, throatDepthMm: 0.03 }),
    effect(5, 0.2, { innerHeightMm: -0.06 }),
    effect(6, 0.2, { outerHeightMm: -0.06 }),
    effect(7, 0.2, { innerHeightMm: -0.04 }),
    effect(8, 0.2, { outerHeightMm: -0.04 }),
    effect(9, 0.2, { innerHeightMm: -0.1 }),
    effect(10, 0.2, { outerHeightMm: -0.1 }),
  ],
};
