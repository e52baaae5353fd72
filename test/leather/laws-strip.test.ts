import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { rotated } from "#leather/combined.ts";
import { stripWays, type StripWay } from "#leather/leather.ts";
import { givingMore, linearLaw, strainForm, thicker, ToeLaw, type LeatherNumbers } from "#leather/toe-law.ts";
import { stretchAt, stripForce } from "#leather/uniaxial.ts";
import { answer, someAngle, someNumbers, someStrain } from "../support/some-leathers.ts";

// The same cases in every run.
fc.configureGlobal({ seed: 3379 });

const ways: Readonly<Record<StripWay, readonly [number, number]>> = { along: [1, 0], across: [0, 1], bias: [Math.SQRT1_2, Math.SQRT1_2] };
const way = fc.constantFrom(...stripWays);
const goat: LeatherNumbers = { along: 40, across: 18, bias: 20, poisson: 0.4, toe: 0.02, early: 0.15 };
const stressOf = (numbers: LeatherNumbers, one: StripWay, e: number): number => stripForce(new ToeLaw(numbers), ...ways[one], Math.sqrt(1 + 2 * e)).forcePerMm / Math.sqrt(1 + 2 * e);

describe("a pulled strip", () => {
  test("has the law's curve with its own scale: stress at e is that along at √(k_w/k) e, times √(k_w/k)", () => {
    fc.assert(
      fc.property(someNumbers, way, fc.double({ min: 0.001, max: 0.4, noNaN: true }), (numbers, one, e) => {
        const scale = Math.sqrt(numbers[one] / numbers.along);
        expect(stressOf(numbers, one, e) / (scale * stressOf(numbers, "along", scale * e))).toBeCloseTo(1, 9);
      }),
    );
  });

  test("is never stiffer than its figure, and never softer than the early share of it", () => {
    fc.assert(
      fc.property(someNumbers, way, fc.double({ min: 0, max: 0.4, noNaN: true }), (numbers, one, e) => {
        const h = 1e-4;
        const tangent = (stressOf(numbers, one, e + h) - stressOf(numbers, one, e)) / h;
        expect(tangent).toBeLessThan(numbers[one] * (1 + 1e-8));
        expect(tangent).toBeGreaterThan(numbers.early * numbers[one] * (1 - 1e-8));
      }),
    );
  });

  test("runs into a straight line whose way back meets the axis near the toe", () => {
    const [a, b] = [stressOf({ ...goat, early: 0.001 }, "along", 2), stressOf({ ...goat, early: 0.001 }, "along", 3)];
    expect(b - a).toBeCloseTo(goat.along, 2);
    expect(2 - a / (b - a)).toBeCloseTo(goat.toe, 3);
  });

  test("gets narrower by the Poisson ratio at first, along; across by ν k₂/k₁ (reciprocity: ν₂₁/E₂ = ν₁₂/E₁)", () => {
    fc.assert(
      fc.property(someNumbers, (numbers) => {
        const e = 1e-6, law = new ToeLaw(numbers);
        expect(-stripForce(law, 1, 0, Math.sqrt(1 + 2 * e)).across / e).toBeCloseTo(numbers.poisson, 6);
        expect(-stripForce(law, 0, 1, Math.sqrt(1 + 2 * e)).across / e).toBeCloseTo((numbers.poisson * numbers.across) / numbers.along, 6);
      }),
    );
  });

  test("of a sheet with the work of pull and cross-pull exchanged gives the same (Betti): the stiffness is symmetric", () => {
    fc.assert(
      fc.property(someNumbers, someAngle, someStrain, someStrain, (numbers, angle, a, b) => {
        const law = rotated(linearLaw(numbers), Math.cos(angle), Math.sin(angle));
        const work = (s: readonly number[], e: readonly number[]) => s[0]! * e[0]! + s[1]! * e[1]! + s[2]! * e[2]!;
        const [x, y] = [work(answer(law, a).stress, b), work(answer(law, b).stress, a)];
        expect(Math.abs(x - y)).toBeLessThan(1e-11 * (1 + Math.abs(x)));
      }),
    );
  });

  test("leaves no stress across and askew, and its width is what a rule between the edges reads", () => {
    fc.assert(
      fc.property(someNumbers, someAngle, fc.double({ min: 0.95, max: 1.4, noNaN: true }), (numbers, angle, stretch) => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const law = new ToeLaw(numbers);
        const { forcePerMm, across, shear, width } = stripForce(law, c, s, stretch);
        const { stress } = answer(rotated(law, c, -s), [(stretch * stretch - 1) / 2, across, shear]);
        const size = 1e-3 + Math.abs(forcePerMm);
        expect(Math.abs(stress[1]) + Math.abs(stress[2])).toBeLessThan(1e-9 * size);
        expect(stretch * stress[0]).toBeCloseTo(forcePerMm, 12);
        // F with its first column along the strip: the edges' distance is what the second keeps square to it.
        const skew = shear / stretch;
        expect(width * width).toBeCloseTo(Math.max(1 + 2 * across - skew * skew, 0), 12);
      }),
    );
  });
});

describe("a strip under a load", () => {
  test("is as long as makes its force the load", () => {
    fc.assert(
      fc.property(someNumbers, way, fc.double({ min: 0, max: 8, noNaN: true }), (numbers, one, load) => {
        const stretch = stretchAt(numbers, one, load);
        expect(Math.abs(stripForce(new ToeLaw(numbers), ...ways[one], stretch).forcePerMm - load)).toBeLessThan(1e-9 * (1 + load));
      }),
    );
  });

  test("without a load it has its length; without a toe it hangs as by hand", () => {
    expect(stretchAt(goat, "across", 0)).toBe(1);
    // λ k (λ² − 1)/2 = 1.05 · 20 · 0.05125
    expect(stretchAt({ ...goat, across: 20, toe: 0, early: 1 }, "across", 1.05 * 20 * 0.05125)).toBeCloseTo(1.05, 14);
  });
});

describe("other leathers from one", () => {
  test("twice as thick: twice the force; giving a third more: a third more strain under the same stress", () => {
    fc.assert(
      fc.property(someNumbers, way, fc.double({ min: 0.001, max: 0.3, noNaN: true }), (numbers, one, e) => {
        expect(stressOf(thicker(numbers, 2), one, e) / stressOf(numbers, one, e)).toBeCloseTo(2, 8);
        expect(stressOf(givingMore(numbers, 4 / 3), one, (e * 4) / 3) / stressOf(numbers, one, e)).toBeCloseTo(1, 8);
      }),
    );
  });

  test("a change and its reverse give the leather back", () => {
    const back = givingMore(thicker(givingMore(thicker(goat, 1.25), 0.8), 0.8), 1.25);
    for (const key of ["along", "across", "bias", "poisson", "toe", "early"] as const) expect(back[key]).toBeCloseTo(goat[key], 12);
  });
});

describe("numbers that no leather has", () => {
  const refused = (numbers: Partial<LeatherNumbers>): void => {
    let caught: unknown;
    try {
      new ToeLaw({ ...goat, ...numbers });
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(Refusal);
    expect((caught as Refusal).finding.code).toBe("leather-law-impossible");
  };

  test("a bias so stiff that the shear would have none, a Poisson ratio beyond √(k₁/k₂), no stiffness, no number", () => {
    const bound = 4 / (1 / goat.along + 1 / goat.across - (2 * goat.poisson) / goat.along);
    refused({ bias: bound * 1.0001 });
    expect(strainForm({ ...goat, bias: bound * 0.9999 }).c33).toBeGreaterThan(0);
    const most = Math.sqrt(goat.along / goat.across);
    refused({ poisson: most * 1.0001, bias: 5 });
    expect(strainForm({ ...goat, poisson: most * 0.999, bias: 20 }).c11).toBeGreaterThan(1);
    for (const bad of [0, -3, NaN, Infinity]) for (const key of ["along", "across", "bias"] as const) refused({ [key]: bad });
    refused({ poisson: NaN });
  });

  test("a toe below none, an early share of none or of more than all", () => {
    for (const toe of [-0.001, NaN, Infinity]) refused({ toe });
    for (const early of [0, -0.1, 1.01, NaN]) refused({ early });
  });

  test("a toe too small to be a number's square is none", () => {
    expect(answer(new ToeLaw({ ...goat, toe: 1e-170 }), [0, 0, 0]).stiffness.flat().every(Number.isFinite)).toBe(true);
  });
});
