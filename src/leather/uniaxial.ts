import { rotated } from "./combined.ts";
import type { Law } from "./law.ts";
import type { StripWay } from "./leather.ts";
import type { LeatherNumbers } from "./toe-law.ts";

/** A strip pulled along its length, its long edges free. */
export interface PulledStrip {
  /** N per mm of flat width. */
  readonly forcePerMm: number;
  /** Distance between the long edges over the flat width: below 1 where the strip gets narrower, 0 where the law leaves it no width at all. */
  readonly width: number;
  /** Green's strain across the strip, and twice its shear strain: a strip cut at an angle goes askew. */
  readonly across: number;
  readonly shear: number;
}

/**
 * Force in a strip of any law that is cut in the direction (cos, sin) of the law's axes and stretched; nothing pulls across it.
 * @param stretch length over flat length, above 0: 1.05 is 5 % longer; below 1 the strip is pushed together without bending
 */
export function stripForce(law: Law, cos: number, sin: number, stretch: number): PulledStrip {
  const own = rotated(law, cos, -sin);
  const e1 = (stretch * stretch - 1) / 2;
  const out = new Float64Array(9);
  // From the first answer of the unstretched sheet, by Newton's method; a step must bring the stresses or the energy down.
  own.into(out, 0, 0, 0);
  let [across, shear] = freeStep(out, out[6]! * e1, out[7]! * e1);
  if (!Number.isFinite(own.energy(e1, across, shear))) [across, shear] = [(1 / stretch - 1) / 2, 0]; // keeps the volume
  own.into(out, e1, across, shear);
  for (let step = 0; step < 80; step++) {
    const rest = out[1]! * out[1]! + out[2]! * out[2]!;
    const [d2, d3] = freeStep(out, out[1]!, out[2]!);
    const before = own.energy(e1, across, shear);
    let t = 1;
    for (; ; t /= 2) {
      own.into(out, e1, across + t * d2, shear + t * d3);
      if (out[1]! * out[1]! + out[2]! * out[2]! < 0.5 * rest || own.energy(e1, across + t * d2, shear + t * d3) < before || t < 1e-6) break;
    }
    across += t * d2;
    shear += t * d3;
    if (Math.abs(d2) + Math.abs(d3) <= 1e-12) break;
  }
  const area = Math.sqrt(Math.max(stretch * stretch * (1 + 2 * across) - shear * shear, 0));
  return { forcePerMm: stretch * out[0]!, width: area / stretch, across, shear };
}

/** The step in (e2, g) that undoes the stresses r2 and r3. */
function freeStep(out: Float64Array, r2: number, r3: number): [number, number] {
  const d22 = out[4]!, d33 = out[5]!, d23 = out[8]!;
  const det = d22 * d33 - d23 * d23;
  return [(d23 * r3 - d33 * r2) / det, (d23 * r2 - d22 * r3) / det];
}

/** Stress in a strip of the toe law at Green's strain e and its derivative: k_w e (early + late (1 − toe/√(k_w/k e² + toe²))). */
function strip(numbers: LeatherNumbers, way: StripWay, e: number): [stress: number, slope: number] {
  const { along, toe, early } = numbers;
  const stiff = numbers[way];
  const root = Math.sqrt((stiff / along) * e * e + toe * toe);
  const soft = root > 0 ? (1 - early) * (toe / root) : 0;
  return [stiff * e * (1 - soft), stiff * (1 - soft) + stiff * soft * ((stiff / along) * (e / root) * (e / root) || 0)];
}

/**
 * Length over flat length of a strip under a load: 1.05 is 5 % longer. The curve of {@link stripForce} for the toe law in closed form, run
 * back by Newton's method between bounds.
 * @param forcePerMm N per mm of flat width, 0 or above
 */
export function stretchAt(numbers: LeatherNumbers, way: StripWay, forcePerMm: number): number {
  let low = 0, high = forcePerMm / (numbers.early * numbers[way]);
  let e = Math.min(high, forcePerMm / numbers[way] + numbers.toe);
  for (let step = 0; step < 200; step++) {
    const stretch = Math.sqrt(1 + 2 * e);
    const [stress, slope] = strip(numbers, way, e);
    const over = stretch * stress - forcePerMm;
    if (over > 0) high = e;
    else low = e;
    const next = e - over / (stretch * slope + stress / stretch);
    const to = next > low && next < high ? next : (low + high) / 2;
    const moved = Math.abs(to - e);
    e = to;
    if (moved <= 1e-16 + 1e-15 * e) break;
  }
  return Math.sqrt(1 + 2 * e);
}
