import { expect, test } from "vitest";
import { profileAt, profilePoint } from "#last/profile.ts";
import { peakNear, ridgeStrengthInto, rulerStates, sharpness } from "#last/ridge.ts";

const ruler = { reach: 6, step: 0.25 };

/** Bottom along +x, arc of radius r through `degrees`, then the wall; the middle of the arc is known. Rough by ± rough (alternating). */
function corner(r: number, degrees: number, shift: number): { points: Float64Array; middle: readonly [number, number] } {
  const turn = (degrees * Math.PI) / 180;
  const out: number[] = [];
  for (let x = -14; x < -0.01; x += 1.1) out.push(x + shift, 0, 0);
  for (let k = 0; k <= 8; k++) out.push(shift + r * Math.sin((turn * k) / 8), 0, r * (1 - Math.cos((turn * k) / 8)));
  const [ex, ez] = [shift + r * Math.sin(turn), r * (1 - Math.cos(turn))];
  for (let s = 0.9; s < 14; s += 0.9) out.push(ex + s * Math.cos(turn), 0, ez + s * Math.sin(turn));
  return { points: Float64Array.from(out), middle: [shift + r * Math.sin(turn / 2), r * (1 - Math.cos(turn / 2))] };
}

test.each([
  [0.2, 70, 0],
  [1, 75, 1.3],
  [1.5, 50, -2.1],
])("the ridge of a rounding of %f mm through %f degrees is the middle of its arc", (r, degrees, shift) => {
  const { points, middle } = corner(r, degrees, shift);
  const station = { at: [0, 0, 0], out: [1, 0, 0], up: [0, 0, 1] } as const;
  for (const run of [points, Float64Array.from({ length: points.length }, (_, i) => points[points.length - 3 - 3 * Math.floor(i / 3) + (i % 3)]!)]) {
    const profile = profileAt([{ points: run, closed: false }], station, 8)!;
    const strength = new Float64Array(rulerStates(ruler));
    ridgeStrengthInto(strength, profile, ruler, 0.8);
    const best = strength.reduce((k, v, i) => (v > strength[k]! ? i : k), 0);
    const [u, v] = profilePoint(profile, peakNear(strength, best, ruler));
    expect(Math.hypot(u - middle[0], v - middle[1])).toBeLessThan(0.03);
  }
});

test("the whole turn is found again as the sum of the strength", () => {
  const { points } = corner(1, 60, 0);
  const profile = profileAt([{ points, closed: false }], { at: [0, 0, 0], out: [1, 0, 0], up: [0, 0, 1] }, 8)!;
  const strength = new Float64Array(rulerStates(ruler));
  ridgeStrengthInto(strength, profile, ruler, 0.8);
  expect(strength.reduce((sum, v) => sum + v * ruler.step, 0)).toBeCloseTo((60 * Math.PI) / 180, 2);
});

test("a hollow (an edge the other way) has no positive ridge", () => {
  const { points } = corner(0.5, 60, 0);
  for (let i = 2; i < points.length; i += 3) points[i] = -points[i]!;
  const profile = profileAt([{ points, closed: false }], { at: [0, 0, 0], out: [1, 0, 0], up: [0, 0, 1] }, 8)!;
  const strength = new Float64Array(rulerStates(ruler));
  ridgeStrengthInto(strength, profile, ruler, 0.8);
  expect(Math.max(...strength)).toBeLessThan(0.02);
});

test.each([
  [0.3, 60, 1],
  [4, 60, 0.72],
  [5.5, 60, 0.25],
  [8, 60, 0],
  [0.3, 20, 0],
])("a rounding of %f mm through %f degrees is %f sharp, through a narrow bell and a wide one", (r, degrees, sharp) => {
  // Closed form: the turn within 3 mm is 3 / r, at most all of it; 25 degrees count 0, 50 count 1.
  const { points } = corner(r, degrees, 0);
  const profile = profileAt([{ points, closed: false }], { at: [0, 0, 0], out: [1, 0, 0], up: [0, 0, 1] }, 12)!;
  for (const blur of [0.8, 1.5]) {
    const strength = new Float64Array(rulerStates(ruler));
    ridgeStrengthInto(strength, profile, ruler, blur);
    expect(Math.abs(sharpness(strength, ruler, blur) - sharp)).toBeLessThan(0.12);
  }
});

test("a spike of roughness is no turn", () => {
  const { points } = corner(0.2, 60, 0);
  const spiked = Float64Array.of(...points.subarray(0, 30), points[30]! - 1.4, 0, 0.05, ...points.subarray(30));
  const station = { at: [0, 0, 0], out: [1, 0, 0], up: [0, 0, 1] } as const;
  const [a, b] = [points, spiked].map((p) => {
    const row = new Float64Array(rulerStates(ruler));
    ridgeStrengthInto(row, profileAt([{ points: p, closed: false }], station, 8)!, ruler, 0.8);
    return row.reduce((sum, v) => sum + v * ruler.step, 0);
  });
  expect(Math.abs(a! - b!)).toBeLessThan(0.2);
});
