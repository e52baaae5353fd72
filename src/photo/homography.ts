import { must } from "#base/bug.ts";
import { fitLinear } from "#solve/least-squares.ts";

/**
 * Homography of the plane from at least four pairs of points (x0 y0 x1 y1 …), row by row, last entry 1. Points are first moved
 * and scaled to lie about the origin (Hartley, IEEE PAMI 19 (1997) 580), without which the fit hangs on where the origin is.
 * Least squares in the linear form; exact for four points.
 */
export function homographyOf(from: ArrayLike<number>, to: ArrayLike<number>): Float64Array {
  const n = from.length / 2;
  must(n >= 4 && to.length === from.length, "a homography needs four pairs of points");
  const a = easing(from), b = easing(to);
  const rows = new Float64Array(16 * n);
  const right = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const x = (from[2 * i]! - a.x) * a.s, y = (from[2 * i + 1]! - a.y) * a.s;
    const u = (to[2 * i]! - b.x) * b.s, v = (to[2 * i + 1]! - b.y) * b.s;
    rows.set([x, y, 1, 0, 0, 0, -u * x, -u * y, 0, 0, 0, x, y, 1, -v * x, -v * y], 16 * i);
    right[2 * i] = u;
    right[2 * i + 1] = v;
  }
  const h = fitLinear(rows, 8, right);
  const eased = [h[0]!, h[1]!, h[2]!, h[3]!, h[4]!, h[5]!, h[6]!, h[7]!, 1];
  const ease = [a.s, 0, -a.s * a.x, 0, a.s, -a.s * a.y, 0, 0, 1];
  const back = [1 / b.s, 0, b.x, 0, 1 / b.s, b.y, 0, 0, 1];
  const out = times(times(back, eased), ease);
  return Float64Array.from(out, (v) => v / out[8]!);
}

/** Where a point goes. */
export function through(h: ArrayLike<number>, x: number, y: number): [number, number] {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return [(h[0]! * x + h[1]! * y + h[2]!) / w, (h[3]! * x + h[4]! * y + h[5]!) / w];
}

/** Middle of the points, and the scale that gives them a mean square distance of 2 from it. */
function easing(xy: ArrayLike<number>): { x: number; y: number; s: number } {
  const n = xy.length / 2;
  let x = 0, y = 0, square = 0;
  for (let i = 0; i < n; i++) {
    x += xy[2 * i]! / n;
    y += xy[2 * i + 1]! / n;
  }
  for (let i = 0; i < n; i++) square += ((xy[2 * i]! - x) ** 2 + (xy[2 * i + 1]! - y) ** 2) / n;
  return { x, y, s: Math.sqrt(2 / square) };
}

function times(a: ArrayLike<number>, b: ArrayLike<number>): number[] {
  return Array.from({ length: 9 }, (_, k) => {
    const r = 3 * Math.floor(k / 3), c = k % 3;
    return a[r]! * b[c]! + a[r + 1]! * b[3 + c]! + a[r + 2]! * b[6 + c]!;
  });
}
