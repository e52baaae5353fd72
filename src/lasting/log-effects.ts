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
 * For a pair that was not reckoned: what was reckoned for the example pair in usual goat at usual pulls, rounded. How much of draft 4
 * arrives at the back's height is from memory instead: a quarter of its edge's way, where the example's taped topline lets next to nothing through.
 */
export const thumbEffects: DraftEffects = {
  from: "rule of thumb",
  effects: [
    effect(1, 0.07, { throatDepthMm: -0.06 }),
    effect(4, 0.12, { backHeightMm: -0.03 }),
    effect(5, 0.24, { innerHeightMm: -0.16 }),
    effect(6, 0.24, { outerHeightMm: -0.16 }),
    effect(7, 0.1, { innerHeightMm: -0.06 }),
    effect(8, 0.1, { outerHeightMm: -0.06 }),
    effect(9, 0.22, { innerHeightMm: -0.15 }),
    effect(10, 0.22, { outerHeightMm: -0.15 }),
  ],
};
