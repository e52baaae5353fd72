import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { rotated, sumOf } from "#leather/combined.ts";
import type { Law } from "#leather/law.ts";
import { neoHookean } from "#leather/neo-hookean.ts";
import { linearLaw, ToeLaw } from "#leather/toe-law.ts";
import { answer, someAngle, someLayers, someNumbers, someStrain, turnedStrain } from "../support/some-leathers.ts";

// The same cases in every run.
fc.configureGlobal({ seed: 3379 });

type Strain = readonly [number, number, number];
const toes = someNumbers.map((numbers): Law => new ToeLaw(numbers));
/** A law that can only be turned from outside, so that the general way is tried too. */
const opaque = (law: Law): Law => ({ energy: (a, b, c) => law.energy(a, b, c), into: (out, a, b, c) => law.into(out, a, b, c) });
const laws: Readonly<Record<string, fc.Arbitrary<Law>>> = {
  "toe law": toes,
  "linear law": someNumbers.map(linearLaw),
  "toe law turned": fc.tuple(toes, someAngle).map(([law, a]) => rotated(law, Math.cos(a), Math.sin(a))),
  "any law turned twice": fc.tuple(toes, someAngle, someAngle).map(([law, a, b]) => rotated(rotated(opaque(law), Math.cos(a), Math.sin(a)), Math.cos(b), Math.sin(b))),
  "two layers": someLayers,
  rubber: fc.double({ min: 0.5, max: 20, noNaN: true }).map(neoHookean),
};
/** Strains at which rubber exists; all others do everywhere. */
const mild = someStrain.map(([a, b, g]): Strain => [a, b, g / 2]);

/** Slope of f at 0 by differences of the sixth order. */
const slope = (f: (t: number) => number, h: number): number =>
  (45 * (f(h) - f(-h)) - 9 * (f(2 * h) - f(-2 * h)) + (f(3 * h) - f(-3 * h))) / (60 * h);
const moved = (e: Strain, i: number, t: number): Strain => e.map((v, k) => (k === i ? v + t : v)) as unknown as Strain;

describe.each(Object.entries(laws))("%s", (_, law) => {
  test("stress is the slope of the energy, and stiffness that of the stress, to 1e-7", () => {
    fc.assert(
      fc.property(law, mild, (one, e) => {
        const { stress, stiffness } = answer(one, e);
        const size = Math.hypot(...stress), most = Math.max(...stiffness.map((row, i) => row[i]!));
        // Differences see a toe that is small against their step as a kink: far from the origin it is none.
        fc.pre(Math.hypot(...e) > 0.05);
        for (let i = 0; i < 3; i++) {
          const h = 2e-4;
          expect(Math.abs(slope((t) => one.energy(...moved(e, i, t)), h) - stress[i]!)).toBeLessThan(1e-7 * (size + 0.01 * most));
          for (let j = 0; j < 3; j++) expect(Math.abs(slope((t) => answer(one, moved(e, i, t)).stress[j]!, h) - stiffness[i]![j]!)).toBeLessThan(1e-7 * most);
        }
      }),
      { numRuns: 150 },
    );
  });

  test("the energy is convex: its chord lies above it, and no way through the strains has a negative stiffness", () => {
    fc.assert(
      fc.property(law, mild, mild, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (one, a, b, t) => {
        const between = a.map((v, k) => v + t * (b[k]! - v)) as unknown as Strain;
        const chord = (1 - t) * one.energy(...a) + t * one.energy(...b);
        expect(one.energy(...between)).toBeLessThanOrEqual(chord + 1e-12 * (1 + chord));
        const { stiffness } = answer(one, a);
        const curve = stiffness.reduce((sum, row, i) => sum + row.reduce((s, d, j) => s + d * b[i]! * b[j]!, 0), 0);
        expect(curve).toBeGreaterThanOrEqual(-1e-12 * stiffness[0]![0]!);
      }),
    );
  });

  test("no strain, no energy, no stress", () => {
    fc.assert(
      fc.property(law, (one) => {
        expect(Math.abs(one.energy(0, 0, 0))).toBeLessThan(1e-14);
        expect(answer(one, [0, 0, 0]).stress.every((s) => Math.abs(s) < 1e-14)).toBe(true);
        expect(answer(one, [0, 0, 0]).stiffness.flat().every(Number.isFinite)).toBe(true);
      }),
    );
  });
});

describe("turned axes", () => {
  test("the energy of the turned law is that of the law at the strain seen from its own axes", () => {
    fc.assert(
      fc.property(toes, someAngle, someStrain, (law, angle, e) => {
        const own = law.energy(...turnedStrain(e, angle));
        for (const one of [law, opaque(law), sumOf([law])]) expect(rotated(one, Math.cos(angle), Math.sin(angle)).energy(...e)).toBeCloseTo(own, 10);
      }),
    );
  });

  test("half a turn changes nothing, a full way there and back neither; rubber has no axes", () => {
    fc.assert(
      fc.property(someLayers, someAngle, someStrain, (law, angle, e) => {
        const before = answer(law, e).stress;
        const size = 1 + Math.hypot(...before);
        const back = rotated(rotated(law, Math.cos(angle), Math.sin(angle)), Math.cos(angle), -Math.sin(angle));
        for (const one of [back, rotated(law, -1, 0)]) answer(one, e).stress.forEach((s, i) => expect(Math.abs(s - before[i]!)).toBeLessThan(1e-12 * size));
      }),
    );
    const rubber = neoHookean(2);
    expect(rotated(rubber, 0.6, 0.8)).toBe(rubber);
    const e: Strain = [0.1, -0.05, 0.08];
    expect(rubber.energy(...turnedStrain(e, 0.7))).toBeCloseTo(rubber.energy(...e), 14);
  });

  test("two layers give the sum of both; doubled layers twice the force", () => {
    fc.assert(
      fc.property(toes, toes, someStrain, (a, b, e) => {
        const [x, y, both] = [answer(a, e), answer(b, e), answer(sumOf([a, b]), e)];
        both.stress.forEach((s, i) => expect(s).toBe(x.stress[i]! + y.stress[i]!));
        expect(sumOf([a, b]).energy(...e)).toBe(a.energy(...e) + b.energy(...e));
      }),
    );
  });
});
