import { must } from "#base/bug.ts";
import { closedArc } from "./closed-curve.ts";
import { closedSpline } from "./closed-spline.ts";

/** Stiffness as a length, mm: waves shorter than 2π times it are more than halved. In a bend it is this share of its radius, if less. */
const stiffMm = 7;
const stiffInBend = 1 / 4;
/** Half the chord over which bends are measured, mm: noise of 0.1 mm looks like a radius of some 90 mm, well above any corner. */
const chordMm = 6;
/** Rounds of reweighting: by then the line lies within its room to a few per cent. */
const rounds = 14;

/**
 * The closed line that changes its bend least among those that stay within `roomMm` of every given point: least
 * Σ wᵢ |qᵢ − pᵢ|² + λ Σ |third difference of q|², the weights of points that lie too far being raised until none does. Unlike
 * least bending it leaves arcs alone, so a tight toe corner is kept while waves between are taken out. Even steps, flat x y z ….
 * Source: the discrete smoothing spline of order three (Whittaker, Proceedings of the Edinburgh Mathematical Society 41, 1923).
 */
export function fairClosed(points: Float64Array, roomMm: number): Float64Array {
  const n = points.length / 3;
  must(n >= 12, "a closed line needs twelve points to be faired");
  if (roomMm <= 0) return points.slice();
  const arc = closedArc(points);
  const step = arc[n]! / n;
  const lambda = (stiffMm / step) ** 6;
  const weights = bendWeights(points, step);
  let out = points;
  for (let round = 0; round < rounds; round++) {
    out = closedSpline(points, weights, lambda, "third");
    if (!raiseInto(weights, points, out, roomMm)) break;
  }
  return out;
}

/** A weight of m⁶ is a stiffness m times shorter: as much as keeps it within its share of the radius, within half a chord of each point, running out to four. */
function bendWeights(points: Float64Array, step: number): Float64Array {
  const n = points.length / 3;
  const reach = Math.max(1, Math.round(chordMm / step));
  const runOut = Math.min(n >> 2, 4 * reach);
  const bends = Float64Array.from({ length: n }, (_, i) => {
    const [a, b] = [(i + n - reach) % n, (i + reach) % n];
    let square = 0;
    for (let c = 0; c < 3; c++) square += (points[3 * a + c]! - 2 * points[3 * i + c]! + points[3 * b + c]!) ** 2;
    return Math.sqrt(square) / (reach * step) ** 2;
  });
  return bends.map((_, i) => {
    let most = 0;
    for (let k = -runOut; k <= runOut; k++) most = Math.max(most, bends[(i + k + n) % n]! * (1 - Math.max(0, Math.abs(k) - reach) / runOut));
    return Math.max(1, (stiffMm * most) / stiffInBend) ** 6;
  });
}

/** Raises the weights about every point that lies outside its room; false when none does. Neighbours are raised along, running out, so that no point pulls a peak. */
function raiseInto(weights: Float64Array, from: Float64Array, to: Float64Array, roomMm: number): boolean {
  const n = weights.length;
  const over = Float64Array.from({ length: n }, (_, i) => {
    const [dx, dy, dz] = [to[3 * i]! - from[3 * i]!, to[3 * i + 1]! - from[3 * i + 1]!, to[3 * i + 2]! - from[3 * i + 2]!];
    return Math.sqrt(dx * dx + dy * dy + dz * dz) / roomMm;
  });
  if (over.every((v) => v <= 1.05)) return false;
  const reach = 6;
  for (let i = 0; i < n; i++) {
    let raise = 1;
    for (let k = -reach; k <= reach; k++) {
      const v = Math.min(over[(i + k + n) % n]!, 8);
      if (v > 1) raise = Math.max(raise, 1 + (v * v - 1) * (1 - Math.abs(k) / (reach + 1)));
    }
    weights[i] = weights[i]! * raise;
  }
  return true;
}
