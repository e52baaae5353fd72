import type { LandmarkName } from "#last/said.ts";

/** What the points of a last are called on the page, in the order in which they are met from toe to heel. */
export const pointNames: Readonly<Record<LandmarkName, string>> = {
  toePoint: "toe point",
  jointMedial: "joint, inner",
  jointLateral: "joint, outer",
  treadPoint: "tread point",
  vampPoint: "vamp point",
  waistPoint: "waist point",
  instepPoint: "instep point",
  seatMedial: "seat, inner",
  seatLateral: "seat, outer",
  counterPoint: "counter point",
  seatPoint: "seat point",
};
export const pointKeys = Object.keys(pointNames) as LandmarkName[];
