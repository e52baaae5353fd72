import { medialSign, type Last, type Point3 } from "#last/last.ts";

/** Inner or outer, as said of the shoe. */
function flankOf(last: Last, p: Point3): "inner side" | "outer side" | "centre" {
  const y = p[1] * medialSign(last.side);
  return y > 4 ? "inner side" : y < -4 ? "outer side" : "centre";
}

/**
 * Where a point lies along the last, in words. The borders are shares of the length from the heel: the heel reaches to a
 * quarter, the waist to the hollow before the joint, the joint to a little before the toe (handbook of the trade: joint at 0.7).
 */
function stretchOfLength(last: Last, p: Point3): string {
  const from = last.landmarks.seatPoint[0];
  const share = (p[0] - from) / (last.landmarks.toePoint[0] - from);
  if (share < 0.1) return "at the back of the heel";
  if (share < 0.28) return "at the heel";
  if (share < 0.58) return "at the waist";
  if (share < 0.78) return "at the joint";
  if (share < 0.93) return "before the joint";
  return "at the toe";
}

/** Whole sentence part: "on the inner side, at the waist". */
export function placeOf(last: Last, p: Point3): string {
  const flank = flankOf(last, p);
  return `${flank === "centre" ? "on the centre" : `on the ${flank}`}, ${stretchOfLength(last, p)}`;
}
