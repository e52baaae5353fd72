import { describe, expect, test } from "vitest";
import { rotated } from "#leather/combined.ts";
import type { Law } from "#leather/law.ts";
import { neoHookean } from "#leather/neo-hookean.ts";
import { linearLaw, ToeLaw } from "#leather/toe-law.ts";
import { stripForce } from "#leather/uniaxial.ts";
import { answer } from "../support/some-leathers.ts";

const green = (stretch: number): number => (stretch * stretch - 1) / 2;
const turned = (law: Law, degrees: number): Law => rotated(law, Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180));

// Closed forms of the incompressible neo-Hookean sheet (Treloar, The Physics of Rubber Elasticity), μ = 1.
describe("rubber", () => {
  const rubber = neoHookean(1);

  test.each([[1.2, 0.5055556], [1.1, 0.2735537]])("ME-05: one way, stretched %d times: nominal λ − λ⁻²", (stretch, nominal) => {
    const { forcePerMm, width } = stripForce(rubber, 1, 0, stretch);
    expect(forcePerMm).toBeCloseTo(nominal, 7);
    expect(forcePerMm).toBeCloseTo(stretch - stretch ** -2, 12);
    expect(width).toBeCloseTo(stretch ** -0.5, 12);
  });

  test("ME-05: true stress 0.6066667 and width 0.9128709 at 1.2", () => {
    const { forcePerMm, width } = stripForce(rubber, 0.6, 0.8, 1.2);
    expect(width).toBeCloseTo(0.9128709, 7);
    expect(forcePerMm * 1.2).toBeCloseTo(0.6066667, 7); // volume kept: the section is 1/λ of what it was
  });

  test("ME-06: both ways 1.1: nominal 0.4790787, true 0.5269865, thickness 0.8264463", () => {
    const e = green(1.1);
    const { stress } = answer(rubber, [e, e, 0]);
    const nominal = 1.1 * stress[0];
    expect(nominal).toBeCloseTo(0.4790787, 7);
    expect(stress[1]).toBe(stress[0]);
    const thickness = 1 / 1.1 ** 2;
    expect(thickness).toBeCloseTo(0.8264463, 7);
    expect(nominal / (1.1 * thickness)).toBeCloseTo(0.5269865, 7);
  });

  test("ME-07: width held, 1.2: nominal 0.6212963", () => {
    expect(1.2 * answer(rubber, [green(1.2), 0, 0]).stress[0]).toBeCloseTo(0.6212963, 7);
  });

  test("ME-08: balloon: p R₀/(μ t₀) is 0.7918656 at 1.1, and 1.2394629 at its highest, λ = 7^(1/6)", () => {
    // T per lasted width is λ S / λ; Laplace: p = 2 T / (λ R₀).
    const pressure = (stretch: number) => (2 * answer(rubber, [green(stretch), green(stretch), 0]).stress[0]) / stretch;
    const top = 7 ** (1 / 6);
    expect(top).toBeCloseTo(1.3830876, 7);
    expect(pressure(1.1)).toBeCloseTo(0.7918656, 7);
    expect(pressure(top)).toBeCloseTo(1.2394629, 7);
    expect(Math.max(pressure(top - 0.01), pressure(top + 0.01))).toBeLessThan(pressure(top));
  });
});

// Jones, Mechanics of Composite Materials: E₁ 40, E₂ 20, ν₁₂ 0.4, G 8; formulas from memory, the row at 45° checked by hand.
describe("orthotropic sheet", () => {
  const bias = 4 / (1 / 40 + 1 / 20 + 1 / 8 - (2 * 0.4) / 40);
  const linear = linearLaw({ along: 40, across: 20, bias, poisson: 0.4 });
  // Its soft beginning has the same form with a tenth of the stiffness, as long as the strain is small against the toe.
  const soft = new ToeLaw({ along: 40, across: 20, bias, poisson: 0.4, toe: 0.05, early: 0.1 });

  const rows = [
    [0, 40, 0.4, 0],
    [15, 35.026659, 0.415942, NaN],
    [30, 27.118644, 0.423729, 0.469709],
    [45, 22.222222, 0.388889, 0.277778],
    [60, 20.253165, 0.316456, 0.087699],
    [75, 19.920193, 0.236552, NaN],
    [90, 20, 0.2, 0],
  ] as const;

  test("ME-09: Q11 43.4782609, Q22 21.7391304, Q12 8.6956522, Q33 8, ν21 0.2", () => {
    const { stiffness } = answer(linear, [0, 0, 0]);
    expect(stiffness[0]![0]).toBeCloseTo(43.4782609, 7);
    expect(stiffness[1]![1]).toBeCloseTo(21.7391304, 7);
    expect(stiffness[0]![1]).toBeCloseTo(8.6956522, 7);
    expect(stiffness[2]![2]).toBeCloseTo(8, 12);
    expect(stiffness[0]![2]).toBe(0);
    expect(-stripForce(linear, 0, 1, 1.01).across / green(1.01)).toBeCloseTo(0.2, 12);
  });

  test.each(rows)("ME-10 to 12: at %d° modulus %d, Poisson %d, shear coupling %d", (degrees, modulus, poisson, coupling) => {
    const angle = (degrees * Math.PI) / 180;
    for (const [law, stretch, share, digits] of [[linear, 1.08, 1, 6], [soft, 1 + 1e-8, 0.1, 4]] as const) {
      const { forcePerMm, across, shear } = stripForce(law, Math.cos(angle), Math.sin(angle), stretch);
      const e = green(stretch);
      expect(forcePerMm / stretch / e / share).toBeCloseTo(modulus, digits);
      expect(-across / e).toBeCloseTo(poisson, 6);
      if (!Number.isNaN(coupling)) expect(Math.abs(shear / e)).toBeCloseTo(coupling, 6);
    }
  });

  test.each(rows)("the law turned by −%d° gives the same modulus along its own axis 1", (degrees, modulus) => {
    expect(stripForce(turned(linear, -degrees), 1, 0, 1.1).forcePerMm / 1.1 / green(1.1)).toBeCloseTo(modulus, 6);
  });

  test("a strip at −30° goes askew the other way", () => {
    const at = (sign: number) => stripForce(linear, Math.cos(Math.PI / 6), sign * 0.5, 1.05).shear;
    expect(at(1)).toBeCloseTo(-at(-1), 14);
    expect(Math.abs(at(1))).toBeGreaterThan(0.01);
  });
});

test("ME-13 (MacNeal and Harder 1985): E 10⁶, ν 0.25, strain 10⁻³ (1, 1, 1): σ 1333.333 both ways, τ 400", () => {
  const { stress } = answer(linearLaw({ along: 1e6, across: 1e6, bias: 1e6, poisson: 0.25 }), [1e-3, 1e-3, 1e-3]);
  expect(stress[0]).toBeCloseTo(4000 / 3, 8);
  expect(stress[1]).toBeCloseTo(4000 / 3, 8);
  expect(stress[2]).toBeCloseTo(400, 8);
});
