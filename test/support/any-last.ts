import fc from "fast-check";
import { toeShapes } from "#last/measured.ts";

/** Words for a last from measures of any usual size, toe and heel, for `completeMeasures`. */
export const anyLast = {
  sizeEu: fc.integer({ min: 34, max: 43 }),
  fitting: fc.integer({ min: 5, max: 8 }),
  toe: fc.constantFrom(...toeShapes),
  side: fc.constantFrom("right" as const, "left" as const),
  heelHeightMm: fc.integer({ min: 8, max: 18 }),
};
