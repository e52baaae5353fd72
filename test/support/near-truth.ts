import { expect } from "vitest";
import type { Last } from "#last/last.ts";
import { featherError, girthsMm, lengthsMm, worst, type FileRule } from "./against-truth.ts";
import { truthOf } from "./truth-last.ts";

/** Limits of the trade's work, as for every scan: lengths 0.7 mm, girths 1.5 mm, feather line 0.6 mm root mean square and 2 mm at most. */
export function expectNear(last: Last, name: string, rule: FileRule): void {
  const truth = truthOf(name);
  expect(last.side).toBe(truth.side);
  expect(worst(last, truth, lengthsMm)).toBeLessThan(0.7);
  expect(worst(last, truth, girthsMm)).toBeLessThan(1.5);
  const feather = featherError(last, rule, truth.feather.points);
  expect(feather.rms).toBeLessThan(0.6);
  expect(feather.max).toBeLessThan(2);
}
