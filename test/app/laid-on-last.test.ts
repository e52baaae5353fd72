import { describe, expect, test } from "vitest";
import type { Ground } from "#pieces/piece.ts";
import { Carrier } from "#app/state/laid-on-last.ts";

/** A strip of a cylinder of this radius, laid flat without any stretch: u runs round it, v along. */
const radius = 40;
function cylinder(around: number, along: number, n = 48): Ground {
  const positions: number[] = [], uv: number[] = [], triangles: number[] = [];
  for (let j = 0; j <= n; j++)
    for (let i = 0; i <= n; i++) {
      const [u, v] = [(around * i) / n, (along * j) / n];
      uv.push(u, v);
      positions.push(radius * Math.sin(u / radius), v, radius * Math.cos(u / radius));
    }
  for (let j = 0; j < n; j++)
    for (let i = 0; i < n; i++) {
      const a = j * (n + 1) + i;
      triangles.push(a, a + 1, a + n + 2, a, a + n + 2, a + n + 1);
    }
  return { name: "upper", positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles), uv: Float64Array.from(uv) };
}

const length = (p: Float64Array): number => {
  let sum = 0;
  for (let i = 3; i < p.length; i += 3) sum += Math.hypot(p[i]! - p[i - 3]!, p[i + 1]! - p[i - 2]!, p[i + 2]! - p[i - 1]!);
  return sum;
};

describe("a flat piece on the last", () => {
  const ground = cylinder(60, 40);
  const carrier = new Carrier(ground);

  test("on a cylinder every point comes to lie where bending alone brings it, and lengths stay", () => {
    // A straight line on the flat is a helix on the cylinder, as long as before.
    const [helix] = carrier.carry(Float64Array.of(5, 5, 55, 35));
    for (let i = 0; i < helix!.length; i += 3) {
      expect(Math.abs(Math.hypot(helix![i]!, helix![i + 2]!) - radius)).toBeLessThan(0.01);
      const u = radius * Math.atan2(helix![i]!, helix![i + 2]!);
      expect(Math.abs(helix![i + 1]! - (5 + (u - 5) * 0.6))).toBeLessThan(0.01);
    }
    expect(Math.abs(length(helix!) - Math.hypot(50, 30))).toBeLessThan(0.01);
  });

  test("what lies outside is left out, but for a short way beyond the edge", () => {
    const runs = carrier.carry(Float64Array.of(-30, 20, 90, 20));
    expect(runs).toHaveLength(1);
    expect(length(runs[0]!)).toBeGreaterThan(58);
    expect(length(runs[0]!)).toBeLessThan(62);
    expect(carrier.carry(Float64Array.of(-30, 20, -5, 20))).toEqual([]);
    // Along the very edge, as a fair line lies a hair beside it.
    expect(length(carrier.carry(Float64Array.of(2, -0.2, 58, -0.2))[0]!)).toBeGreaterThan(55);
  });

  test("a piece with margins shows its net on the last: its own lines inside, the ground's edge where it reaches beyond", () => {
    // Reaches 10 beyond the ground at one end of u and along both sides, and ends within it at u = 30.
    const { edges, covered } = carrier.lay({ xy: Float64Array.of(-10, -10, 30, -10, 30, 50, -10, 50) });
    const total = edges.reduce((sum, e) => sum + length(e), 0);
    // Inside: 40 across. Edge of the ground: 40 across at u = 0, 30 along either side; a cell is 1.25 by 0.83 mm.
    expect(Math.abs(total - (40 + 40 + 30 + 30))).toBeLessThan(5);
    let area = 0;
    for (let t = 0; t < covered.triangles.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => ground.uv.subarray(2 * covered.triangles[t + k]!, 2 * covered.triangles[t + k]! + 2));
      area += Math.abs((b![0]! - a![0]!) * (c![1]! - a![1]!) - (c![0]! - a![0]!) * (b![1]! - a![1]!)) / 2;
    }
    expect(Math.abs(area - 30 * 40)).toBeLessThan(60);
  });
});
