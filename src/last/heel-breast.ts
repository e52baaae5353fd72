import type { Last } from "./last.ts";

/** The heel is a quarter of the length long (trade glossaries: a quarter of the last's bottom length). */
export const heelShare = 0.25;

/** Where along the axis the heel's breast lies, mm in the last's frame. */
export const heelBreastX = ({ landmarks: { seatPoint, toePoint } }: Pick<Last, "landmarks">): number => seatPoint[0] + heelShare * (toePoint[0] - seatPoint[0]);
