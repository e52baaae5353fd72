import { chain, type Axes } from "./axes.ts";
import type { Placement } from "./last.ts";
import type { UnitGuess } from "./unit.ts";
import { scale } from "./vector.ts";

/** From a frame to the file: columns of the rotation are the frame's axes. `pose` is told in the file's unit, `stand` within the pose in mm. */
export function placementOf(pose: Axes, { unit, unitPerMm }: UnitGuess, stand: Axes): Placement {
  const { origin, x, y, z } = chain({ ...pose, origin: scale(pose.origin, 1 / unitPerMm) }, stand);
  return { unit, unitPerMm, rotation: [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]], translationMm: origin };
}
