import { describe, expect, test } from "vitest";
import { cutShell } from "#shell/cut.ts";
import { SlitTable } from "#shell/relief-lay.ts";
import { closeBack, slit } from "#shell/slit.ts";
import { parts } from "#mesh/topology.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { demoBoard } from "../support/demo-shell.ts";
import { capMesh, gridMesh } from "../support/formula-surfaces.ts";

type Profile = (share: number) => { readonly radius: number; readonly z: number };

/** A surface of revolution with a point in its middle: vertex 0, then `rings` rings of `gores` points; ring r, gore g is 1 + (r − 1) · gores + g. */
function turned(profile: Profile, rings: number, gores: number): Mesh {
  const positions: number[] = [0, 0, profile(0).z];
  const triangles: number[] = [];
  const at = (r: number, g: number) => 1 + (r - 1) * gores + (g % gores);
  for (let r = 1; r <= rings; r++)
    for (let g = 0; g < gores; g++) {
      const { radius, z } = profile(r / rings), angle = (2 * Math.PI * g) / gores;
      positions.push(radius * Math.cos(angle), radius * Math.sin(angle), z);
      if (r === 1) triangles.push(0, at(1, g), at(1, g + 1));
      else triangles.push(at(r - 1, g), at(r, g), at(r, g + 1), at(r - 1, g), at(r, g + 1), at(r - 1, g + 1));
    }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

const meridian = (rings: number, gores: number, g: number, to: number): Uint32Array => Uint32Array.from({ length: rings - to + 1 }, (_, k) => (rings - k === 0 ? 0 : 1 + (rings - k - 1) * gores + g));

/** Rim on the flat: sum of the gores' chords, and of their angles seen from the middle point; and the mean way from there to the rim. */
function flatRim(mesh: Mesh, corners: Float64Array, rings: number, gores: number) {
  const middle = 2 * mesh.triangles.indexOf(0);
  const [cx, cy] = [corners[middle]!, corners[middle + 1]!];
  const first = mesh.triangles.length - (rings > 1 ? 6 : 3) * gores;
  let length = 0, angle = 0, radius = 0;
  for (let g = 0; g < gores; g++) {
    const h = first + 6 * g + 1; // its corner and the next are the gore's rim
    const [ax, ay, bx, by] = [corners[2 * h]! - cx, corners[2 * h + 1]! - cy, corners[2 * h + 2]! - cx, corners[2 * h + 3]! - cy];
    length += Math.hypot(bx - ax, by - ay);
    angle += Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    radius += Math.hypot(ax, ay) / gores;
  }
  return { length, angle, radius };
}

describe("surfaces whose slits are known", () => {
  const alpha = Math.PI / 6, R = 100, rings = 24, gores = 48;
  const cap = turned((s) => ({ radius: R * Math.sin(alpha * s), z: R * Math.cos(alpha * s) }), rings, gores);

  test("SP-08: a cap of 30° cut into gores keeps radii and rim, and opens by 2π(1 − sin α/α) = 16.2253° in all", () => {
    const table = new SlitTable(cap);
    const whole = table.lay([]), goring = table.lay(Array.from({ length: gores }, (_, g) => meridian(rings, gores, g, 1)));
    const rim = flatRim(cap, goring.corners, rings, gores);
    expect(rim.length).toBeCloseTo(2 * gores * R * Math.sin(alpha) * Math.sin(Math.PI / gores), 0); // 314.16 less the chords' share
    expect(Math.abs(rim.radius / (R * alpha) - 1)).toBeLessThan(0.001); // SP-01: 52.3599
    expect(Math.abs((360 - (rim.angle * 180) / Math.PI) - 16.2253)).toBeLessThan(0.03);
    expect((goring.total - 4) / (whole.total - 4)).toBeLessThan(0.01);
    // Milnor 1969: uncut, no map of this cap has stretches closer together than α / sin α.
    expect(Math.max(...whole.stretchMax) / Math.min(...whole.stretchMin)).toBeGreaterThan((alpha / Math.sin(alpha)) * 0.999);
    expect(Math.max(...goring.stretchMax)).toBeLessThan(1.01);
  });

  test("its gathered rim comes nearer to its true length with every doubling of the slits", () => {
    const table = new SlitTable(cap);
    const over = [0, 3, 6, 12, 24].map((n) => flatRim(cap, table.lay(Array.from({ length: n }, (_, k) => meridian(rings, gores, (k * gores) / n, rings / 2))).corners, rings, gores).length);
    for (let k = 1; k < over.length; k++) expect(over[k]!).toBeLessThan(over[k - 1]!);
  });

  test("a cone slit along a generator lies flat with no stretch at all", () => {
    const cone = turned((s) => ({ radius: 60 * s, z: 80 * (1 - s) }), 8, 24);
    const table = new SlitTable(cone);
    expect(table.lay([]).energy).toBeGreaterThan(4.01);
    const open = table.lay([meridian(8, 24, 5, 0)]);
    expect(open.energy).toBeCloseTo(4, 9);
    // Its sector: circumference over slant height, with the chords of 24 sides.
    expect(flatRim(cone, open.corners, 8, 24).angle).toBeCloseTo(24 * 2 * Math.asin((60 * Math.sin(Math.PI / 24)) / 100), 5);
  });

  test("a cylinder gains nothing from any nick", () => {
    const columns = 24, rows = 10;
    const cylinder = gridMesh((s, t) => [40 * Math.cos(Math.PI * s), 40 * Math.sin(Math.PI * s), 60 * t], columns, rows);
    const table = new SlitTable(cylinder);
    expect(table.lay([]).energy).toBeCloseTo(4, 9);
    for (const [column, length] of [[5, 3], [12, 8], [20, 6]] as const)
      expect(table.lay([Uint32Array.from({ length: length + 1 }, (_, k) => k * (columns + 1) + column)]).energy).toBeCloseTo(4, 9);
  });
});

describe("slitting a mesh", () => {
  const columns = 8, rows = 6;
  const sheet = gridMesh((s, t) => [80 * s, 60 * t, 0], columns, rows);
  const column = (c: number, from: number, to: number) => Uint32Array.from({ length: Math.abs(to - from) + 1 }, (_, k) => (from + Math.sign(to - from) * k) * (columns + 1) + c);

  test("doubles the path's vertices but the one it ends at, and moves none", () => {
    const { mesh, source } = slit(sheet, [column(3, 0, 4)]);
    expect(source.length - sheet.positions.length / 3).toBe(4);
    expect([...source.subarray(sheet.positions.length / 3)].sort((a, b) => a - b)).toEqual([...column(3, 0, 3)]);
    mesh.triangles.forEach((v, h) => expect(source[v]).toBe(sheet.triangles[h]));
    expect(parts(mesh)).toMatchObject([{ euler: 1, loops: 1 }]);
  });

  test("cuts a part off from rim to rim, opens a slit inside as a hole, and does nothing along the rim", () => {
    expect(parts(slit(sheet, [column(3, 0, rows)]).mesh)).toMatchObject([{ euler: 1 }, { euler: 1 }]);
    expect(parts(slit(sheet, [column(3, 1, 4)]).mesh)).toMatchObject([{ loops: 2 }]);
    expect(slit(sheet, [column(0, 0, rows)]).mesh).toEqual(sheet);
  });

  test("joins slits that meet", () => {
    const across = Uint32Array.from([0, 1, 2, 3], (c) => 4 * (columns + 1) + c);
    expect(parts(slit(sheet, [column(3, 0, 4), across]).mesh)).toHaveLength(2);
  });

  test("refuses a path that leaves the edges", () => {
    expect(() => slit(sheet, [[0, 2]])).toThrow(/edges/);
  });

  test("works on any disk: a cap slit on one radius", () => {
    const cap = capMesh(100, 30, 6);
    const radius = Uint32Array.from({ length: 7 }, (_, k) => (6 - k === 0 ? 0 : 1 + 3 * (6 - k) * (5 - k)));
    expect(parts(slit(cap, [radius]).mesh)).toMatchObject([{ euler: 1, loops: 1 }]);
  });
});

test("a shell with its back closed is a ring that the back's own path opens again", () => {
  const { board, drawn } = demoBoard();
  const open = cutShell(board, drawn, 1500);
  const { shell } = closeBack(open);
  expect(parts(shell.mesh)).toMatchObject([{ euler: 0, loops: 2 }]);
  expect(shell.mesh.positions.length).toBe(open.mesh.positions.length - 3 * open.edges.backMedial.length);
  const again = slit(shell.mesh, [shell.edges.backMedial]);
  expect(parts(again.mesh)).toMatchObject([{ euler: 1, loops: 1 }]);
  expect(again.mesh.positions.length).toBe(open.mesh.positions.length);
});
