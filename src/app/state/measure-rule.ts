import { Refusal } from "#base/refusal.ts";
import type { LastMeasurements } from "#last/measured.ts";
import { completeMeasures, sizeOfStick } from "#last/measures-by-size.ts";
import type { MeasureKey } from "./spot.ts";

/** What the rules of the size say for one measure beside the others, mm; nothing for the one that tells the size, or where the size is none. */
export function ruleFor(key: MeasureKey, measures: LastMeasurements): number | undefined {
  if (key === "stickLengthMm") return undefined;
  const { [key]: _, ...others } = measures;
  try {
    return completeMeasures(others).measures[key];
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

/** The EU size that a stick length stands for, the point of its toe left out, to the half size. */
export const halfSizeOf = ({ stickLengthMm, toe }: Pick<LastMeasurements, "stickLengthMm" | "toe">): number => Math.round(2 * sizeOfStick(stickLengthMm, toe)) / 2;

/** The same as it is written on the pieces. */
export const sizeWords = (measures: Pick<LastMeasurements, "stickLengthMm" | "toe">): string => `EU ${halfSizeOf(measures)}`;
