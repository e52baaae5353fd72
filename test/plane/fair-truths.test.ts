import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arcLengths, nearestOn, pointAt, reversed } from "#plane/along.ts";
import { bendChanges, curvatures } from "#plane/curvature.ts";
import { evenWidth, offsetEdge, offsetLoop } from "#plane/edge-offset.ts";
import { fairLine, fairLoop } from "#plane/fair.ts";
import { area, perimeter } from "#plane/measure.ts";
import type { Polyline } from "#plane/outline.ts";

/** Every bow counted, to a radius of 100 km. */
const everyBend = (line: Polyline): number => bendChanges(line, 1e-8, 0.75);
const closing = ({ xy }: Polyline): Polyline => ({ xy: Float64Array.of(...xy, ...xy.subarray(0, 28)) });

/** Park and Miller's generator, the same numbers on every machine; ends are left where they are. */
function shaken({ xy }: Polyline, mm: number, seed: number, keepEnds = true): Polyline {
  let state = seed;
  const moved = xy.map((v, i) => {
    state = (state * 48271) % 2147483647;
    return keepEnds && (i < 2 || i >= xy.length - 2) ? v : v + mm * ((2 * state) / 2147483647 - 1);
  });
  return { xy: moved };
}

const along = (n: number, at: (t: number) => readonly [number, number]): Polyline => ({ xy: Float64Array.from(Array.from({ length: n + 1 }, (_, i) => at(i / n)).flat()) });

/** Points of one line off another, the farthest, mm. */
function off(line: Polyline, other: Polyline): number {
  const arc = arcLengths(other);
  let most = 0;
  for (let i = 0; i < line.xy.length; i += 2) most = Math.max(most, nearestOn(other, arc, line.xy[i]!, line.xy[i + 1]!).distance);
  return most;
}

const ellipse = (n: number): Polyline => {
  const { xy } = along(n, (t) => [45 * Math.cos(2 * Math.PI * t), 35 * Math.sin(2 * Math.PI * t)]);
  return { xy: xy.slice(0, 2 * n) };
};

/** Points of a clothoid, κ = s / A², from −length to length: its tangent turns by s² / 2A², summed by Simpson's rule. */
function clothoid(a: number, length: number, n: number): Polyline {
  const steps = 400;
  const at = (s: number): readonly [number, number] => {
    let [x, y] = [0, 0];
    for (let k = 0; k <= steps; k++) {
      const t = (s * k) / steps;
      const w = ((k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2) * s) / (3 * steps);
      x += w * Math.cos((t * t) / (2 * a * a));
      y += w * Math.sin((t * t) / (2 * a * a));
    }
    return [x, y];
  };
  return along(n, (t) => at(length * (2 * t - 1)));
}

/** Curvature of the circle through three points. */
function bendOf(x0: number, y0: number, x1: number, y1: number, x2: number, y2: number): number {
  const [ax, ay, bx, by] = [x1 - x0, y1 - y0, x2 - x1, y2 - y1];
  return (2 * (ax * by - ay * bx)) / (Math.hypot(ax, ay) * Math.hypot(bx, by) * Math.hypot(ax + bx, ay + by));
}

const seeds = [7, 19, 101, 4242];

describe("curves with a closed form come back from shaken samples", () => {
  // Curvature of an ellipse: a b / (a² sin² t + b² cos² t)^(3/2).
  test.each(seeds)("ellipse 45 × 35, points 2.5 mm apart, shaken 0.03 mm (%d)", (seed) => {
    const fair = fairLoop(shaken(ellipse(100), 0.03, seed, false));
    expect(everyBend(closing(fair))).toBe(0);
    expect(off(fair, closing(ellipse(4000)))).toBeLessThan(0.04);
    // Bend over 6 mm at every place.
    const { xy } = fair;
    const n = xy.length / 2;
    for (let i = 0; i < n; i++) {
      const [p, q] = [2 * ((i + n - 4) % n), 2 * ((i + 4) % n)];
      const [x, y] = [xy[2 * i]! / 45, xy[2 * i + 1]! / 35];
      const truth = (45 * 35) / (45 * 45 * y * y + 35 * 35 * x * x) ** 1.5;
      expect(Math.abs(bendOf(xy[p]!, xy[p + 1]!, xy[2 * i]!, xy[2 * i + 1]!, xy[q]!, xy[q + 1]!) / truth - 1)).toBeLessThan(0.12);
    }
  });

  test.each(seeds)("clothoid A = 60, κ = s / A²: one change of bend, in its middle (%d)", (seed) => {
    const fair = fairLine(shaken(clothoid(60, 100, 80), 0.03, seed));
    expect(everyBend(fair)).toBe(1);
    expect(off(fair, clothoid(60, 100, 2000))).toBeLessThan(0.05);
    const k = curvatures(fair, 2);
    const change = k.findIndex((v, i) => i > 0 && v > 0 !== k[i - 1]! > 0);
    expect(Math.abs(2 * change - 100)).toBeLessThan(4);
    const worst = Math.max(...Array.from(k, (v, i) => Math.abs(v - (2 * (i + 1) - 100) / 3600)));
    expect(worst).toBeLessThan(0.004);
  });

  test.each(seeds)("sine, 200 × 15 mm: its one change (%d)", (seed) => {
    expect(everyBend(fairLine(shaken(along(90, (t) => [200 * t, 15 * Math.sin(2 * Math.PI * t)]), 0.03, seed)))).toBe(1);
  });

  test.each(seeds)("a straight line and half a circle stay without any change (%d)", (seed) => {
    expect(everyBend(fairLine(shaken(along(60, (t) => [150 * t, 0]), 0.03, seed)))).toBe(0);
    const half = fairLine(shaken(along(60, (t) => [50 * Math.cos(Math.PI * t), 50 * Math.sin(Math.PI * t)]), 0.03, seed));
    expect(everyBend(half)).toBe(0);
    expect(Math.max(...Array.from(curvatures(half, 2), (k) => Math.abs(50 * k - 1)))).toBeLessThan(0.08);
  });

  // A cubic Bézier with handles 0.5522847498 R lies at most 1.0002725 R from the middle of its quarter circle.
  test("Bézier quarter circle, R = 60", () => {
    const k = 0.5522847498;
    const at = (t: number): readonly [number, number] => {
      const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
      return [60 * (a + b + c * k), 60 * (b * k + c + d)];
    };
    const fair = fairLine(along(38, at));
    const radii = Array.from({ length: fair.xy.length / 2 }, (_, i) => Math.hypot(fair.xy[2 * i]!, fair.xy[2 * i + 1]!) / 60);
    expect(Math.abs(Math.max(...radii) - 1.0002725)).toBeLessThan(2e-5);
    expect(everyBend(fair)).toBe(0);
  });
});

describe("offsets inherit fairness", () => {
  // Steiner: A(d) = A + P d + π d², P(d) = P + 2π d. The curvature becomes κ / (1 + κ d), so no bend changes.
  test.each([12, 5, -3])("a fair ellipse by %d mm", (d) => {
    const fair = fairLoop(shaken(ellipse(100), 0.03, 7, false));
    const grown = offsetLoop(fair, evenWidth(fair, d));
    expect(Math.abs(perimeter(grown) - perimeter(fair) - 2 * Math.PI * d)).toBeLessThan(0.01);
    expect(Math.abs(area(grown) - area(fair) - perimeter(fair) * d - Math.PI * d * d)).toBeLessThan(0.2);
    expect(everyBend(closing(grown))).toBe(0);
  });

  test.each([9, -9])("a fair sine by %d mm keeps its one change", (d) => {
    const fair = fairLine(shaken(along(90, (t) => [200 * t, 15 * Math.sin(2 * Math.PI * t)]), 0.03, 19));
    expect(everyBend(offsetEdge(fair, evenWidth(fair, d)))).toBe(1);
  });
});

describe("what must not matter", () => {
  const wavy = (n: number): Polyline => along(n, (t) => [200 * t, 12 * Math.sin(5 * t) + 4 * Math.cos(11 * t)]);
  const turned = ({ xy }: Polyline, angle: number): Polyline => ({ xy: xy.map((_, i) => (i % 2 === 0 ? Math.cos(angle) * xy[i]! - Math.sin(angle) * xy[i + 1]! : Math.sin(angle) * xy[i - 1]! + Math.cos(angle) * xy[i]!)) });
  const mirrored = ({ xy }: Polyline): Polyline => ({ xy: xy.map((v, i) => (i % 2 === 0 ? v : -v)) });

  test("how it lies, mirrored, walked the other way, given twice: the same to a tenth of a micrometre", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.double({ min: 0, max: 6.28, noNaN: true }), (seed, angle) => {
        const line = shaken(wavy(80), 0.02, seed);
        const fair = fairLine(line);
        const apart = (a: Polyline): number => a.xy.reduce((most, v, i) => Math.max(most, Math.abs(v - fair.xy[i]!)), a.xy.length === fair.xy.length ? 0 : Infinity);
        expect(apart(turned(fairLine(turned(line, angle)), -angle))).toBeLessThan(1e-4);
        expect(apart(mirrored(fairLine(mirrored(line))))).toBeLessThan(1e-4);
        expect(off(reversed(fairLine(reversed(line))), fair)).toBeLessThan(0.002);
        expect([...fairLine(line).xy]).toEqual([...fair.xy]);
      }),
      { seed: 5, numRuns: 20 },
    );
  });

  test("how densely it is sampled: within 2 µm", () => {
    const fine = fairLine(wavy(300));
    for (const n of [60, 80, 130, 200]) {
      const fair = fairLine(wavy(n));
      expect(off(fair, fine)).toBeLessThan(0.002);
      expect(everyBend(fair)).toBe(everyBend(wavy(4000)));
    }
  });

  test("both ends and what lies between are kept: a hundred shaken lines within 0.05 mm", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 30, max: 140 }), (seed, n) => {
        const line = shaken(wavy(n), 0.03, seed);
        const fair = fairLine(line);
        expect(off(line, fair)).toBeLessThanOrEqual(0.05);
        const arc = arcLengths(fair);
        expect([...pointAt(fair, arc, 0), ...pointAt(fair, arc, Infinity)]).toEqual([...line.xy.subarray(0, 2), ...line.xy.subarray(line.xy.length - 2)]);
      }),
      { seed: 9, numRuns: 100 },
    );
  });
});
