import { describe, expect, test } from "vitest";
import { fairClosed } from "#last/feather-fair.ts";

/** A rounded square of 100 mm, corners of 12 mm, about a point a millimetre; `shake` mm by Park and Miller's generator. */
function roundedSquare(shake: number): Float64Array {
  const out: number[] = [];
  let seed = 11;
  const noise = (): number => {
    seed = (seed * 48271) % 2147483647;
    return shake * ((2 * seed) / 2147483647 - 1);
  };
  for (let corner = 0; corner < 4; corner++) {
    const [c, s] = [[1, 0], [0, 1], [-1, 0], [0, -1]][corner] as [number, number];
    const put = (x: number, y: number): number => out.push(c * x - s * y + noise(), s * x + c * y + noise(), noise());
    for (let k = 0; k < 76; k++) put(50, -38 + k);
    for (let k = 0; k < 19; k++) put(38 + 12 * Math.cos((Math.PI * k) / 38), 38 + 12 * Math.sin((Math.PI * k) / 38));
  }
  return Float64Array.from(out);
}
const farthest = (a: Float64Array, b: Float64Array): number =>
  Math.max(...Array.from({ length: a.length / 3 }, (_, i) => Math.hypot(a[3 * i]! - b[3 * i]!, a[3 * i + 1]! - b[3 * i + 1]!, a[3 * i + 2]! - b[3 * i + 2]!)));
/** Sum of all turning in plan, degrees; 360 for a line without any wave. */
function turning(p: Float64Array): number {
  const n = p.length / 3;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const [a, b] = [3 * ((i + n - 1) % n), 3 * ((i + 1) % n)];
    const [ux, uy, vx, vy] = [p[3 * i]! - p[a]!, p[3 * i + 1]! - p[a + 1]!, p[b]! - p[3 * i]!, p[b + 1]! - p[3 * i + 1]!];
    sum += Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
  }
  return (sum * 180) / Math.PI;
}

describe("fair closed line", () => {
  test("takes the waves out, keeps to its room and keeps the corners", () => {
    const rough = roundedSquare(0.08);
    const fair = fairClosed(rough, 0.15);
    expect(turning(rough)).toBeGreaterThan(1500);
    expect(turning(fair)).toBeLessThan(420);
    expect(farthest(fair, rough)).toBeLessThan(0.17);
    expect(farthest(fair, roundedSquare(0))).toBeLessThan(0.2);
  });

  test("a circle stays where it is, without room nothing moves", () => {
    const circle = Float64Array.from({ length: 3 * 200 }, (_, i) => (i % 3 === 2 ? 0 : 32 * (i % 3 === 0 ? Math.cos : Math.sin)((2 * Math.PI * Math.floor(i / 3)) / 200)));
    expect(farthest(fairClosed(circle, 0.3), circle)).toBeLessThan(0.02);
    expect(fairClosed(roundedSquare(0.1), 0)).toEqual(roundedSquare(0.1));
  });
});
