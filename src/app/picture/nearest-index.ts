/** Index of the point nearest to `q`, of points x0 y0 z0 … of a line or a mesh. */
export function nearestIndex(points: Float64Array, q: readonly number[]): number {
  let best = 0;
  let least = Infinity;
  for (let i = 0; i < points.length; i += 3) {
    const d = (points[i]! - q[0]!) ** 2 + (points[i + 1]! - q[1]!) ** 2 + (points[i + 2]! - q[2]!) ** 2;
    if (d < least) [least, best] = [d, i / 3];
  }
  return best;
}
