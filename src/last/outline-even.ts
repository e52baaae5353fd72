import { arcLengths, pointAt } from "#plane/along.ts";
import type { Outline, Polyline } from "#plane/outline.ts";

const step = 0.75;

/**
 * The outline in even steps of about 0.75 mm, each point the mean of its neighbourhood (weights of two rounds of 1 2 1, so that a bend of
 * 5 mm radius moves inward by 0.06 mm). A drawn or traced line is rough by some tenths; what is done with it is not to lean on single points.
 */
export function evenOutline({ xy }: Outline): Outline {
  const loop: Polyline = { xy: Float64Array.from([...xy, xy[0]!, xy[1]!]) };
  const arc = arcLengths(loop);
  const whole = arc[arc.length - 1]!;
  const n = Math.max(40, Math.round(whole / step));
  const even = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) even.set(pointAt(loop, arc, (whole * i) / n), 2 * i);
  return { xy: softened(softened(even)) };
}

function softened(xy: Float64Array): Float64Array {
  const n = xy.length;
  return xy.map((v, i) => v / 2 + (xy[(i + 2) % n]! + xy[(i - 2 + n) % n]!) / 4);
}

/** An even outline (counter-clockwise) moved inward by `mm`, every point square to the chord from 3 mm before to 3 mm behind it. */
export function movedInward({ xy }: Outline, mm: number): Outline {
  const n = xy.length / 2;
  const reach = Math.round(3 / step);
  const out = new Float64Array(xy.length);
  for (let i = 0; i < n; i++) {
    const [a, b] = [(i - reach + n) % n, (i + reach) % n];
    const [dx, dy] = [xy[2 * b]! - xy[2 * a]!, xy[2 * b + 1]! - xy[2 * a + 1]!];
    const long = Math.sqrt(dx * dx + dy * dy);
    out[2 * i] = xy[2 * i]! - (mm * dy) / long;
    out[2 * i + 1] = xy[2 * i + 1]! + (mm * dx) / long;
  }
  return { xy: out };
}
