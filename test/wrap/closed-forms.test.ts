import { describe, expect, test } from "vitest";
import { bendingEnergy } from "#wrap/bending.ts";
import { Ground } from "#wrap/ground.ts";
import { sheetOf } from "#wrap/sheet.ts";
import { wrap } from "#wrap/wrap.ts";
import { capMesh } from "../support/formula-surfaces.ts";
import { cylinder, largest, rolledStrip, rowEnds } from "../support/sheets-on-forms.ts";

const soft = { stretch: 100, bend: 0.1, press: 0, ground: 20 };

test("a strip rolled to radius R stores B/(2R²) per area (Euler's elastica: moment B/R)", () => {
  const { mesh, flat } = rolledStrip({ radius: 40, angle: 2, height: 30 }, { columns: 120, rows: 45 });
  const energy = bendingEnergy(sheetOf({ triangles: mesh.triangles, flat }), mesh.positions);
  const area = 80 * 30;
  expect(energy / (area / (2 * 40 * 40))).toBeGreaterThan(0.97);
  expect(energy / (area / (2 * 40 * 40))).toBeLessThan(1.01);
});

// Laplace: a band of tension T on a cylinder of radius R presses with T/R; ME-04: 2 N/mm on 40 mm is 0.05 N/mm².
test("a strip pulled round a cylinder presses with T/R", () => {
  const grid = { columns: 90, rows: 6 };
  const { mesh, flat } = rolledStrip({ radius: 40, angle: 3, height: 12 }, grid);
  const shorter = flat.map((v, i) => (i % 2 === 0 ? v / 1.02 : v));
  const held = rowEnds(grid);
  const ground = 20;
  const lain = wrap({ triangles: mesh.triangles, flat: shorter, held }, mesh.positions, new Ground(cylinder(40, -20, 40)), { card: { ...soft, bend: 0.01, ground }, toleranceMm: 1e-4 });
  // Stretched by 2 % at 100 N/mm.
  const { areas } = sheetOf({ triangles: mesh.triangles, flat: shorter });
  let force = 0, over = 0;
  for (let v = 0; v < areas.length; v++) {
    if (v % 91 < 20 || v % 91 > 70) continue;
    force -= ground * areas[v]! * lain.height[v]!;
    over += 1.02 * areas[v]!;
  }
  const mean = force / over;
  expect(mean / 0.05).toBeGreaterThan(0.99);
  expect(mean / 0.05).toBeLessThan(1.01);
});

// Geometry: a belt longer than the circle by e stands off e/2π all round, whatever the circle's size. Blown out a little, since a
// belt that bends freely at its seam is no circle by itself; that widens it by pressure · radius² / stiffness.
test.each([0.005, 0.02])("a belt %d too long stands off by its excess over 2π", (share) => {
  const grid = { columns: 120, rows: 4 };
  const { mesh, flat } = rolledStrip({ radius: 40, angle: 2 * Math.PI, height: 8 }, grid);
  const longer = flat.map((v, i) => (i % 2 === 0 ? v * (1 + share) : v));
  const at = [0, 30, 60, 90].map((c) => 2 * 121 + c);
  // Four points may only go outward, which keeps the belt in the middle.
  const guided = { vertices: Uint32Array.from([...at, at[0]!]), across: Float64Array.from([0, 1, 0, 1, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 1]) };
  const lain = wrap({ triangles: mesh.triangles, flat: longer, taped: rowEnds(grid), guided }, mesh.positions, new Ground(cylinder(40, -20, 30)), { card: { ...soft, bend: 1e-4, press: -1e-3 }, toleranceMm: 1e-4 });
  expect(lain.settled).toBe(true);
  const gap = (2 * Math.PI * 40 * share) / (2 * Math.PI) + (1e-3 * 40 * 40) / 100;
  // A ring of 120 chords is 0.005 mm wider than the circle as long.
  for (const h of lain.height) expect(Math.abs(h - gap)).toBeLessThan(0.015);
});

// Geometry: a stiff flat card on a ball touches it at one point; r from there it stands √(R² + r²) − R over the ball.
describe("a card too stiff for a dome", () => {
  const radius = 60;
  const dome = capMesh(radius, 50, 60);
  const disk = capMesh(radius, 20, 12);
  const flat = Float64Array.from(disk.positions.filter((_, i) => i % 3 !== 2));

  test("stands off at its rim by the height of the dome", () => {
    const stiff = { stretch: 1000, bend: 1000, press: 1e-4, ground: 20 };
    const lain = wrap({ triangles: disk.triangles, flat, held: Uint32Array.from([0]) }, disk.positions, new Ground(dome), { card: stiff, toleranceMm: 1e-4 });
    expect(lain.settled).toBe(true);
    for (let v = 0; v < lain.height.length; v++) {
      const r = Math.sqrt(flat[2 * v]! ** 2 + flat[2 * v + 1]! ** 2);
      expect(Math.abs(lain.height[v]! - (Math.sqrt(radius * radius + r * r) - radius))).toBeLessThan(0.06);
    }
    expect(Math.max(...lain.height)).toBeGreaterThan(3);
  });

  test("pressed harder and made softer it comes nearer, never into the dome", () => {
    const worst = [0.001, 0.02].map((press) => {
      const { height } = wrap({ triangles: disk.triangles, flat, held: Uint32Array.from([0]) }, disk.positions, new Ground(dome), { card: { stretch: 100, bend: 1, press, ground: 20 } });
      expect(Math.min(...height)).toBeGreaterThan(-0.1);
      return largest(height);
    });
    expect(worst[1]!).toBeLessThan(worst[0]!);
  });
});
