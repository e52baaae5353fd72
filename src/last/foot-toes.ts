import type { Sectioner } from "#mesh/section.ts";
import type { Point3 } from "./last.ts";

/** Steps across the foot at which its front is sought, mm. */
const stepMm = 0.5;
/** Between two toes the front falls back by at least this, seen along their rows, mm. */
const notchMm = 0.25;

/** Square to the row of the small toes: turned outward by 50 degrees from straight ahead. */
const acrossRow = [0.643, 0.766] as const;
/** 25 degrees. */
const between = [0.906, 0.423] as const;

/**
 * Tips of the toes, from the big toe outward, where all five show in the front of the foot seen from above; else undefined. Each toe
 * is a stretch of the front that stands out between two notches; its tip is its farthest place square to the row; straight ahead for
 * the big toe, half way between for the second.
 * @param outward +1 when the little toe is toward +y
 */
export function toeTips(cutter: Sectioner, lengthMm: number, halfBreadthMm: number, outward: 1 | -1): readonly Point3[] | undefined {
  const front: Point3[] = [];
  for (let y = -halfBreadthMm; y <= halfBreadthMm; y += stepMm) {
    const p = foremost(cutter, outward * y, 0.2 * lengthMm);
    if (p && p[0] > 0.7 * lengthMm) front.push(p);
  }
  const value = front.map((p) => squareToRow(p, outward));
  const tops = standingOut(value);
  if (tops.length !== 5) return undefined;
  return tops.map((top, k) => {
    const from = k === 0 ? 0 : lowestBetween(value, tops[k - 1]!, top);
    const to = k === 4 ? front.length - 1 : lowestBetween(value, top, tops[k + 1]!);
    const out = (p: Point3): number => (k === 0 ? p[0] : k === 1 ? between[0] * p[0] + between[1] * outward * p[1] : squareToRow(p, outward));
    return front.slice(from, to + 1).reduce((best, p) => (out(p) > out(best) ? p : best));
  });
}

const squareToRow = (p: Point3, outward: number): number => acrossRow[0] * p[0] + acrossRow[1] * outward * p[1];

/** The foremost place of the cut along the foot at one y, below a height. */
function foremost(cutter: Sectioner, y: number, below: number): Point3 | undefined {
  let best: Point3 | undefined;
  for (const { points } of cutter.cut([0, y, 0], [0, 1, 0]))
    for (let i = 0; i < points.length; i += 3) if (points[i + 2]! < below && (!best || points[i]! > best[0])) best = [points[i]!, points[i + 1]!, points[i + 2]!];
  return best;
}

/** Places of a row that no place rises above before it has fallen by a notch, on either side; both ends count as fallen. */
function standingOut(value: readonly number[]): number[] {
  const falls = (i: number, step: 1 | -1): boolean => {
    for (let k = i + step; k >= 0 && k < value.length; k += step) {
      if (value[k]! > value[i]! || (value[k] === value[i] && step < 0)) return false;
      if (value[k]! < value[i]! - notchMm) return true;
    }
    return true;
  };
  return value.flatMap((_, i) => (falls(i, 1) && falls(i, -1) ? [i] : []));
}

function lowestBetween(value: readonly number[], from: number, to: number): number {
  let best = from;
  for (let i = from; i <= to; i++) if (value[i]! < value[best]!) best = i;
  return best;
}
