import { expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { knownLeathers } from "#leather/leather.ts";
import { burstRingMm, burstStretch, elongation, grainLimitFrom, grainLimitOf } from "#leather/limits.ts";

// ISO 3379 (ring 25 mm, ball 6.25 mm, from a maker of the instrument); the way up a cone: √(1 + (h/12.5)²) − 1.
test.each([[5, 0.077], [6, 0.1092], [7, 0.1461], [8, 0.1873]])("LT-03: distension %d mm is %d of mean stretch along the radius", (h, stretch) => {
  expect(burstStretch(h)).toBeCloseTo(stretch, 4);
});

test("the way from the ring straight to the middle at 7 mm is 14.3 to 14.4 mm of 12.5: 15 % in round figures", () => {
  expect(burstRingMm / 2).toBe(12.5);
  expect((1 + burstStretch(7)) * 12.5).toBeCloseTo(14.33, 2);
  expect(Math.abs(burstStretch(7) - 0.15)).toBeLessThan(0.005);
});

test("the way that touches the ball instead of its tip differs by less than two parts in a hundred of stretch", () => {
  // From the ring a straight line to the ball of radius a whose top stands at h, then round the ball to its top.
  const a = 6.25 / 2;
  for (const h of [5, 6, 7, 8]) {
    const [r, z] = [12.5, h - a]; // centre of the ball lies z above the ring's plane
    const far = Math.hypot(r, z), straight = Math.sqrt(far * far - a * a);
    // Angle from the upright at which the line leaves the ball.
    const leaves = Math.atan2(r, -z) - Math.acos(a / far);
    expect(Math.abs((straight + a * leaves) / 12.5 - 1 - burstStretch(h))).toBeLessThan(0.02);
  }
});

test("LT-02 (ISO 3376): from 50 to 72 mm are 44 %", () => {
  expect(elongation(50, 72)).toBeCloseTo(0.44, 12);
});

test("every kind of leather bears at least what is asked of uppers: 7.0 mm (common practice, no source)", () => {
  for (const known of knownLeathers) {
    expect(grainLimitOf(known)).toBeGreaterThanOrEqual(burstStretch(7));
    expect(grainLimitOf(known)).toBeLessThan(0.25);
  }
});

test("a distension that no ring can show is refused", () => {
  for (const mm of [0, -1, 26, NaN]) expect(() => grainLimitFrom(mm)).toThrow(Refusal);
  expect(() => grainLimitFrom(0)).toThrow(/ball test/);
  expect(grainLimitFrom(7)).toBe(burstStretch(7));
});
