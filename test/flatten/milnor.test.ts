import { describe, expect, test } from "vitest";
import { flatten } from "#flatten/flatten.ts";
import { principalStretches } from "#flatten/principal.ts";
import { capMesh } from "../support/formula-surfaces.ts";
import { conformalOf, kernelOf } from "../support/flat-kernel.ts";

const RADIUS = 100;
const RINGS = 40;
// Milnor 1969, "A problem in cartography": no flat map of a cap of angular radius α has a smaller ratio of largest to
// smallest stretch than α / sin α; the azimuthal equidistant map has it. Conformal maps: best ratio sec²(α/2).
const table = [
  ["MI-01", 0.1, 1.0016686, 1.0025042],
  ["MI-02", 0.2, 1.0066979, 1.010067],
  ["MI-03", 0.3, 1.015159, 1.0228419],
  ["MI-04", 0.4, 1.027173, 1.0410914],
  ["MI-05", 0.5, 1.0429148, 1.0651995],
  ["MI-06", Math.PI / 6, 1.0471976, 1.0717968],
  ["MI-07", 0.6, 1.0626193, 1.0956889],
  ["MI-08", 0.8, 1.1152063, 1.1787541],
  ["MI-09", 1, 1.1883951, 1.2984464],
] as const;

const cap = (alpha: number) => capMesh(RADIUS, (alpha * 180) / Math.PI, RINGS);
const ratio = ({ stretchMax, stretchMin }: { stretchMax: Float64Array; stretchMin: Float64Array }) => Math.max(...stretchMax) / Math.min(...stretchMin);

function ratioOf(alpha: number, uv: Float64Array): number {
  const { frames, disk } = kernelOf(cap(alpha));
  const result = principalStretches(frames, disk.triangles, uv);
  expect(result.flipped).toBe(0);
  return ratio(result);
}

describe("stretch that a cap cannot avoid", () => {
  test.each(table)("%s: the azimuthal equidistant map has Milnor's ratio", (_, alpha, bound) => {
    const { positions } = cap(alpha);
    const uv = new Float64Array((positions.length / 3) * 2);
    for (let i = 0; i < uv.length / 2; i++) {
      const [x, y, z] = [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!];
      const away = Math.hypot(x, y);
      const scale = away > 0 ? (RADIUS * Math.atan2(away, z)) / away : 1;
      uv.set([x * scale, y * scale], 2 * i);
    }
    const found = ratioOf(alpha, uv);
    expect(Math.abs(found / bound - 1)).toBeLessThan(0.01);
    expect(Math.abs((found - 1) / (bound - 1) - 1)).toBeLessThan(0.08); // and in the part that is stretch
  });

  test.each(table)("%s: the conformal start has the ratio of the stereographic map", (_, alpha, _bound, conformal) => {
    // Of the many conformal maps the pins choose one; opposite pins half-way out come nearest to the stereographic one.
    const half = RINGS / 2;
    const pin = 1 + 3 * half * (half - 1);
    const found = ratioOf(alpha, conformalOf(cap(alpha), pin, pin + 3 * half, 2 * RADIUS * Math.sin(alpha / 2)));
    expect(Math.abs(found / conformal - 1)).toBeLessThan(0.02);
  });

  test.each(table)("%s: no flattening claims less than the bound", (_, alpha, bound) => {
    // The flat triangles of the mesh lie inside the cap, which takes a little of its curvature away.
    expect(ratio(flatten(cap(alpha)))).toBeGreaterThan(bound * (1 - 2e-4));
  });
});
