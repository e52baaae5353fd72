import { expect, test } from "vitest";
import { closedArc, resampleClosed, smoothClosed } from "#last/closed-curve.ts";
import { axisEnds } from "#last/axis.ts";

const circle = (r: number, n: number): Float64Array =>
  Float64Array.from({ length: 3 * n }, (_, i) => [r * Math.cos((2 * Math.PI * Math.floor(i / 3)) / n), r * Math.sin((2 * Math.PI * Math.floor(i / 3)) / n), 0][i % 3]!);

test("length and even steps of a circle", () => {
  const points = circle(40, 360);
  const arc = closedArc(points);
  // Inscribed polygon: n · 2 r sin(π/n).
  expect(arc[360]).toBeCloseTo(360 * 80 * Math.sin(Math.PI / 360), 9);
  const even = resampleClosed(points, new Float64Array(360), 100, 17);
  const steps = closedArc(even.points);
  expect(steps[1]!).toBeCloseTo(steps[100]! / 100, 2);
});

test("smoothing draws a circle in by width⁴ / R³ and no more", () => {
  // The least-squares condition for a circle on even steps: (R − r) = λ r / R⁴ with λ = width⁴, so R − r ≈ width⁴ / R³.
  const [R, width] = [5, 1.5];
  const n = 63;
  const smooth = smoothClosed(circle(R, n), new Float64Array(n).fill(1), (2 * Math.PI * R) / n, width);
  const r = Math.hypot(smooth[0]!, smooth[1]!);
  expect(R - r).toBeCloseTo((width ** 4 / R ** 3) * (r / R), 2);
});

test("the axis of an ellipse runs through its two tips, whatever the first guess", () => {
  const n = 720;
  const points = Float64Array.from({ length: 3 * n }, (_, i) => [120 * Math.cos((2 * Math.PI * Math.floor(i / 3)) / n), 40 * Math.sin((2 * Math.PI * Math.floor(i / 3)) / n), 0][i % 3]!);
  for (const guess of [[1, 0, 0], [1, 0.2, 0], [1, -0.15, 0]] as const) {
    const { seat, toe } = axisEnds(points, guess);
    expect(Math.min(toe, n - toe)).toBeLessThan(0.1); // 0.1 of a step of about 0.35 mm
    expect(Math.abs(seat - n / 2)).toBeLessThan(0.1);
  }
});

test("the toe point of a square front is its middle", () => {
  // Counter-clockwise: a box 200 × 60 with rounded ends of 60 at the back, flat in front.
  const out: number[] = [];
  for (let y = -30; y <= 30; y += 0.5) out.push(200, y, 0);
  for (let x = 199.5; x >= 30; x -= 0.5) out.push(x, 30, 0);
  for (let k = 1; k < 120; k++) out.push(30 - 30 * Math.sin((Math.PI * k) / 120), 30 * Math.cos((Math.PI * k) / 120), 0);
  for (let x = 30; x < 200; x += 0.5) out.push(x, -30, 0);
  const points = Float64Array.from(out);
  const { toe } = axisEnds(points, [1, 0.05, 0]);
  expect(Math.abs(points[3 * Math.round(toe) + 1]!)).toBeLessThan(0.6);
});
