import { expect, test } from "vitest";
import { girthAt, planLength, tapeGirth } from "#last/girth.ts";
import { Sectioner } from "#mesh/section.ts";
import type { Mesh } from "#mesh/mesh.ts";

/** Closed tube along x whose section is r(angle) in y and z; 2000 corners round, so that the chord error is far below the limits. */
function tube(section: (angle: number) => readonly [number, number], length: number): Mesh {
  const n = 2000;
  const positions = [0, 0, 0, length, 0, 0];
  const triangles: number[] = [];
  for (let i = 0; i < n; i++) {
    const [y, z] = section((2 * Math.PI * i) / n);
    positions.push(0, y, z, length, y, z);
    const [a, b, c, d] = [2 + 2 * i, 3 + 2 * i, 2 + ((2 * i + 2) % (2 * n)), 3 + ((2 * i + 2) % (2 * n))];
    triangles.push(a, c, b, b, c, d, 0, c, a, 1, b, d);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

test("a tape round an ellipse reads its perimeter", () => {
  // Complete elliptic integral E; 2 half axes in mm → perimeter (Ramanujan's second formula agrees to 10 digits).
  for (const [a, b, perimeter] of [[46, 28, 235.9295357], [45, 35, 252.3101225]] as const) {
    const cutter = new Sectioner(tube((t) => [a * Math.cos(t), b * Math.sin(t)], 100));
    expect(Math.abs(girthAt(cutter, 0.7) - perimeter)).toBeLessThan(1e-3);
  }
});

test("a tape does not dip into a hollow", () => {
  // A disc of radius 40 with a bite: the tape goes straight over the bite of 90 degrees, chord 2 r sin 45.
  const r = 40;
  const bite = (t: number): readonly [number, number] => {
    const off = Math.abs(t - Math.PI);
    const k = off < Math.PI / 4 ? 0.5 : 1;
    return [r * k * Math.cos(t), r * k * Math.sin(t)];
  };
  const cutter = new Sectioner(tube(bite, 100));
  expect(Math.abs(tapeGirth(cutter, [50, 0, 0], [1, 0, 0]) - (2 * Math.PI * r * 0.75 + 2 * r * Math.sin(Math.PI / 4)))).toBeLessThan(0.1);
});

test("off the body there is no girth; plan length is the extent along x", () => {
  const mesh = tube((t) => [20 * Math.cos(t), 20 * Math.sin(t)], 123.4);
  expect(tapeGirth(new Sectioner(mesh), [200, 0, 0], [1, 0, 0])).toBe(0);
  expect(planLength(mesh)).toBeCloseTo(123.4, 12);
});
