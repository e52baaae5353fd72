import { nearestIndex } from "./nearest-index.ts";

/**
 * The feather line while it is being pulled: near each place it must pass through it gives way smoothly, elsewhere it stays. Only to
 * follow the finger; the true course is worked out when the finger leaves.
 * @param points the line as it is, closed, x0 y0 z0 …, evenly spaced
 * @param through places it has to pass through
 * @param onto brings a point on to the surface of the last
 */
export function pulledLine(points: Float64Array, through: readonly (readonly number[])[], onto: (p: readonly number[]) => readonly number[]): Float64Array {
  return through.reduce<Float64Array>((line, q) => pullOnce(line, q, onto), points);
}

/** A place nearer to the line than this, mm, is on it. */
const onLineMm = 0.2;
/** The line gives way over this length to either side, mm, and over more where it is pulled far. */
const reachMm = 30;

function pullOnce(points: Float64Array, q: readonly number[], onto: (p: readonly number[]) => readonly number[]): Float64Array {
  const n = points.length / 3;
  const at = nearestIndex(points, q);
  const d = [0, 1, 2].map((k) => q[k]! - points[3 * at + k]!);
  const far = Math.hypot(...d);
  if (far < onLineMm) return points;
  const spacing = lineLength(points) / n;
  const reach = Math.max(reachMm, 4 * far);
  const out = points.slice();
  for (let j = 0; j < n; j++) {
    const steps = Math.min((j - at + n) % n, (at - j + n) % n);
    const s = (steps * spacing) / reach;
    if (s >= 1) continue;
    const weight = (1 + Math.cos(Math.PI * s)) / 2;
    const moved = [0, 1, 2].map((k) => points[3 * j + k]! + weight * d[k]!);
    out.set(j === at ? [q[0]!, q[1]!, q[2]!] : onto(moved), 3 * j);
  }
  return out;
}

/** Once round, mm. */
function lineLength(points: Float64Array): number {
  let sum = 0;
  for (let i = 0, j = points.length - 3; i < points.length; j = i, i += 3) sum += Math.hypot(points[i]! - points[j]!, points[i + 1]! - points[j + 1]!, points[i + 2]! - points[j + 2]!);
  return sum;
}
