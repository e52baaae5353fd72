import type { JointRule } from "./half.ts";
import type { TapedBottom } from "./taped-shell.ts";

/**
 * How much farther a place between seat and joint lies along a flat feather edge than along the bottom's: a flat edge without slits
 * is longer, mostly at the toe, and behind the joint by half of the share (on the example pair and on clean lasts within 3 mm; our
 * own rule).
 */
export const heelShare = (featherMm: number, bottomMm: number): number => 1 + (featherMm / bottomMm - 1) / 2;

/** The joint point by the traced bottom. */
export const jointFromBottom = ({ halves }: TapedBottom): JointRule => (half, featherMm) => ({ fromSeat: halves[half].toJoint * heelShare(featherMm, halves[half].toToe), how: "found" });

/** Where joint points usually lie along either half, from the seat point, as a share of the edge (clean lasts: 0.70 to 0.73 and 0.62 to 0.66). */
const usualJoints = { medial: 0.715, lateral: 0.64 } as const;

/** The joint point where no bottom was traced. */
export const usualJoint: JointRule = (half, featherMm) => ({ fromSeat: usualJoints[half] * featherMm, how: "estimated" });
