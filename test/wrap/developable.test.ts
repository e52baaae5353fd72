import { describe, expect, test } from "vitest";
import { Ground } from "#wrap/ground.ts";
import { wrap } from "#wrap/wrap.ts";
import { gridMesh } from "../support/formula-surfaces.ts";
import { cylinder, flatGrid, largest, rolledStrip, rowEnds } from "../support/sheets-on-forms.ts";

const card = { stretch: 100, bend: 0.1, press: 0.02, ground: 20 };

// Closed forms: a sheet that is bent one way only does not stretch, and lies on the cylinder or cone that it was made for.
describe("a card made for a cylinder or a cone", () => {
  test("put down a millimetre outside a cylinder, it comes to lie on it unstretched", () => {
    const grid = { columns: 60, rows: 10 };
    const { mesh, flat } = rolledStrip({ radius: 40, angle: 2, height: 30, lift: 1 }, grid);
    const held = new Uint32Array(0);
    const middle = Uint32Array.from([30 + 61 * 3, 30 + 61 * 7]);
    // Kept from turning round the cylinder and from sliding along it, which cost nothing.
    const guided = { vertices: Uint32Array.from([...middle, middle[0]!]), across: Float64Array.from([-Math.sin(1), Math.cos(1), 0, -Math.sin(1), Math.cos(1), 0, 0, 0, 1]) };
    const lain = wrap({ triangles: mesh.triangles, flat, held, guided }, mesh.positions, new Ground(cylinder(40, -20, 50)), { card, toleranceMm: 1e-3 });
    expect(lain.settled).toBe(true);
    expect(largest(lain.height)).toBeLessThan(0.01);
    // The chords of 60 columns are (angle/60)²/24 = 5e-5 shorter than their arcs.
    expect(largest(lain.most.map((s) => s - 1))).toBeLessThan(2e-4);
    expect(largest(lain.least.map((s) => s - 1))).toBeLessThan(2e-4);
  });

  // Cone frustum DV-03: radii 30 and 50, height 60; slant 63.2455532, developed radii 94.8682980 and 158.1138830, sector 113.8419958°
  // (closed forms, evaluated outside the project).
  test("the developed frustum, taped along its seam, lies on the cone", () => {
    const grid = { columns: 120, rows: 16 };
    const sector = (113.8419958 * Math.PI) / 180, [inner, outer] = [94.868298, 158.113883];
    const flat = flatGrid((s, t) => {
      const r = outer + (inner - outer) * t;
      return [r * Math.cos(s * sector), r * Math.sin(s * sector)];
    }, grid);
    const frustum = (lift: number) => (s: number, t: number) => {
      const r = 50 - 20 * t + lift, turn = 2 * Math.PI * s;
      return [r * Math.cos(turn), r * Math.sin(turn), 60 * t] as const;
    };
    const start = gridMesh(frustum(1), grid.columns, grid.rows);
    const ground = new Ground(gridMesh((s, t) => frustum(0)(s, 1.4 * t - 0.2), 720, 40));
    const foot = 8 * 121;
    const guided = { vertices: Uint32Array.from([foot + 30, foot + 90]), across: Float64Array.from([1, 0, 0, -1, 0, 0]) };
    const lain = wrap({ triangles: start.triangles, flat, taped: rowEnds(grid), guided }, start.positions, ground, { card, toleranceMm: 1e-3 });
    expect(lain.settled).toBe(true);
    expect(largest(lain.height)).toBeLessThan(0.01);
    expect(largest(lain.most.map((s) => s - 1))).toBeLessThan(5e-4);
    // It finds its height on the cone by its own size.
    const z = Array.from({ length: 121 }, (_, c) => lain.positions[3 * (foot + c) + 2]!);
    expect(largest(z.map((value) => value - 30))).toBeLessThan(0.05);
    for (let r = 0; r <= 16; r++) expect(lain.positions.slice(3 * r * 121, 3 * r * 121 + 3)).toEqual(lain.positions.slice(3 * (r * 121 + 120), 3 * (r * 121 + 120) + 3));
  });
});
