import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { LastMeasurements, ToeShape } from "./measured.ts";

export type MeasureKey = Exclude<keyof LastMeasurements, "side" | "toe">;

/** What a maker says of a last to be made: a size or a stick length at least; all else may be left out. */
export interface SaidMeasures extends Partial<LastMeasurements> {
  /** EU size: two thirds of a centimetre a size (Paris point), from zero. */
  readonly sizeEu?: number;
  /** Fitting: joint girth is 5 mm times size and fitting together; 6 where left out (medium). */
  readonly fitting?: number;
}

export interface CompletedMeasures {
  readonly measures: LastMeasurements;
  /** The size the rules were taken at: said, or told from the stick length. */
  readonly sizeEu: number;
  readonly fitting: number;
  /** The numbers that were not said and are taken from the size, in the order they are asked for. */
  readonly taken: readonly MeasureKey[];
}

export const measureKeys: readonly MeasureKey[] = [
  "stickLengthMm",
  "jointGirthMm",
  "waistGirthMm",
  "instepGirthMm",
  "heelGirthMm",
  "ballWidthMm",
  "seatWidthMm",
  "heelHeightMm",
  "toeSpringMm",
];

/** What the point of a made last's toe adds to its length, mm: measured on our own forms as in nominal-size.ts, no source. */
const pointOf = (toe: ToeShape): number => (toe === "pointed" ? 9.5 : toe === "almond" ? 3.5 : 0);

export const stickOfSize = (sizeEu: number, toe: ToeShape = "round"): number => (20 * sizeEu) / 3 + pointOf(toe);
export const sizeOfStick = (stickMm: number, toe: ToeShape = "round"): number => (3 * (stickMm - pointOf(toe))) / 20;

/**
 * Completes what a maker said by rules of the size, each from the numbers said where they bear on it: women's low-heel lasts. Stick
 * length 20/3 mm a size (Paris point, ISO/TS 19407:2015), and on a pointed toe the point. Joint girth 5 · (size + fitting) (common
 * practice, no source), instep 10 more (Golding 1902: 9.5); ball 76.5 and seat 52 mm at EU 38,
 * 1.65 and 1 mm a size (from memory), the ball a third of what the joint girth departs (US practice). Waist (7 less
 * than the joint) and heel girth (338 mm at EU 38, 7.4 a size; the point more, for a made last grows as a whole) are our own, no source. Heel 12 and toe spring 9 mm lie within the usual.
 * @throws Refusal when neither size nor stick length is said, or one of them is no number
 */
export function completeMeasures(said: SaidMeasures): CompletedMeasures {
  const toe = said.toe ?? "round";
  const sizeEu = said.sizeEu ?? (said.stickLengthMm === undefined ? undefined : sizeOfStick(said.stickLengthMm, toe));
  if (sizeEu === undefined) throw new Refusal(finding("measures-need-size", {}));
  if (!(sizeEu >= 28 && sizeEu <= 48)) throw new Refusal(finding("size-out-of-range", { sizeEu }));
  const fitting = said.fitting ?? 6;
  if (!(fitting >= 2 && fitting <= 11)) throw new Refusal(finding("fitting-out-of-range", { fitting }));
  const medium = 5 * (sizeEu + 6);
  const joint = said.jointGirthMm ?? 5 * (sizeEu + fitting);
  const instep = said.instepGirthMm ?? joint + 10;
  const ruled: Record<MeasureKey, number> = {
    stickLengthMm: stickOfSize(sizeEu, toe),
    jointGirthMm: joint,
    waistGirthMm: joint - 7,
    instepGirthMm: instep,
    heelGirthMm: 338 + 7.4 * (sizeEu - 38) + 0.8 * (instep - medium - 10) + pointOf(toe),
    ballWidthMm: 76.5 + 1.65 * (sizeEu - 38) + (joint - medium) / 3,
    seatWidthMm: 52 + (sizeEu - 38),
    heelHeightMm: 12,
    toeSpringMm: 9,
  };
  const taken = measureKeys.filter((key) => said[key] === undefined);
  const numbers = Object.fromEntries(measureKeys.map((key) => [key, said[key] ?? round(ruled[key])])) as Record<MeasureKey, number>;
  return { measures: { side: said.side ?? "right", toe, ...numbers }, sizeEu, fitting, taken };
}

/** To a tenth of a millimetre, finer than any last is measured. */
const round = (mm: number): number => Math.round(10 * mm) / 10;
