import { describe, expect, test } from "vitest";
import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import { Ground } from "#wrap/ground.ts";
import { sheetOf } from "#wrap/sheet.ts";
import { beltRound, dragged } from "../support/belts.ts";
import { capMesh } from "../support/formula-surfaces.ts";
import { cylinder, largest, rolledStrip, rowEnds } from "../support/sheets-on-forms.ts";

const law = new ToeLaw({ along: 60, across: 30, bias: 28, poisson: 0.4, toe: 0.03, early: 0.25 });

// Euler–Eytelwein: T₂/T₁ = exp(μθ), whatever the radius (ME-01; ME-02 and ME-03 the same with quoted figures of leather on wood and on oak).
describe("a strip dragged round a cylinder", () => {
  test.each([
    [0.2, 180, 1.874456],
    [0.3, 90, 1.601978],
    [0.3, 180, 2.566332],
    [0.4, 90, 1.874456],
    [0.35, 120, 2.081395],
    [0.61, 90, 2.606963],
    [0.52, 90, 2.263278],
  ])("friction %d over %d degrees holds back %d-fold", (friction, degrees, ratio) => {
    const { pulled, held, lowest, settled } = dragged(beltRound({ radius: 40, degrees, tail: 30, width: 10, edge: 2 }), { law, friction, load: 2, way: 16, increments: 16 });
    expect(settled).toBe(true);
    expect(Math.abs(pulled / held / ratio - 1)).toBeLessThan(0.01);
    expect(lowest).toBeGreaterThan(-0.01);
  });

  test("without friction it pulls as it is held", () => {
    const { pulled, held } = dragged(beltRound({ radius: 40, degrees: 120, tail: 30, width: 10, edge: 2 }), { law, friction: 0, load: 2, way: 4, increments: 2 });
    expect(Math.abs(pulled / held - 1)).toBeLessThan(2e-3);
  });
});

// Laplace: p = T/R on a cylinder and 2T/R on a sphere (ME-04: T 2 N/mm, R 40 mm: 0.05 and 0.10 N/mm²).
describe("pressure of a tight sheet", () => {
  test("on a cylinder", () => {
    const grid = { columns: 90, rows: 6 };
    const { mesh, flat } = rolledStrip({ radius: 40, angle: 3, height: 12 }, grid);
    const shorter = flat.map((v, i) => (i % 2 === 0 ? v / 1.06 : v));
    const sheet = new LeatherSheet({ sheet: { triangles: mesh.triangles, flat: shorter, held: rowEnds(grid) }, law, bend: 0, form: new Ground(cylinder(40, -20, 40)) }, mesh.positions);
    expect(sheet.settle({ toleranceMm: 1e-4, residualN: 1e-5 }).settled).toBe(true);
    const { pull, along, across } = sheet.strains(), normal = sheet.normalForces(), { areas } = sheetOf({ triangles: mesh.triangles, flat: shorter });
    // The whole breadth of a band across the middle.
    const inside = Array.from({ length: 91 }, (_, c) => c).filter((c) => c > 25 && c < 65);
    let force = 0, area = 0, tension = 0;
    for (const c of inside) for (let r = 0; r <= 6; r++) [force, area] = [force + normal[91 * r + c]!, area + areas[91 * r + c]!];
    for (const c of inside) for (let r = 0; r < 6; r++) for (const t of [2 * (90 * r + c), 2 * (90 * r + c) + 1]) tension += (pull[t]! * along[t]! * across[t]!) / (12 * inside.length);
    expect(Math.abs(force / area / (tension / 40) - 1)).toBeLessThan(0.02);
  });

  test("on a sphere", () => {
    const radius = 40, disk = capMesh(radius, 40, 14);
    const even = new ToeLaw({ along: 40, across: 40, bias: 40, poisson: 0.3, toe: 0, early: 1 });
    // A rim drawn outward all round over the flat of a cap: the middle is stretched alike both ways.
    const flat = Float64Array.from({ length: (disk.positions.length / 3) * 2 }, (_, k) => {
      const v = Math.floor(k / 2), x = disk.positions[3 * v]!, y = disk.positions[3 * v + 1]!, z = disk.positions[3 * v + 2]!;
      const r = Math.sqrt(x * x + y * y), arc = radius * Math.atan2(r, z);
      return r === 0 ? 0 : ((k % 2 === 0 ? x : y) / r) * (arc / 1.08);
    });
    const held = Uint32Array.from({ length: 6 * 14 }, (_, k) => disk.positions.length / 3 - 6 * 14 + k);
    const sheet = new LeatherSheet({ sheet: { triangles: disk.triangles, flat, held }, law: even, bend: 0, form: new Ground(capMesh(radius, 50, 80)) }, disk.positions);
    expect(sheet.settle({ toleranceMm: 1e-4, residualN: 1e-5 }).settled).toBe(true);
    const { pull, pullAcross, most, least } = sheet.strains(), pressure = sheet.pressures();
    let tension = 0, area = 0, force = 0;
    for (let t = 0; t < 6 * 25; t++) [tension, area] = [tension + (pull[t]! + pullAcross[t]!) / 2 / 150, area + (most[t]! * least[t]!) / 150];
    const inner = 1 + 3 * 4 * 5;
    for (let v = 0; v < inner; v++) force += pressure[v]! / inner;
    expect(Math.abs(force / area / ((2 * tension) / radius) - 1)).toBeLessThan(0.02);
  });
});

describe("tacks", () => {
  test("take over what the pull was, and nothing moves", () => {
    const belt = beltRound({ radius: 40, degrees: 90, tail: 20, width: 10, edge: 2 });
    const sheet = new LeatherSheet({ sheet: belt.sheet, law, bend: 0.5, form: new Ground(cylinder(40, -20, 40)), friction: 0.3 }, belt.start);
    sheet.tack(belt.ends[0]);
    belt.ends[1].forEach((v) => sheet.load.set(belt.direction.map((d) => d * 4), 3 * v));
    expect(sheet.settle().settled).toBe(true);
    const before = sheet.positions();
    sheet.tack(belt.ends[1]);
    sheet.begin();
    expect(sheet.settle().settled).toBe(true);
    expect(largest(sheet.positions().map((v, i) => v - before[i]!))).toBeLessThan(0.01);
    const forces = sheet.tackForces();
    for (const v of belt.ends[1]) for (let d = 0; d < 3; d++) expect(Math.abs(forces[3 * v + d]! - 4 * belt.direction[d]!)).toBeLessThan(0.05);
  });
});
