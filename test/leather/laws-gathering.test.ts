import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { rotated } from "#leather/combined.ts";
import { gathering, pleatShare, pleatsOf } from "#leather/gathering.ts";
import type { Law } from "#leather/law.ts";
import { linearLaw, ToeLaw } from "#leather/toe-law.ts";
import { stripForce } from "#leather/uniaxial.ts";
import { answer, leastPrincipal, someAngle, someLayers, someNumbers, someStrain } from "../support/some-leathers.ts";

// The same cases in every run.
fc.configureGlobal({ seed: 3379 });

type Strain = readonly [number, number, number];
const limits = fc.constantFrom(0, -0.01, -0.04, -0.1);
const gathered = fc.tuple(someLayers, limits).map(([law, limit]) => ({ plain: law, law: gathering(law, limit), limit }));
const green = (stretch: number): number => (stretch * stretch - 1) / 2;

describe("alike in every direction, force and strain in proportion", () => {
  const k = 40, nu = 0.3, limit = -0.04;
  const plain = linearLaw({ along: k, across: k, bias: k, poisson: nu });
  const law = gathering(plain, limit);
  const c = k / (1 - nu * nu), push = -k * limit, price = (pleatShare / (1 - pleatShare)) * k;

  test("a strip is pushed together down to the limit as without pleats, and takes hardly more beyond", () => {
    const stress = (e: number) => stripForce(law, 0.6, 0.8, Math.sqrt(1 + 2 * e)).forcePerMm / Math.sqrt(1 + 2 * e);
    for (const e of [-0.01, -0.03, -0.0399]) expect(stress(e)).toBeCloseTo(k * e, 11);
    // Beyond, the sheet and its pleats are two springs in a row: 2 % of the stiffness is left.
    for (const e of [-0.05, -0.1, -0.2]) expect(stress(e)).toBeCloseTo(-push + pleatShare * k * (e - limit), 10);
  });

  test("pleats one way: by hand, with the other way stretched", () => {
    const [e1, e2] = [0.06, -0.15];
    const deep = (-(c * (e2 + nu * e1)) - push) / (c + price);
    expect(pleatsOf(law, e1, e2, 0)).toBeCloseTo(deep, 12);
    const { stress } = answer(law, [e1, e2, 0]);
    expect(stress[0]).toBeCloseTo(c * (e1 + nu * (e2 + deep)), 11);
    expect(stress[1]).toBeCloseTo(c * (e2 + deep + nu * e1), 11);
    expect(stress[2]).toBeCloseTo(0, 12);
  });

  test("pleats both ways: by hand", () => {
    const e = -0.2, stiff = c * (1 + nu);
    const deep = (-stiff * e - push) / (stiff + price);
    expect(pleatsOf(law, e, e, 0)).toBeCloseTo(deep, 12);
    expect(answer(law, [e, e, 0]).stress[0]).toBeCloseTo(stiff * (e + deep), 11);
  });

  test("it does not matter how the axes lie", () => {
    fc.assert(
      fc.property(someStrain, someAngle, (e, angle) => {
        expect(rotated(law, Math.cos(angle), Math.sin(angle)).energy(...e)).toBeCloseTo(law.energy(...e), 11);
      }),
    );
  });
});

describe("any two layers", () => {
  test("a strip that gets narrower because it is pulled does not gather: its force is the plain law's", () => {
    fc.assert(
      fc.property(gathered, someAngle, fc.integer({ min: 0, max: 500 }).map((n) => 1 + n / 2000), ({ plain, law }, angle, stretch) => {
        const [a, b] = [plain, law].map((one) => stripForce(one, Math.cos(angle), Math.sin(angle), stretch));
        expect(Math.abs(a!.forcePerMm - b!.forcePerMm)).toBeLessThan(1e-9 * (0.01 + a!.forcePerMm));
        expect(a!.width).toBeCloseTo(b!.width, 8);
      }),
    );
  });

  test("where nothing is pushed the law is the plain one; pleats only take energy away, and never below none", () => {
    fc.assert(
      fc.property(gathered, someStrain, ({ plain, law }, e) => {
        const before = plain.energy(...e);
        if (leastPrincipal(answer(plain, e).stress) > 1e-9) {
          expect(law.energy(...e)).toBe(before);
          expect(answer(law, e)).toEqual(answer(plain, e));
          expect(pleatsOf(law, ...e)).toBe(0);
        }
        expect(law.energy(...e)).toBeLessThanOrEqual(before * (1 + 1e-12));
        expect(law.energy(...e)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test("stress is the slope of the energy, and stiffness that of the stress, to 1e-7, but where pleats begin", () => {
    let looked = 0, left = 0;
    fc.assert(
      fc.property(gathered, someStrain, ({ law }, e) => {
        const here = answer(law, e);
        const most = Math.max(...here.stiffness.map((row, i) => row[i]!), 1), size = Math.hypot(...here.stress);
        const h = 1e-4;
        for (let i = 0; i < 3; i++) {
          const at = (t: number): Strain => e.map((v, k) => (k === i ? v + t : v)) as unknown as Strain;
          const seen = [-3, -2, -1, 1, 2, 3].map((n) => ({ energy: law.energy(...at(n * h)), ...answer(law, at(n * h)) }));
          // The stiffness jumps where pleats begin or are squashed both ways; a difference across a jump says nothing.
          const jump = Math.max(...seen.flatMap((s) => s.stiffness.flatMap((row, r) => row.map((v, q) => Math.abs(v - here.stiffness[r]![q]!)))));
          looked++;
          if (jump > 0.05 * most) {
            left++;
            continue;
          }
          const slope = (f: (s: (typeof seen)[number]) => number) => {
            const [a, b, c, d, g, j] = seen.map(f) as [number, number, number, number, number, number];
            return (45 * (d - c) - 9 * (g - b) + (j - a)) / (60 * h);
          };
          expect(Math.abs(slope((s) => s.energy) - here.stress[i]!)).toBeLessThan(1e-7 * (size + 0.02 * most));
          for (let r = 0; r < 3; r++) expect(Math.abs(slope((s) => s.stress[r]!) - here.stiffness[r]![i]!)).toBeLessThan(1e-5 * most);
        }
      }),
      { numRuns: 400 },
    );
    expect(left / looked).toBeLessThan(0.2);
  });

  test("stress has no jump where pleats begin", () => {
    fc.assert(
      fc.property(gathered, someStrain, ({ law }, e) => {
        const at = (t: number): Strain => [t * (e[0] - 0.1), t * e[1], t * e[2]];
        let before = answer(law, at(0));
        for (let i = 1; i <= 200; i++) {
          const now = answer(law, at(i / 200));
          const most = Math.max(...before.stiffness.flat(), ...now.stiffness.flat());
          const way = Math.hypot(e[0] - 0.1, e[1], e[2]) / 200;
          now.stress.forEach((s, k) => expect(Math.abs(s - before.stress[k]!)).toBeLessThan(3 * most * way));
          before = now;
        }
      }),
      { numRuns: 40 },
    );
  });

  test("it stays convex, and no way through the strains has a negative stiffness", () => {
    fc.assert(
      fc.property(gathered, someStrain, someStrain, fc.double({ min: 0.05, max: 0.95, noNaN: true }), ({ law }, a, b, t) => {
        const between = a.map((v, k) => v + t * (b[k]! - v)) as unknown as Strain;
        const chord = (1 - t) * law.energy(...a) + t * law.energy(...b);
        expect(law.energy(...between)).toBeLessThanOrEqual(chord + 1e-11 * (1 + chord));
        const { stiffness } = answer(law, a);
        const curve = stiffness.reduce((sum, row, i) => sum + row.reduce((s, d, j) => s + d * b[i]! * b[j]!, 0), 0);
        expect(curve).toBeGreaterThanOrEqual(-1e-11 * Math.max(...stiffness.map((row, i) => row[i]!)));
      }),
      { numRuns: 400 },
    );
  });

  test("however hard it is squeezed it answers with numbers", () => {
    const hard = fc.double({ min: -0.49, max: 1, noNaN: true });
    fc.assert(
      fc.property(gathered, fc.tuple(hard, hard, fc.double({ min: -0.9, max: 0.9, noNaN: true })), ({ law }, e) => {
        const { stress, stiffness } = answer(law, e);
        expect([...stress, ...stiffness.flat(), law.energy(...e), pleatsOf(law, ...e)].every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test("turning the sheet turns its pleats: within 10 % of the energy, by which a tensor misses how the push of strips changes round the sheet", () => {
    fc.assert(
      fc.property(someLayers, someAngle, someStrain, (law, angle, e) => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const [a, b] = [gathering(rotated(law, c, s), -0.04).energy(...e), rotated(gathering(law, -0.04), c, s).energy(...e)];
        expect(Math.abs(a - b)).toBeLessThan(0.1 * Math.max(a, b) + 1e-12);
      }),
    );
  });
});

describe("against a plain search for the least energy", () => {
  /** Σ and b by their definition: the tensor nearest to what strips in eight ways take at the limit, and its mean over the limit. */
  function priceOf(plain: Law, limit: number): (a: Strain) => number {
    let [s11, s22, s12] = [0, 0, 0];
    for (let i = 0; i < 8; i++) {
      const angle = (i * Math.PI) / 8, stretch = Math.sqrt(1 + 2 * limit);
      const push = -stripForce(plain, Math.cos(angle), Math.sin(angle), stretch).forcePerMm / stretch;
      s11 += (push * (1 + 2 * Math.cos(2 * angle))) / 8;
      s22 += (push * (1 - 2 * Math.cos(2 * angle))) / 8;
      s12 += (push * 2 * Math.sin(2 * angle)) / 8;
    }
    const b = ((pleatShare / (1 - pleatShare)) * (s11 + s22)) / 2 / -limit;
    return ([a1, a2, a12]) => s11 * a1 + s22 * a2 + 2 * s12 * a12 + 0.5 * b * (a1 * a1 + a2 * a2 + 2 * a12 * a12);
  }

  /** Least over A = L Lᵀ by steps along each entry of L, halved when none helps. */
  function searched(plain: Law, price: (a: Strain) => number, [e1, e2, g]: Strain): number {
    const value = ([p, q, r]: readonly number[]): number => {
      const a: Strain = [p! * p!, q! * q! + r! * r!, p! * q!];
      return plain.energy(e1 + a[0], e2 + a[1], g + 2 * a[2]) + price(a);
    };
    let best = value([0, 0, 0]);
    for (const start of [[0.2, 0, 0.2], [0.2, 0.2, 0.01], [0.2, -0.2, 0.01]]) {
      let at = start, here = value(at);
      for (let step = 0.1; step > 1e-7; ) {
        let moved = false;
        for (const way of [[1, 0, 0], [0, 1, 0], [0, 0, 1], [1, 1, 0], [1, -1, 0], [0, 1, 1], [0, 1, -1]])
          for (const sign of [step, -step]) {
            const next = at.map((v, k) => v + sign * way[k]!);
            const there = value(next);
            if (there < here) [at, here, moved] = [next, there, true];
          }
        if (!moved) step /= 2;
      }
      best = Math.min(best, here);
    }
    return best;
  }

  test("energy is the least of the sheet's and its pleats' together", () => {
    fc.assert(
      fc.property(someLayers, someStrain, (plain, e) => {
        const law = gathering(plain, -0.04);
        const least = searched(plain, priceOf(plain, -0.04), e);
        expect(law.energy(...e)).toBeLessThan(least + 1e-9 * (1 + least));
        expect(law.energy(...e)).toBeGreaterThan(least - 1e-5 * (1e-3 + least));
      }),
      { numRuns: 30 },
    );
  });
});

test("without a limit only pull is carried: no push beyond what the share leaves", () => {
  fc.assert(
    fc.property(someNumbers, someStrain, (numbers, e) => {
      const law = gathering(new ToeLaw(numbers), 0, 0.001);
      expect(leastPrincipal(answer(law, e).stress)).toBeGreaterThan(-0.005 * Math.max(numbers.along, numbers.across));
    }),
  );
});

test("leather of goat cut along or across begins to pleat between 2.5 and 6 %", () => {
  const law: Law = gathering(new ToeLaw({ along: 40, across: 18, bias: 20, poisson: 0.4, toe: 0.02, early: 0.15 }), -0.04);
  for (const [cos, sin] of [[1, 0], [0, 1], [Math.SQRT1_2, Math.SQRT1_2]] as const) {
    const deep = (e: number) => {
      const { across, shear } = stripForce(law, cos, sin, Math.sqrt(1 + 2 * e));
      return pleatsOf(rotated(law, cos, -sin), e, across, shear);
    };
    expect(deep(-0.025)).toBe(0);
    expect(deep(-0.06)).toBeGreaterThan(0);
    expect(deep(green(0.8))).toBeGreaterThan(0.1);
  }
});

test("gathering twice is gathering once; a limit or a share that cannot be is our own mistake", () => {
  const law = gathering(linearLaw({ along: 40, across: 20, bias: 22, poisson: 0.4 }), -0.04);
  expect(gathering(law, -0.04)).toBe(law);
  for (const [limit, share] of [[0.01, 0.02], [-0.5, 0.02], [NaN, 0.02], [-0.04, 0], [-0.04, 1]] as const) expect(() => gathering(law, limit, share)).toThrow();
});
