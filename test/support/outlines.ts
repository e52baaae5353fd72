import fc from "fast-check";
import type { Outline } from "#plane/outline.ts";

/** Counter-clockwise star-shaped outlines round the origin, 10 to 100 mm from it: never crossing themselves. */
export function starOutline(): fc.Arbitrary<Outline> {
  return fc.array(fc.double({ min: 10, max: 100, noNaN: true }), { minLength: 5, maxLength: 40 }).map((radii) => ({
    xy: Float64Array.from({ length: 2 * radii.length }, (_, i) => {
      const angle = (2 * Math.PI * (i >> 1)) / radii.length;
      return radii[i >> 1]! * (i % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
    }),
  }));
}

/** Points on a circle's arc, counter-clockwise from angle a to b (radians), `n` steps. */
export function arcPoints(cx: number, cy: number, r: number, a: number, b: number, n: number): Float64Array {
  const xy = new Float64Array(2 * (n + 1));
  for (let i = 0; i <= n; i++) {
    const t = a + ((b - a) * i) / n;
    xy[2 * i] = cx + r * Math.cos(t);
    xy[2 * i + 1] = cy + r * Math.sin(t);
  }
  return xy;
}
