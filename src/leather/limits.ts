import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { KnownLeather } from "./leather.ts";

/** Ball-burst test of ISO 3379 and IUP 9: clear width of the ring that holds the leather, mm. */
export const burstRingMm = 25;

/**
 * Mean stretch along the radius of leather in a ring whose middle is pushed up by a ball, as a share: the way up the cone from the ring
 * to its tip, over the ring's radius. The ball rounds the tip, so that at the ball leather is stretched more than this.
 * @param distension height of the tip, mm
 */
export function burstStretch(distension: number): number {
  const slope = distension / (burstRingMm / 2);
  return Math.sqrt(1 + slope * slope) - 1;
}

/**
 * Stretch, as a share, above which the grain of a leather may crack whose grain cracked at this distension in the ball-burst test. On a
 * last leather is stretched in two ways as in the test, so the mean along the radius is taken as it is.
 * @param distension mm
 * @throws Refusal `leather-distension` outside 1 to 25 mm
 */
export function grainLimitFrom(distension: number): number {
  if (!(distension >= 1 && distension <= 25)) throw new Refusal(finding("leather-distension", { mm: distension }));
  return burstStretch(distension);
}

/** How much longer than unloaded, as a share (ISO 3376). */
export function elongation(gaugeMm: number, lengthMm: number): number {
  return lengthMm / gaugeMm - 1;
}

/**
 * Height in mm at which the grain usually cracks in the ball-burst test. 7.0 mm is the least that is asked of upper leather; how far a
 * kind lies above it is from memory.
 */
const usualDistension: Readonly<Record<KnownLeather, number>> = { goat: 8, calf: 7.5, nappa: 9, cow: 7.5, pig: 8, "lining goat": 8 };

/** Stretch, as a share, above which the grain of a leather of this kind may crack. */
export function grainLimitOf(known: KnownLeather): number {
  return grainLimitFrom(usualDistension[known]);
}
