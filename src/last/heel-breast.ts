import type { Last } from "./last.ts";

/** Where the heel's breast lies, as a share of the length: the heel is a quarter of it long (trade glossaries: of the last's bottom length). */
export const breastShare = 0.25;

/** Where along the axis the heel's breast lies, mm in the last's frame. */
export const heelBreastX = ({ landmarks: { seatPoint, toePoint } }: Pick<Last, "landmarks">): number => seatPoint[0] + breastShare * (toePoint[0] - seatPoint[0]);
