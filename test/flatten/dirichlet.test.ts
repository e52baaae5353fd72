import { describe, expect, test } from "vitest";
import { addLengthDerivativesInto, lengthEnergy } from "#flatten/length-terms.ts";
import { principalStretches } from "#flatten/principal.ts";
import { Cholesky } from "#solve/cholesky.ts";
import { planFronts } from "#solve/front-plan.ts";
import { denseOf } from "../support/dense.ts";
import { gridMesh } from "../support/formula-surfaces.ts";
import { kernelOf } from "../support/flat-kernel.ts";

const mesh = gridMesh((s, t) => [10 * s + t, 8 * t, 3 * s * t + s * s], 3, 2);
const { disk, pattern, dirichlet, frames } = kernelOf(mesh);
/** A bent map without folds, at the same scale. */
const bent = Float64Array.from({ length: 2 * disk.vertices }, (_, i) => {
  const [x, y] = [mesh.positions[3 * (i >> 1)]!, mesh.positions[3 * (i >> 1) + 1]!];
  const place = i % 2 === 0 ? x + 0.06 * x * y - 0.03 * y * y : 0.8 * y + 0.02 * x * x;
  return disk.turned && i % 2 === 1 ? -place : place;
});
const terms = { a: new Uint32Array([0, 1, 5]), b: new Uint32Array([1, 0, 1]), target: new Float64Array([3, 6, 2]), stiffness: new Float64Array([0.2, 0.1, 0.3]) };
for (let k = 0; k < 3; k++) pattern.slot(terms.a[k]!, terms.b[k]!);

type Add = (gradient: Float64Array, values: Float64Array, uv: Float64Array) => void;

function derivatives(add: Add, uv: Float64Array) {
  const gradient = new Float64Array(uv.length);
  const values = new Float64Array(pattern.valueCount);
  add(gradient, values, uv);
  return { gradient, values };
}

/** Central differences of `energy` and of the gradient against gradient and Hessian. */
function expectDerivatives(energy: (uv: Float64Array) => number, add: Add): void {
  const { gradient, values } = derivatives(add, bent);
  const dense = denseOf(pattern, values);
  const step = 1e-5;
  for (let i = 0; i < bent.length; i++) {
    const [more, less] = [bent.slice(), bent.slice()];
    more[i]! += step;
    less[i]! -= step;
    expect(Math.abs((energy(more) - energy(less)) / (2 * step) - gradient[i]!)).toBeLessThan(1e-8);
    const [gm, gl] = [derivatives(add, more).gradient, derivatives(add, less).gradient];
    for (let j = 0; j < bent.length; j++) expect(Math.abs((gm[j]! - gl[j]!) / (2 * step) - dense[j]![i]!)).toBeLessThan(1e-7);
  }
}

test("the gradient alone is the gradient beside the Hessian", () => {
  const alone = new Float64Array(bent.length);
  dirichlet.addGradientInto(alone, frames, bent);
  expect(alone).toEqual(derivatives((g, v, uv) => dirichlet.addDerivativesInto(g, v, frames, uv, false), bent).gradient);
});

describe("derivatives by differences", () => {
  test("symmetric Dirichlet energy", () => {
    expect(dirichlet.energy(frames, bent)).toBeLessThan(20);
    expectDerivatives((uv) => dirichlet.energy(frames, uv), (g, v, uv) => dirichlet.addDerivativesInto(g, v, frames, uv, false));
  });

  test("terms on lengths, shortened and lengthened", () => {
    expectDerivatives((uv) => lengthEnergy(terms, uv), (g, v, uv) => addLengthDerivativesInto(g, v, terms, pattern, uv, false));
  });
});

test("clamped, every triangle's Hessian is positive, and equal to the true one where that is positive already", () => {
  const cholesky = new Cholesky(pattern, planFronts(pattern));
  const factorOf = (scale: number, clamped: boolean) => {
    const { values } = derivatives((g, v, uv) => dirichlet.addDerivativesInto(g, v, frames, uv, clamped), bent.map((x) => scale * x));
    for (let i = 0; i < disk.vertices; i++) for (const e of [0, 3]) values[4 * i + e]! += 1e-9; // the free motions
    return cholesky.factor(values);
  };
  expect(factorOf(0.6, false)).toBeGreaterThanOrEqual(0); // squeezed: a twist relieves it
  expect(factorOf(0.6, true)).toBe(-1);
  const spread = bent.map((x) => 2.5 * x); // every stretch above 1: no negative twist
  const [free, clamped] = [false, true].map((c) => derivatives((g, v, uv) => dirichlet.addDerivativesInto(g, v, frames, uv, c), spread).values);
  expect(clamped).toEqual(free);
});

test("principal stretches of a plain shear, by hand", () => {
  // Shear x → x + y has σ² = (3 ± √5) / 2; the golden ratio and its inverse.
  const flat = gridMesh((s, t) => [s, t, 0], 1, 1);
  const kernel = kernelOf(flat);
  const uv = new Float64Array(8);
  for (let i = 0; i < 4; i++) uv.set([flat.positions[3 * i]! + flat.positions[3 * i + 1]!, flat.positions[3 * i + 1]! * (kernel.disk.turned ? -1 : 1)], 2 * i);
  const { stretchMax, stretchMin, flipped } = principalStretches(kernel.frames, kernel.disk.triangles, uv);
  expect(flipped).toBe(0);
  const golden = (1 + Math.sqrt(5)) / 2;
  for (let k = 0; k < 2; k++) {
    expect(stretchMax[k]).toBeCloseTo(golden, 14);
    expect(stretchMin[k]).toBeCloseTo(1 / golden, 14);
  }
  const over = uv.map((x, i) => (i % 2 === 1 ? -x : x));
  expect(principalStretches(kernel.frames, kernel.disk.triangles, over).flipped).toBe(2);
});
