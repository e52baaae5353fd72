import { describe, expect, it } from "vitest";
import { diskOf } from "#flatten/disk.ts";
import { framesOf } from "#flatten/frames.ts";
import { FirmPleats } from "#leather/firm-pleats.ts";
import { SheetEnergy } from "#lasting/inverse/sheet-energy.ts";
import { rotated, sumOf } from "#leather/combined.ts";
import { gathering } from "#leather/gathering.ts";
import type { Law } from "#leather/law.ts";
import { ToeLaw } from "#leather/toe-law.ts";

const toe = new ToeLaw({ along: 40, across: 20, bias: 18, poisson: 0.4, toe: 0.02, early: 0.2 });
const layers = sumOf([toe, rotated(toe, 0.8, 0.6)]);
const pleated = new FirmPleats(gathering(layers, -0.04), -0.04);

// Two triangles in space, and a flat shape in which one is stretched and one pushed together.
const positions = Float64Array.from([0, 0, 0, 10, 1, 0.3, 2, 9, -1, 12, 10, 2]);
const flat = Float64Array.from([0, 0, 9.3, 1.5, 1.5, 8.9, 13.1, 12.4]);

function parts(law: Law, hand: 1 | -1) {
  const disk = diskOf(4, Uint32Array.from([0, 1, 2, 1, 3, 2])), frames = framesOf(positions, disk.triangles);
  const energy = new SheetEnergy(disk, law, hand, { cos: Float64Array.of(0.6, 1), sin: Float64Array.of(0.8, 0) });
  energy.turn = [0.96, 0.28];
  const derivatives = (uv: Float64Array, clamped: boolean) => {
    const gradient = new Float64Array(8), values = new Float64Array(disk.pattern.valueCount);
    energy.addDerivativesInto(gradient, values, frames, uv, clamped);
    const hessian = Array.from({ length: 8 }, () => new Float64Array(8));
    for (let p = 0; p < 4; p++) for (let i = 0; i < 2; i++) for (let j = 0; j <= i; j++) hessian[2 * p + i]![2 * p + j] = hessian[2 * p + j]![2 * p + i] = values[4 * p + 2 * i + j]!;
    disk.pattern.low.forEach((p, k) => {
      const q = disk.pattern.high[k]!;
      for (let i = 0; i < 2; i++) for (let j = 0; j < 2; j++) hessian[2 * p + i]![2 * q + j] = hessian[2 * q + j]![2 * p + i] = values[4 * (4 + k) + 2 * i + j]!;
    });
    return { gradient, hessian };
  };
  return { energy, frames, derivatives };
}

const moved = (i: number, by: number): Float64Array => flat.map((x, k) => (k === i ? x + by : x));

describe("energy of a flat sheet that takes a given shape", () => {
  it.each([["two layers", layers, 1], ["seen from behind", layers, -1], ["with pleats", pleated, 1]] as const)("has the derivatives that differences of it tell: %s", (_, law, hand) => {
    const { energy, frames, derivatives } = parts(law, hand), { gradient, hessian } = derivatives(flat, false), step = 1e-5;
    for (let i = 0; i < 8; i++) {
      const [more, less] = [moved(i, step), moved(i, -step)];
      expect((energy.energy(frames, more) - energy.energy(frames, less)) / (2 * step)).toBeCloseTo(gradient[i]!, 6);
      const [a, b] = [derivatives(more, false).gradient, derivatives(less, false).gradient];
      for (let j = 0; j < 8; j++) expect((a[j]! - b[j]!) / (2 * step)).toBeCloseTo(hessian[i]![j]!, 5);
    }
  });

  it("has no negative second derivative in any of many directions where it is clamped, and some where it is not", () => {
    const pushed = flat.map((x) => 1.8 * x);
    const least = (clamped: boolean): number => {
      const { hessian } = parts(toe, 1).derivatives(pushed, clamped);
      let low = Infinity, seed = 7;
      for (let n = 0; n < 3000; n++) {
        const d = Array.from({ length: 8 }, () => (seed = (seed * 48271) % 2147483647) / 1073741823.5 - 1);
        low = Math.min(low, d.reduce((sum, x, i) => sum + x * hessian[i]!.reduce((row, h, j) => row + h * d[j]!, 0), 0));
      }
      return low;
    };
    expect(least(true)).toBeGreaterThanOrEqual(0);
    expect(least(false)).toBeLessThan(0);
  });

  it("costs nothing where nothing is stretched, and everything where a triangle folds over", () => {
    const { energy, frames } = parts(toe, 1), disk = diskOf(4, Uint32Array.from([0, 1, 2, 1, 3, 2]));
    const { of } = frames;
    const one = new SheetEnergy({ triangles: disk.triangles.subarray(0, 3), slots: disk.slots }, toe, 1);
    const x1 = 1 / of[0]!, y2 = 1 / of[2]!, x2 = -of[1]! * x1 * y2;
    expect(one.energy(frames, Float64Array.of(0, 0, x1, 0, x2, y2, 0, 0))).toBeLessThan(1e-20);
    expect(energy.energy(frames, flat.map((x, i) => (i % 2 === 0 ? x : -x)))).toBe(Infinity);
  });
});

describe("pleats that grow firmer", () => {
  it("push the harder per flat width the more they are pushed together, down to 60 %, as the law alone does not", () => {
    const out = new Float64Array(9), law = gathering(layers, -0.04);
    const grows = (of: Law, stretch: number): number => {
      of.into(out, 0, (stretch * stretch - 1) / 2, 0);
      return out[1]! + stretch * stretch * out[4]!;
    };
    for (const stretch of [0.9, 0.8, 0.7, 0.6]) {
      expect(grows(pleated, stretch)).toBeGreaterThan(0);
      expect(grows(law, stretch)).toBeLessThan(0);
    }
  });

  it("add nothing where nothing lies in pleats", () => {
    const law = gathering(layers, -0.04), [a, b] = [new Float64Array(9), new Float64Array(9)];
    for (const [e1, e2, g] of [[0.05, 0.02, 0.01], [0.1, -0.03, 0], [0, 0, 0]] as const) {
      law.into(a, e1, e2, g);
      pleated.into(b, e1, e2, g);
      expect(b).toEqual(a);
      expect(pleated.energy(e1, e2, g)).toBe(law.energy(e1, e2, g));
    }
  });
});
