import { describe, expect, test } from "vitest";
import { flatten } from "#flatten/flatten.ts";
import { capMesh } from "../support/formula-surfaces.ts";
import { flatDistance } from "../support/flat-kernel.ts";

const RADIUS = 40;

/**
 * Radius of the flattened cap from the one-dimensional problem: of all maps (θ, φ) → (r(θ), φ) the one with the least
 * ∫ (w(r′/R) + w(r / (R sin θ))) sin θ dθ, w(σ) = σ² + σ⁻². Linear elements, two Gauss points, Newton with Thomas's
 * elimination: nothing is shared with the flattening under test.
 */
function variationalRadius(halfAngle: number, cells: number): number {
  const step = halfAngle / cells;
  const r = Float64Array.from({ length: cells + 1 }, (_, i) => RADIUS * step * i);
  for (let round = 0; round < 50; round++) {
    const gradient = new Float64Array(cells + 1);
    const diagonal = new Float64Array(cells + 1);
    const beside = new Float64Array(cells + 1);
    for (let i = 0; i < cells; i++)
      for (const at of [0.5 - 0.5 / Math.sqrt(3), 0.5 + 0.5 / Math.sqrt(3)]) {
        const sine = Math.sin(step * (i + at));
        const weight = (step / 2) * sine;
        // σ = Σ r · coefficient, for both principal directions.
        for (const [low, high] of [[-1 / (RADIUS * step), 1 / (RADIUS * step)], [(1 - at) / (RADIUS * sine), at / (RADIUS * sine)]] as const) {
          const sigma = low * r[i]! + high * r[i + 1]!;
          const first = weight * (2 * sigma - 2 * sigma ** -3);
          const second = weight * (2 + 6 * sigma ** -4);
          gradient[i]! += first * low;
          gradient[i + 1]! += first * high;
          diagonal[i]! += second * low * low;
          diagonal[i + 1]! += second * high * high;
          beside[i]! += second * low * high;
        }
      }
    // The pole stays at 0: solve for 1 … cells.
    for (let i = 2; i <= cells; i++) {
      const f = beside[i - 1]! / diagonal[i - 1]!;
      diagonal[i]! -= f * beside[i - 1]!;
      gradient[i]! -= f * gradient[i - 1]!;
    }
    let change = 0;
    for (let i = cells; i >= 1; i--) {
      change = (gradient[i]! - (i < cells ? beside[i]! * change : 0)) / diagonal[i]!;
      r[i]! -= change;
    }
    if (Math.abs(change) < 1e-13) break;
  }
  return r[cells]!;
}

/** Error of second order taken out. */
const reference = (degrees: number): number => (4 * variationalRadius((degrees * Math.PI) / 180, 800) - variationalRadius((degrees * Math.PI) / 180, 400)) / 3;

function flatRadius(degrees: number, rings: number): { mean: number; steps: number; rimStretch: number } {
  // The table's errors are the mesh's alone: go on until nothing moves.
  const { uv, steps } = flatten(capMesh(RADIUS, degrees, rings), { toleranceMm: 1e-5 });
  const count = uv.length / 2;
  let mean = 0;
  for (let i = count - 6 * rings; i < count; i++) mean += flatDistance(uv, 0, i) / (6 * rings);
  return { mean, steps: steps.length, rimStretch: mean / (RADIUS * Math.sin((degrees * Math.PI) / 180)) };
}

// Columns: half-angle, flat radius in mm, σ₂ at the rim, errors at 600, 2 400 and 9 600 triangles: an earlier measurement on
// the same rings against another one-dimensional solution.
const table = [
  [30, 20.707517, 1.0354, -0.0035, -0.0009, -0.0002],
  [45, 30.629267, 1.0829, -0.0123, -0.0031, -0.0008],
  [60, 40.058174, 1.1564, -0.0303, -0.0076, -0.0019],
  [80, 51.64204, 1.311, -0.0767, -0.0192, -0.0048],
] as const;

describe("spherical caps of radius 40", () => {
  test.each(table)("%d°: the one-dimensional solution agrees with the table", (degrees, radius) => {
    expect(Math.abs(reference(degrees) - radius)).toBeLessThan(2e-6);
  });

  test.each(table)("%d°: the mesh's error is of second order and as small as known", (degrees, _, rim, at600, at2400, at9600) => {
    const exact = reference(degrees);
    for (const [rings, known] of [[10, at600], [20, at2400], [40, at9600]] as const) {
      const { mean, steps, rimStretch } = flatRadius(degrees, rings);
      expect(Math.abs(mean - exact - known)).toBeLessThan(1e-4);
      expect(steps).toBeLessThanOrEqual(9);
      expect(rimStretch).toBeCloseTo(rim, 2);
    }
  });

  test("60° at 20 184 triangles: within 0.002 mm", () => {
    expect(Math.abs(flatRadius(60, 58).mean - reference(60))).toBeLessThan(0.002);
  });
});
