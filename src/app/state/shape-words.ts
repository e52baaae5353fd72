import type { LastDescription } from "#last/describe.ts";
import { mm, percent, say } from "./numbers.ts";

/** How far behind the toe point its height is told, mm: there the toe of an upper has its room. */
const behindMm = 10;

/** The shape of a last in one sentence, for one who has it in her hand: pitch, joints, toe. */
export function shapeWords({ heelPitchMm, heelPitchDegrees, jointMedialShare, jointLateralShare, toeHeights }: LastDescription): string {
  const toe = toeHeights.find((t) => t.behindMm === behindMm);
  const pitch = Math.abs(heelPitchMm) < 0.5 ? "Seat and tread are level" : `The seat stands ${mm(heelPitchMm)} above the tread (${say(heelPitchDegrees, 0)}°)`;
  const joints = `the joints lie at ${percent(jointMedialShare, 0)} of the length on the inner side and ${percent(jointLateralShare, 0)} on the outer`;
  return toe && Number.isFinite(toe.heightMm) ? `${pitch}, ${joints}, and the toe is ${mm(toe.heightMm)} high ${mm(behindMm)} behind its point.` : `${pitch}, and ${joints}.`;
}
