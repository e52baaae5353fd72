type Xy = readonly [number, number];

/** Convex hull of points x, y, x, y …, counter-clockwise, without points on its edges. Andrew's monotone chain (Information Processing Letters 9, 1979). */
export function hullOf(xy: Float64Array): readonly Xy[] {
  const points = Array.from({ length: xy.length / 2 }, (_, i): Xy => [xy[2 * i]!, xy[2 * i + 1]!]).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return [...chain(points), ...chain([...points].reverse())];
}

/** The hull's side to the right of the way from the first point to the last, without the last. */
function chain(points: readonly Xy[]): Xy[] {
  const out: Xy[] = [];
  for (const p of points) {
    while (out.length > 1 && turn(out[out.length - 2]!, out[out.length - 1]!, p) <= 0) out.pop();
    out.push(p);
  }
  return out.slice(0, -1);
}

const turn = (a: Xy, b: Xy, c: Xy): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
