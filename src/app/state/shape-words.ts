import type { LastDescription } from "#last/describe.ts";
import { mm, percent, say } from "./numbers.ts";

/** How far behind the toe point its height is told, mm: there the toe of an upper has its room. */
const behindMm = 10;

/** The shape of a last in one sentence, for one who has it in her hand: pitch, joints, back, toe. */
export function shapeWords({ heelPitchMm, heelPitchDegrees, jointMedialShare, jointLateralShare, heelCurve, toeHeights }: LastDescription): string {
  const toe = toeHeights.find((t) => t.behindMm === behindMm);
  const pitch = Math.abs(heelPitchMm) < 0.5 ? "seat and tread are level" : `the seat stands ${mm(heelPitchMm)} above the tread, a slope of ${say(heelPitchDegrees, 0)}°`;
  const parts = [
    pitch,
    `the inner joint lies at ${percent(jointMedialShare, 0)} of the length from the heel, the outer at ${percent(jointLateralShare, 0)}`,
    `the back stands out ${mm(heelCurve.bulgeMm)} behind the seat, ${mm(heelCurve.bulgeHeightMm, 0)} up`,
    ...(toe && Number.isFinite(toe.heightMm) ? [`the toe is ${mm(toe.heightMm)} high ${mm(behindMm)} behind its point`] : []),
  ];
  return `Its shape: ${parts.slice(0, -1).join("; ")}; and ${parts.at(-1)}.`;
}
