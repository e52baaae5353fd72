import fc from "fast-check";
import { rotated, sumOf } from "#leather/combined.ts";
import type { Law } from "#leather/law.ts";
import { ToeLaw, type LeatherNumbers } from "#leather/toe-law.ts";

/** Steps of 1e-5: no numbers so small that their squares vanish. */
const share = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min: Math.round(min * 1e5), max: Math.round(max * 1e5) }).map((n) => n / 1e5);

/** Leathers of our own invention that are possible: stiffness, toe and Poisson ratio over a wide range, the bias given by a shear stiffness. */
export const someNumbers: fc.Arbitrary<LeatherNumbers> = fc
  .record({
    along: share(5, 100),
    ratio: share(0.15, 1.2),
    shear: share(0.05, 0.6),
    poisson: share(0, 0.85),
    toe: fc.oneof(share(0.001, 0.12), fc.constant(0)),
    early: share(0.05, 1),
  })
  .map(({ along, ratio, shear, poisson, toe, early }) => {
    const across = along * ratio;
    return { along, across, bias: 4 / (1 / along + 1 / across + 1 / (shear * along) - (2 * poisson) / along), poisson, toe, early };
  });

export const someAngle = share(-3.14159, 3.14159);

/** Two layers, each turned by itself. */
export const someLayers: fc.Arbitrary<Law> = fc
  .tuple(someNumbers, someNumbers, someAngle, someAngle)
  .map(([upper, lining, a, b]) => sumOf([rotated(new ToeLaw(upper), Math.cos(a), Math.sin(a)), rotated(new ToeLaw(lining), Math.cos(b), Math.sin(b))]));

const part = share(-0.25, 0.35);
/** Green's strain (e1, e2, g) up to a quarter pushed together and 30 % stretched. */
export const someStrain: fc.Arbitrary<readonly [number, number, number]> = fc.tuple(part, part, share(-0.3, 0.3));

/** Stress (S₁₁, S₂₂, S₁₂), and stiffness as a full matrix. */
export function answer(law: Law, [e1, e2, g]: readonly [number, number, number]): { stress: [number, number, number]; stiffness: number[][] } {
  const o = new Float64Array(9);
  law.into(o, e1, e2, g);
  return { stress: [o[0]!, o[1]!, o[2]!], stiffness: [[o[3]!, o[6]!, o[7]!], [o[6]!, o[4]!, o[8]!], [o[7]!, o[8]!, o[5]!]] };
}

/** (e1, e2, g) in axes that are turned by the angle, counter-clockwise, by the tensor itself. */
export function turnedStrain([e1, e2, g]: readonly [number, number, number], angle: number): [number, number, number] {
  const c = Math.cos(angle), s = Math.sin(angle);
  const [a, b] = [[c, s], [-s, c]] as const;
  const between = (u: readonly number[], v: readonly number[]): number => u[0]! * (e1 * v[0]! + (g / 2) * v[1]!) + u[1]! * ((g / 2) * v[0]! + e2 * v[1]!);
  return [between(a, a), between(b, b), 2 * between(a, b)];
}

/** Lesser principal value of the tensor (t11, t22, t12). */
export const leastPrincipal = ([a, b, c]: readonly [number, number, number]): number => (a + b) / 2 - Math.hypot((a - b) / 2, c);
