import { describe, expect, test } from "vitest";
import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import { capOfFlat } from "../support/cap-bvp.ts";
import { gridMesh } from "../support/formula-surfaces.ts";
import { flatGrid, rowEnds } from "../support/sheets-on-forms.ts";
import { sphereForm } from "../support/sphere-form.ts";

const law = new ToeLaw({ along: 40, across: 20, bias: 22, poisson: 0.4, toe: 0.03, early: 0.3 });
const [radius, inner, outer, pull] = [60, 12, 44, 0.6];
/** Differential equations along the radius, solved by themselves: shares nothing with the sheet but the law. */
const truth = capOfFlat({ law, radial: "first", R: radius, pull, pullPer: "flat", hole: { at: inner, pull: 0 }, r0: outer });

/** A ring of leather, stiff along its radius, drawn down over a ball at its outer rim. @returns the largest and the mean error of its places, mm */
function drawnOverBall(rows: number, columns: number): { readonly worst: number; readonly mean: number } {
  const grid = { columns, rows };
  const ring = (s: number, t: number) => [inner + (outer - inner) * (1 - t), 2 * Math.PI * s] as const;
  const flat = flatGrid((s, t) => {
    const [r, turn] = ring(s, t);
    return [r * Math.cos(turn), r * Math.sin(turn)];
  }, grid);
  const { triangles, positions } = gridMesh((s, t) => {
    const [r, turn] = ring(s, t), polar = (r / radius) * 1.02;
    return [radius * Math.sin(polar) * Math.cos(turn), radius * Math.sin(polar) * Math.sin(turn), radius * Math.cos(polar)];
  }, columns, rows);
  const axes = Float64Array.from({ length: (2 * triangles.length) / 3 }, (_, k) => {
    const corners = [0, 1, 2].map((c) => triangles[3 * Math.floor(k / 2) + c]!);
    const [x, y] = [0, 1].map((d) => corners.reduce((sum, v) => sum + flat[2 * v + d]!, 0)) as [number, number];
    return (k % 2 === 0 ? x : y) / Math.sqrt(x * x + y * y);
  });
  // Four rim points keep to their meridians, so that the ring does not wander over the ball.
  const guided = { vertices: Uint32Array.of(0, columns / 4, columns / 2, (3 * columns) / 4), across: Float64Array.of(0, 1, 0, 1, 0, 0, 0, 1, 0, 1, 0, 0) };
  // Pressed on, so that no pleat stands off the ball; without friction that pulls nowhere.
  const sheet = new LeatherSheet({ sheet: { triangles, flat, taped: rowEnds(grid), guided }, law, axes, bend: 0, form: sphereForm(radius), formStiffness: 500, press: 0.2 }, positions);
  for (let round = 0; round < 6; round++) {
    const x = sheet.positions();
    for (let v = 0; v < columns; v++) {
      const flatEdge = 2 * outer * Math.sin(Math.PI / columns), r = Math.sqrt(x[3 * v]! ** 2 + x[3 * v + 1]! ** 2);
      const [cos, sin] = [x[3 * v + 2]! / radius, r / radius];
      sheet.load.set([(x[3 * v]! / r) * cos, (x[3 * v + 1]! / r) * cos, -sin].map((d) => d * pull * flatEdge), 3 * v);
    }
    expect(sheet.settle({ toleranceMm: 1e-5, residualN: 1e-5 }).settled).toBe(true);
  }
  const x = sheet.positions();
  let worst = 0, sum = 0;
  for (let v = 0; v < flat.length / 2; v++) {
    const r = Math.sqrt(flat[2 * v]! ** 2 + flat[2 * v + 1]! ** 2), angle = Math.atan2(Math.sqrt(x[3 * v]! ** 2 + x[3 * v + 1]! ** 2), x[3 * v + 2]!);
    const off = radius * Math.abs(angle - truth.at(Math.min(outer, Math.max(inner, r))).theta);
    worst = Math.max(worst, off);
    sum += off;
  }
  return { worst, mean: sum / (flat.length / 2) };
}

describe("a ring of leather drawn over a ball", () => {
  const coarse = drawnOverBall(6, 48), fine = drawnOverBall(12, 96), finer = drawnOverBall(24, 192);

  test("lies where the differential equations have it", () => expect(finer.worst).toBeLessThan(0.01));
  test("with edges half as long it comes four times as near", () => {
    expect(coarse.mean / fine.mean).toBeGreaterThan(3.5);
    expect(fine.mean / finer.mean).toBeGreaterThan(3.5);
  });
  test("the truth itself is far from lying unstretched", () => expect(radius * Math.abs(truth.alpha - outer / radius)).toBeGreaterThan(0.5));
});
