// ISO 20685 as a judge of the tool: foot dimensions taken from a scan may be biased by 2 mm (1 mm by hand), and the 95 % interval of the
// mean error has to lie inside. Lasts: ../shared/data/lasts, all ten files, whose truth is known exactly.
import { beforeAll, describe, expect, test } from "vitest";
import type { Last } from "#last/last.ts";
import { girthsMm, lengthsMm, scanOf } from "../support/against-truth.ts";
import { interval, passes } from "../support/people.ts";
import { foundLast } from "../support/scans.ts";
import { hasShared } from "../support/shared.ts";
import { lastNames, truthOf } from "../support/truth-last.ts";

test("the rule itself: mean 0.4, SD 1.8, n 40 gives −0.158 to 0.958, which passes at 2 mm", () => {
  const { low, high, pass } = interval(0.4, 1.8, 40, 2);
  expect(low).toBeCloseTo(-0.158, 3);
  expect(high).toBeCloseTo(0.958, 3);
  expect(pass).toBe(true);
  expect(interval(0.4, 1.8, 40, 0.9).pass).toBe(false);
  expect(passes([1, 1.2, 0.8, 1], 0.5).pass).toBe(false);
});

describe.skipIf(!hasShared)("the ten lasts", () => {
  let lasts: readonly (readonly [string, Last])[] = [];
  beforeAll(() => {
    lasts = lastNames.flatMap((name) => [`${name}.stl`, scanOf(name).file].map((file) => [name, foundLast(file)] as const));
  }, 180_000);
  test.each([...lengthsMm, ...girthsMm])("%s passes even the 1 mm allowed to a hand that measures feet", (what) => {
    const errors = lasts.map(([name, last]) => last.measures[what] - truthOf(name).values[what]);
    expect(passes(errors, 1), errors.map((e) => e.toFixed(2)).join(" ")).toMatchObject({ pass: true });
  });
});
