import { finding, type Finding } from "#base/findings.ts";
import { drawnMet, stillPlan, type Drawing } from "./loft-drawn.ts";
import { drawnWords } from "./loft-drawn-girths.ts";
import { backSpans, drawnSpans, toeWall, type DrawnProfile, type LoftNumbers } from "./loft-numbers.ts";
import { LoftShape } from "./loft-shape.ts";
import { planSilhouette, sideSilhouette } from "./loft-silhouette.ts";
import type { LastMeasurements } from "./measured.ts";
import { drawnComb } from "./outline-comb.ts";
import { outlineLeft, type OutlineLeft } from "./outline-left.ts";
import type { ReadOutlines } from "./outline-read.ts";

/** Rounds that bring a usual form to drawn outlines. */
const rounds = 10;

/** The planned form brought to drawn outlines, its girths not yet met. */
export function drawnNumbers(planned: LoftNumbers, m: LastMeasurements, drawing: Drawing): LoftNumbers {
  const begun: LoftNumbers = {
    ...planned,
    ...(drawing.plan && { plan: stillPlan() }),
    ...(drawing.profile && { profile: stillProfile(planned, m, drawing.profile) }),
  };
  return drawnMet(begun, m, drawing, rounds);
}

function stillProfile(planned: LoftNumbers, m: LastMeasurements, drawn: NonNullable<Drawing["profile"]>): DrawnProfile {
  const { heelBulge, combFront } = new LoftShape(planned);
  const comb = drawnComb(drawn, combFront);
  return {
    ridge: new Float64Array(drawnSpans + 3),
    feather: new Float64Array(drawnSpans + 3),
    back: new Float64Array(backSpans + 3),
    backHeightMm: drawn.highAt(0.08 * drawn.to) - m.heelHeightMm,
    combHeightMm: comb.heightMm + comb.slope * heelBulge,
    combSlope: comb.slope,
    toeOverhangMm: toeWall.overhang,
  };
}

/** Above this, mm, the root mean square left says that outline and measures do not go together. */
const followed = 0.3;

/** What to expect of the surface between the drawn lines, mm: mean and worst on synthetic lasts, docs/method/loft.md. */
const expected = { both: [1.5, 6], one: [2, 9] } as const;

/** How well the outlines are followed, and what that is worth. */
export function drawnFindings(read: ReadOutlines, shape: LoftShape): readonly Finding[] {
  const out = [...read.findings];
  const { bottom, side } = read;
  if (bottom) out.push(left("bottom", outlineLeft(bottom, planSilhouette(shape))));
  if (side) out.push(left("side", outlineLeft(side, sideSilhouette(shape))));
  const [typicalMm, worstMm] = bottom && side ? expected.both : expected.one;
  return [...out, finding("shape-from-outlines", { outlines: drawnWords(read.drawing), typicalMm, worstMm })];
}

const left = (which: string, off: OutlineLeft): Finding => finding(off.rmsMm > followed ? "outline-left" : "outline-followed", { which, ...off });
