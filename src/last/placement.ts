import { chain, type Axes } from "./axes.ts";
import type { Placement, Point3 } from "./last.ts";
import type { UnitGuess } from "./unit.ts";
import { scale } from "./vector.ts";

/** From a frame to the file: columns of the rotation are the frame's axes. `pose` is told in the file's unit, `stand` within the pose in mm. */
export function placementOf(pose: Axes, { unit, unitPerMm }: UnitGuess, stand: Axes): Placement {
  const { origin, x, y, z } = chain({ ...pose, origin: scale(pose.origin, 1 / unitPerMm) }, stand);
  return { unit, unitPerMm, rotation: [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]], translationMm: origin };
}

/** A point of the file taken into the frame, mm: the inverse of what {@link Placement} tells. */
export function intoPlacement({ unitPerMm, rotation: r, translationMm: t }: Placement, p: Point3): Point3 {
  const [x, y, z] = [p[0] / unitPerMm - t[0], p[1] / unitPerMm - t[1], p[2] / unitPerMm - t[2]];
  const along = (k: number): number => r[k]! * x + r[3 + k]! * y + r[6 + k]! * z;
  return [along(0), along(1), along(2)];
}
