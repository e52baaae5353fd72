import { describe, expect, test } from "vitest";
import { gathering } from "#leather/gathering.ts";
import type { Law } from "#leather/law.ts";
import { neoHookean } from "#leather/neo-hookean.ts";
import { linearLaw, ToeLaw } from "#leather/toe-law.ts";
import { capOfFlat, flatOfCap } from "../support/cap-bvp.ts";

// The one-dimensional truth that the solvers are held to, itself held to closed forms and to another one-dimensional solution.

const even = linearLaw({ along: 40, across: 40, bias: 40, poisson: 0.3 });
const goat = new ToeLaw({ along: 40, across: 18, bias: 20, poisson: 0.4, toe: 0.02, early: 0.15 });
const base = { radial: "first", R: 40, pull: 0 } as const;

/**
 * The energy that the flattening uses, w(σ₁) + w(σ₂) − 4 with w(σ) = σ² + σ⁻² per area on the last and σ = 1/λ, as a law: λ₁ λ₂ as much per
 * flat area. Only for strains without shear.
 */
const dirichlet: Law = {
  energy(e1, e2) {
    const [a, b] = [Math.sqrt(1 + 2 * e1), Math.sqrt(1 + 2 * e2)];
    return a * b * (a * a + 1 / (a * a) + b * b + 1 / (b * b) - 4);
  },
  into(out, e1, e2) {
    const [a, b] = [Math.sqrt(1 + 2 * e1), Math.sqrt(1 + 2 * e2)];
    const slope = (x: number, y: number) => y * (3 * x * x - 1 / (x * x) + y * y + 1 / (y * y) - 4);
    out[0] = slope(a, b) / a;
    out[1] = slope(b, a) / b;
    out[3] = (b * (6 * a + 2 / a ** 3) - out[0]) / (a * a);
    out[4] = (a * (6 * b + 2 / b ** 3) - out[1]) / (b * b);
  },
};

describe("flat sheet of a cap", () => {
  // Radii from an earlier, variational solution with another method (test/flatten/flatten-cap.test.ts).
  test.each([[30, 20.707517], [45, 30.629267], [60, 40.058174], [80, 51.64204]])("%d° with the flattening's energy: radius %d", (degrees, radius) => {
    // The flat shape of least energy is not the one without pull: taking in more sheet at the rim costs its energy, so that there
    // T₁ = W/(λ₁ λ₂) (the sheet's own force on its rim, Eshelby).
    const alpha = (degrees * Math.PI) / 180;
    let pull = 0, found = flatOfCap({ ...base, law: dirichlet, alpha });
    for (let i = 0; i < 60; i++) {
      const { along, round } = found.at(alpha);
      const next = dirichlet.energy((along * along - 1) / 2, (round * round - 1) / 2, 0) / (along * round);
      if (Math.abs(next - pull) < 1e-9) break;
      pull = next;
      found = flatOfCap({ ...base, law: dirichlet, alpha, pull });
    }
    expect(Math.abs(found.radius - radius)).toBeLessThan(2e-6);
  });

  test("a shallow cap of small strains: radius and stress by hand", () => {
    // e₁ = u′, e₂ = u/r − a r² with a = 1/(6R²): u = A r + c r³, c = a (3ν − 1)/8; rim free: A (1 + ν) = (ν a − c (3 + ν)) r₀².
    const [R, nu, k, r0] = [40, 0.3, 40, 0.5];
    const a = 1 / (6 * R * R), c = (a * (3 * nu - 1)) / 8;
    const A = ((nu * a - c * (3 + nu)) * r0 * r0) / (1 + nu);
    const { alpha, at } = capOfFlat({ ...base, law: even, r0 });
    const u = A * r0 + c * r0 ** 3;
    expect(Math.abs(alpha * R - r0 - u)).toBeLessThan(1e-3 * Math.abs(u));
    const t = (k / (1 - nu)) * A;
    expect(Math.abs(at(0.01).t1 - t)).toBeLessThan(2e-3 * t);
    const hoop = (k / (1 - nu * nu)) * (A + (c - a) * r0 * r0 + nu * (A + 3 * c * r0 * r0));
    expect(Math.abs(at(r0).t2 - hoop)).toBeLessThan(2e-3 * Math.abs(hoop));
  });

  test("cannot have less than Milnor's ratio of stretches: α/sin α over the whole (1969)", () => {
    for (const law of [even, neoHookean(10), gathering(even, -0.02)])
      for (const alpha of [0.5, 1]) {
        const { at } = flatOfCap({ ...base, law, alpha });
        const stretches = Array.from({ length: 21 }, (_, i) => at(Math.max(0.001, (alpha * i) / 20))).flatMap(({ along, round }) => [along, round]);
        expect(Math.max(...stretches) / Math.min(...stretches)).toBeGreaterThanOrEqual(alpha / Math.sin(alpha) - 1e-9);
      }
  });

  test("holds the forces on any cap cut out of it in balance, and presses with (T₁ + T₂)/R", () => {
    // Pull along the axis: 2πR sin θ · T₁ · sin θ downward is what pressure puts on the cap: ∫ p cos φ dA.
    const { at } = flatOfCap({ ...base, law: goat, radial: "second", core: { to: 0.2, law: even }, alpha: 1, pull: 2 });
    const theta = 0.9, n = 150;
    let push = 0;
    for (let i = 0; i < n; i++) {
      const phi = (theta * (i + 0.5)) / n;
      push += at(Math.max(phi, 1.01e-4)).pressure * Math.cos(phi) * 2 * Math.PI * 40 * 40 * Math.sin(phi) * (theta / n);
    }
    const { t1 } = at(theta);
    expect(Math.abs(push / (2 * Math.PI * 40 * Math.sin(theta) ** 2 * t1) - 1)).toBeLessThan(2e-4);
  });

  test("laid on the ball again it becomes the cap it was made from, with any law, core or hole, to 1e-9", () => {
    for (const [law, core, hole] of [
      [even, undefined, undefined],
      [neoHookean(10), undefined, undefined],
      [gathering(even, -0.01), undefined, undefined],
      [gathering(goat, -0.04), { to: 0.15, law: even }, undefined],
      [goat, undefined, { at: 0.2, pull: 0 }],
      [goat, undefined, { at: 0.2, stretch: 1.04 }],
    ] as const)
      for (const radial of ["first", "second"] as const) {
        const asked = { law, radial, R: 40, pull: 1.5 };
        const flat = flatOfCap({ ...asked, ...(core && { core }), ...(hole && { hole }), alpha: 0.9 });
        const round = capOfFlat({
          ...asked,
          ...(core && { core: { ...core, to: flat.at(core.to).radius } }),
          ...(hole && { hole: { ...hole, at: flat.at(hole.at).radius } }),
          r0: flat.radius,
        });
        expect(Math.abs(round.alpha - 0.9)).toBeLessThan(1e-9);
        const middle = flat.at(0.5);
        expect(Math.abs(round.at(middle.radius).theta - 0.5)).toBeLessThan(1e-9);
        expect(round.at(flat.radius).t1).toBeCloseTo(1.5, 9);
      }
  });
});

describe("a sheet on a ball so large that it stays flat", () => {
  const R = 1e6;

  test("ME-06: rubber pulled alike all round by the nominal 0.4790787 is stretched 1.1 times everywhere; p = 2T/R (ME-04)", () => {
    const { alpha, at } = capOfFlat({ law: neoHookean(1), radial: "first", R, pull: 1.1 - 1.1 ** -5, pullPer: "flat", r0: 30 });
    expect((alpha * R) / 30).toBeCloseTo(1.1, 7);
    expect(at(10).along).toBeCloseTo(1.1, 7);
    expect(at(10).round).toBeCloseTo(1.1, 7);
    expect(at(10).pressure * R).toBeCloseTo(2 * at(10).t1, 9);
  });

  // Lekhnitskii, Anisotropic Plates (from memory): σr = C (r^(k−1) − a^2k r^(−k−1)), σt = k C (r^(k−1) + a^2k r^(−k−1)), k = √(Eₜ/Eᵣ).
  test.each(["first", "second"] as const)("a ring stiffer one way, axis along the radius: %s: stress at the hole", (radial) => {
    const ortho = linearLaw({ along: 40, across: 20, bias: 22, poisson: 0.4 });
    const [a, b, p] = [10, 30, 1e-4];
    const k = Math.sqrt(radial === "first" ? 20 / 40 : 40 / 20);
    const C = p / (b ** (k - 1) * (1 - (a / b) ** (2 * k)));
    const { at } = flatOfCap({ law: ortho, radial, R, pull: p, hole: { at: a / R }, alpha: b / R });
    expect(at(a / R).t2 / (2 * k * C * a ** (k - 1))).toBeCloseTo(1, 4);
    const r = 20;
    expect(at(r / R).t1 / (C * (r ** (k - 1) - a ** (2 * k) * r ** (-k - 1)))).toBeCloseTo(1, 4);
    expect(at(r / R).t2 / (k * C * (r ** (k - 1) + a ** (2 * k) * r ** (-k - 1)))).toBeCloseTo(1, 4);
  });

  test("a small hole in an even sheet doubles the stress (Lamé): 2/(1 − (a/b)²)", () => {
    const { at } = flatOfCap({ law: even, radial: "first", R, pull: 1e-4, hole: { at: 5 / R }, alpha: 40 / R });
    expect(at(5 / R).t2 / 1e-4).toBeCloseTo(2 / (1 - (5 / 40) ** 2), 3);
  });
});

test("a law stiffer round than along is refused at the pole, where its stretches have no bound", () => {
  expect(() => flatOfCap({ ...base, law: goat, alpha: 0.5 })).toThrow(/core or a hole/);
  expect(() => capOfFlat({ ...base, law: goat, r0: 20 })).toThrow(/core or a hole/);
});
