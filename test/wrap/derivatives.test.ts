import fc from "fast-check";
import { expect, test } from "vitest";
import { addBendingInto, bendingEnergy } from "#wrap/bending.ts";
import { Membrane } from "#wrap/membrane.ts";
import { sheetOf } from "#wrap/sheet.ts";
import { WrapSystem } from "#wrap/system.ts";

const flat = Float64Array.from([0, 0, 10, 1, 3, 8, 12, 9]);
const triangles = Uint32Array.from([0, 1, 2, 1, 3, 2]);
const sheet = sheetOf({ triangles, flat, pushed: Float64Array.from([0.1, 1]) });
const membrane = new Membrane(sheet, 100);

/** Points of the sheet in space, pulled to `scale` of their flat size so that no stretch lies below 1, and moved a little. */
const shape = (scale: number) =>
  fc.array(fc.double({ min: -0.4, max: 0.4, noNaN: true }), { minLength: 12, maxLength: 12 }).map((off) => Float64Array.from(off, (o, k) => o + (k % 3 === 2 ? 0 : scale * flat[2 * Math.floor(k / 3) + (k % 3)]!)));

function derivatives(x: Float64Array): { gradient: Float64Array; hessian: number[][] } {
  const system = new WrapSystem(sheet, 0, 0);
  system.clear();
  membrane.addInto(system.gradient, system.values, system.ofTriangles, x);
  const hessian = Array.from({ length: 12 }, () => new Array<number>(12).fill(0));
  for (let t = 0, k = 0; t < 6; t += 3)
    for (let r = 0; r < 9; r++)
      for (let q = 0; q <= r; q++, k++) {
        const a = 3 * triangles[t + Math.floor(r / 3)]! + (r % 3), b = 3 * triangles[t + Math.floor(q / 3)]! + (q % 3);
        hessian[a]![b] = hessian[b]![a] = system.values[system.ofTriangles[k]!]!;
      }
  return { gradient: system.gradient, hessian };
}

const moved = (x: Float64Array, i: number, by: number): Float64Array => x.map((v, k) => (k === i ? v + by : v));

test("the membrane's gradient is the slope of its energy, stretched or pushed together", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.8, max: 1.3, noNaN: true }).chain(shape), (x) => {
      const { gradient } = derivatives(x);
      const h = 1e-5;
      for (let i = 0; i < 12; i++) expect(Math.abs(gradient[i]! - (membrane.energy(moved(x, i, h)) - membrane.energy(moved(x, i, -h))) / (2 * h))).toBeLessThan(1e-3);
    }),
    { numRuns: 40, seed: 7 },
  );
});

test("where the sheet is pulled both ways the second derivatives are the slopes of the gradient", () => {
  fc.assert(
    fc.property(fc.double({ min: 1.2, max: 1.4, noNaN: true }).chain(shape), (x) => {
      const { hessian } = derivatives(x);
      const h = 1e-5;
      for (let i = 0; i < 12; i++) {
        const up = derivatives(moved(x, i, h)).gradient, down = derivatives(moved(x, i, -h)).gradient;
        for (let j = 0; j < 12; j++) expect(Math.abs(hessian[i]![j]! - (up[j]! - down[j]!) / (2 * h))).toBeLessThan(1e-3);
      }
    }),
    { numRuns: 20, seed: 7 },
  );
});

test("pushed together, no direction loses stiffness in the matrix of a step", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.7, max: 1.1, noNaN: true }).chain(shape), fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 }), (x, d) => {
      const { hessian } = derivatives(x);
      let sum = 0;
      for (let i = 0; i < 12; i++) for (let j = 0; j < 12; j++) sum += d[i]! * hessian[i]![j]! * d[j]!;
      expect(sum).toBeGreaterThan(-1e-6);
    }),
    { numRuns: 100, seed: 7 },
  );
});

test("bending's gradient is the slope of its energy; flat and turned as a whole it is none", () => {
  const x = Float64Array.from([0, 0, 1, 10, 1, 0, 3, 8, -1, 12, 9, 2]);
  const gradient = new Float64Array(12);
  addBendingInto(gradient, sheet, x, 2);
  for (let i = 0; i < 12; i++) expect(gradient[i]!).toBeCloseTo(2 * (bendingEnergy(sheet, moved(x, i, 0.5)) - bendingEnergy(sheet, moved(x, i, -0.5))), 9);
  const turned = Float64Array.from({ length: 12 }, (_, k) => [0.6 * flat[2 * Math.floor(k / 3)]! + 5, flat[2 * Math.floor(k / 3) + 1]!, 0.8 * flat[2 * Math.floor(k / 3)]!][k % 3]!);
  expect(bendingEnergy(sheet, turned)).toBeLessThan(1e-20);
});
