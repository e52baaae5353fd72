import { onPlane, type SheetJoint } from "./fit-placing.ts";
import { lightAt, type Grey } from "./grey.ts";
import { toPicture, type Placing } from "./placing.ts";
import { squareMm } from "./card.ts";
import type { SeenCorner } from "./see-card.ts";

/** How far to either side of an edge is looked, and the step, mm: the white beside a black square is 1.15 mm wide. */
const reachMm = 1.1;
const stepMm = 0.05;

/**
 * How soft the picture is: standard deviation, in mm on the card, of the blur that turned the card's sharp edges into what is
 * seen. From the mean profile across all edges between two neighbouring corners: a normal distribution has half its weight
 * within 1.349 standard deviations.
 */
export function softnessMm(grey: Grey, corners: readonly SeenCorner[], placing: Placing, joint: SheetJoint): number {
  const steps = Math.round((2 * reachMm) / stepMm) + 1;
  const sum = new Float64Array(steps);
  let edges = 0;
  const seen = new Set(corners.map((c) => `${c.half} ${c.xMm} ${c.yMm}`));
  for (const { half, xMm, yMm } of corners) {
    for (const along of [0, 1]) {
      if (!seen.has(`${half} ${xMm + (along === 0 ? squareMm : 0)} ${yMm + (along === 1 ? squareMm : 0)}`)) continue;
      const profile = Float64Array.from({ length: steps }, (_, k) => {
        const t = k * stepMm - reachMm;
        const spot = { half, xMm: xMm + (along === 0 ? squareMm / 2 : t), yMm: yMm + (along === 1 ? squareMm / 2 : t) };
        const [px, py] = toPicture(placing, ...onPlane(spot, joint));
        return lightAt(grey, px, py);
      });
      const [a, b] = [mean(profile, 0, 4), mean(profile, steps - 4, steps)];
      if (Math.abs(b - a) < 0.05) continue;
      for (let k = 0; k < steps; k++) sum[k] = sum[k]! + (profile[a < b ? k : steps - 1 - k]! - Math.min(a, b)) / Math.abs(b - a);
      edges++;
    }
  }
  if (edges === 0) return Infinity;
  const crossing = (level: number): number => {
    const at = sum.findIndex((v) => v / edges >= level);
    if (at <= 0) return 0;
    const [v0, v1] = [sum[at - 1]! / edges, sum[at]! / edges];
    return (at - 1 + (level - v0) / (v1 - v0)) * stepMm;
  };
  return (crossing(0.75) - crossing(0.25)) / 1.349;
}

function mean(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum / (to - from);
}
