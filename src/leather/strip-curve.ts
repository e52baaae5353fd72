import type { StripWay } from "./leather.ts";
import type { LeatherNumbers } from "./toe-law.ts";

/** Stiffness of a strip cut one way, N/mm. */
export const stiffnessOf = (numbers: LeatherNumbers, way: StripWay): number => numbers[way];

/**
 * Pull of a hanging strip, N per mm of its width as cut, at a stretch (0.1 is 10 %): λ S, with e = (λ² − 1)/2 its own Green's strain and
 * S = k e (early + (1 − early)(1 − toe/√(k e²/along + toe²))) what {@link ToeLaw} gives where all other stresses are nil.
 */
export function pullOfStrip(numbers: LeatherNumbers, way: StripWay, stretch: number): number {
  return pullAndSlope(numbers, way, stretch).pull;
}

function pullAndSlope(numbers: LeatherNumbers, way: StripWay, stretch: number): { readonly pull: number; readonly slope: number } {
  const { along, toe, early } = numbers;
  const k = stiffnessOf(numbers, way);
  const e = stretch + 0.5 * stretch * stretch;
  const r = Math.sqrt((k / along) * e * e + toe * toe);
  const soft = r > 0 ? toe / r : 0;
  const stress = k * e * (1 - (1 - early) * soft);
  // d(e (1 − soft))/de = 1 − soft³.
  const stiffness = k * (1 - (1 - early) * soft * soft * soft);
  return { pull: (1 + stretch) * stress, slope: stress + (1 + stretch) * (1 + stretch) * stiffness };
}

/**
 * Stretch of a strip under a pull in N per mm of its width. The pull grows ever steeper with the stretch, so Newton's steps from beyond
 * the answer come down to it one after the other and never past it.
 */
export function stretchOfStrip(numbers: LeatherNumbers, way: StripWay, pull: number): number {
  if (!(pull > 0)) return 0;
  // With the early stiffness alone, and no change of section, the strip would stretch more.
  let stretch = pull / (stiffnessOf(numbers, way) * numbers.early);
  for (let round = 0; round < 60; round++) {
    const at = pullAndSlope(numbers, way, stretch);
    const step = (at.pull - pull) / at.slope;
    stretch -= step;
    if (step <= 1e-14 * stretch) break;
  }
  return stretch;
}
