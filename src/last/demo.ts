import type { LastMeasurements } from "./measured.ts";

/** An example: invented numbers of a women's last, EU 38, for a flat pump on a 12 mm heel. No last was measured for it. */
export const demoMeasurements: LastMeasurements = {
  side: "right",
  toe: "round",
  stickLengthMm: 253.3,
  jointGirthMm: 219,
  waistGirthMm: 213,
  instepGirthMm: 230,
  heelGirthMm: 338,
  ballWidthMm: 76.5,
  seatWidthMm: 52,
  heelHeightMm: 12,
  toeSpringMm: 9.5,
};
