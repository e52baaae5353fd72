import { goodIds, type GoodId } from "../goods.ts";
import type { Need } from "../need.ts";
import type { Step } from "../steps/step.ts";

/** Goods that the steps use and no list counts, since no piece was drawn to count them by: those of a bottom that was not traced. */
export function uncountedOf(needs: readonly Need[], steps: readonly Step[]): readonly GoodId[] {
  const listed = new Set(needs.map(({ good }) => good)), used = new Set(steps.flatMap((step) => step.needs.goods));
  return goodIds.filter((good) => used.has(good) && !listed.has(good));
}
