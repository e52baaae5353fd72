// Truth: the ellipsoid of half axes 120, 45, 35 mm (checks.md SU-02: area 49561.77 mm², volume 791681.35 mm³, girth at x = 0 252.3101 mm).
import { describe, expect, test } from "vitest";
import type { Finding } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { area, volume } from "#mesh/area.ts";
import { cleanScan } from "#mesh/clean.ts";
import { crossingTriangles } from "#mesh/crossings.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { neighbours } from "#mesh/neighbours.ts";
import { hullGirth, planeSections } from "#mesh/section.ts";
import { parts } from "#mesh/topology.ts";
import { angleDefects, ellipsoid, loose, moved, quartered, together, where } from "./support/shapes.ts";

const body = ellipsoid(120, 45, 35, 4);

/** Cleans and checks what must hold of every result: one closed ball of a surface (χ = 2, angle defects 4π: SP-05) that nowhere crosses itself and is left alone from now on. */
function cleaned(mesh: Mesh): { mesh: Mesh; repairs: Finding[]; codes: string[] } {
  const done = cleanScan(mesh, unwatched);
  expect(neighbours(done.mesh)).toMatchObject({ openEdges: 0, crowdedEdges: 0, turnedEdges: 0 });
  expect(parts(done.mesh)).toMatchObject([{ euler: 2, genus: 0 }]);
  expect(angleDefects(done.mesh)).toBeCloseTo(4 * Math.PI, 6);
  expect(crossingTriangles(done.mesh).count).toBe(0);
  const again = cleanScan(done.mesh, unwatched);
  expect(again.repairs).toEqual([]);
  expect(again.mesh).toEqual(done.mesh);
  return { ...done, codes: done.repairs.map((r) => r.code) };
}

/** How far the points lie off the ellipsoid, to first order: root mean square and most. */
function off({ positions: p }: Mesh): { rms: number; most: number } {
  let [sum, most] = [0, 0];
  for (let i = 0; i < p.length; i += 3) {
    const [x, y, z] = [p[i]! / 120, p[i + 1]! / 45, p[i + 2]! / 35];
    const d = Math.abs(x * x + y * y + z * z - 1) / (2 * Math.hypot(x / 120, y / 45, z / 35));
    sum += d * d;
    most = Math.max(most, d);
  }
  return { rms: Math.sqrt(sum / (p.length / 3)), most };
}

const girth = (mesh: Mesh): number => hullGirth(planeSections(mesh, [0, 0, 0], [1, 0, 0])[0]!.points, [1, 0, 0]);

function chance(seed: number): () => number {
  let s = seed;
  return () => (s = (Math.imul(s, 1664525) + 1013904223) >>> 0) / 2 ** 32;
}

function flipped(mesh: Mesh, share: number): Mesh {
  const next = chance(7);
  const triangles = mesh.triangles.slice();
  for (let i = 0; i < triangles.length; i += 3) if (next() < share) [triangles[i], triangles[i + 1]] = [triangles[i + 1]!, triangles[i]!];
  return { positions: mesh.positions, triangles };
}

function shaken(mesh: Mesh, by: number): Mesh {
  const next = chance(3);
  return { positions: mesh.positions.map((x) => x + by * (2 * next() - 1)), triangles: mesh.triangles };
}

describe("mended in place: the rest of the scan stays to the last digit", () => {
  test("three of ten triangles inside out", () => {
    const done = cleaned(flipped(loose(body), 0.3));
    expect(done.codes).toEqual(["triangles-turned"]);
    expect(volume(done.mesh)).toBeCloseTo(volume(body), 6);
  });

  test("half of the triangles twice", () => {
    const done = cleaned({ positions: body.positions, triangles: Uint32Array.from([...body.triangles, ...body.triangles.subarray(0, body.triangles.length / 2)]) });
    expect(done.codes).toEqual(["duplicates-dropped"]);
    expect(area(done.mesh)).toBeCloseTo(area(body), 6);
  });

  test("seams that gape by rounding, every triangle for itself", () => {
    const done = cleaned(shaken(loose(body), 0.02));
    expect(done.codes).toEqual(["cracks-sewn"]);
    expect(done.mesh.triangles.length).toBe(body.triangles.length);
    expect(off(done.mesh).most).toBeLessThan(0.03);
  });

  test("one side finer than the other: cracks with T-junctions", () => {
    const half = (side: 1 | -1): Mesh => where(body, (x) => side * (x - 3) > 0);
    const done = cleaned(together(half(1), quartered(half(-1))));
    expect(done.codes).toEqual(["cracks-sewn"]);
    expect(volume(done.mesh)).toBeCloseTo(volume(body), 3);
  });

  test("islands inside", () => {
    const islands = [-50, -30, -10, 10, 30].map((shift) => moved(ellipsoid(3, 3, 3, 1), (x, y, z) => [x + shift, y, z]));
    const done = cleaned(together(body, ...islands));
    expect(done.codes).toEqual(["debris-dropped"]);
    expect(volume(done.mesh)).toBeCloseTo(volume(body), 6);
  });

  test("a second skin inside, whichever way it faces: the outer one is kept", () => {
    const inner = moved(body, (x, y, z) => [x * 0.97, y * 0.93, z * 0.92]);
    for (const second of [inner, { positions: inner.positions, triangles: inner.triangles.slice().reverse() }]) {
      const done = cleaned(together(body, second));
      expect(done.codes).toEqual(["inner-wall-dropped"]);
      expect(volume(done.mesh)).toBeCloseTo(volume(body), 6);
    }
  });

  test("a dent so deep that it comes out on the other side", () => {
    const done = cleaned(moved(body, (x, y, z) => {
      const d = Math.hypot(x - 10, y);
      return z > 0 && d < 12 ? [x, y, z - 90 * (1 - (d / 12) ** 2)] : [x, y, z];
    }));
    expect(done.codes).toEqual(["crossings-cut"]);
    expect(done.mesh.positions.length).toBeGreaterThan(0.95 * body.positions.length);
  });
});

describe("made anew where mending does not do", () => {
  const body = ellipsoid(120, 45, 35, 3); // 0.5 mm off the ellipsoid between its points

  test("two skins that cross, as from two passes laid over each other badly: their outline together", () => {
    const done = cleaned(together(body, moved(body, (x, y, z) => [x + 0.7, y + 0.4, z - 0.5])));
    expect(done.codes).toEqual(["made-anew"]);
    // the union stands off the first by at most the shift, 0.95 mm
    expect(off(done.mesh).most).toBeLessThan(1.5);
    expect(volume(done.mesh) / volume(body)).toBeGreaterThan(1);
    expect(volume(done.mesh) / volume(body)).toBeLessThan(1.03);
  });

  test("tells how far it is in small steps that never go back", () => {
    const told: number[] = [];
    cleanScan(together(body, moved(body, (x, y, z) => [x + 0.7, y + 0.4, z - 0.5])), (stage, fraction) => stage === "clean: made anew" && told.push(fraction));
    expect(told[0]).toBe(0);
    expect(told.at(-1)).toBe(1);
    told.forEach((f, i) => i > 0 && expect(f - told[i - 1]!).toBeGreaterThanOrEqual(-1e-9));
    expect(Math.max(...told.map((f, i) => f - (told[i - 1] ?? 0)))).toBeLessThanOrEqual(0.16);
    expect(told.length).toBeGreaterThan(20);
  });

  test("torn into 14 sheets that were shifted by up to a millimetre and face either way", () => {
    const sector = (y: number, z: number): number => Math.floor(((Math.atan2(y, z) + Math.PI) / (2 * Math.PI)) * 7 - 1e-9);
    const sheets = Array.from({ length: 14 }, (_, q) => {
      const sheet = moved(where(body, (x, y, z) => sector(y, z) + (x > 0 ? 7 : 0) === q), (x, y, z) => [x + 0.8 * Math.sin(q * 2.1), y + 0.8 * Math.cos(q * 3.3), z + 0.8 * Math.sin(q * 5.1)]);
      return q % 3 === 0 ? { positions: sheet.positions, triangles: sheet.triangles.slice().reverse() } : sheet;
    });
    const done = cleaned(together(...sheets));
    expect(done.codes).toEqual(["made-anew"]);
    expect(off(done.mesh).most).toBeLessThan(1.8); // the sheets themselves are up to 1.3 mm and 0.5 mm off
    expect(girth(done.mesh)).toBeGreaterThan(249);
    expect(girth(done.mesh)).toBeLessThan(257);
  });

  test("every triangle for itself, shaken by half a millimetre, three of ten inside out", () => {
    const done = cleaned(shaken(flipped(loose(body), 0.3), 0.5));
    expect(done.codes).toEqual(["made-anew"]);
    expect(off(done.mesh).rms).toBeLessThan(0.3);
    expect(Math.abs(volume(done.mesh) / volume(body) - 1)).toBeLessThan(0.004);
    expect(Math.abs(volume(done.mesh) / 791681.3487 - 1)).toBeLessThan(0.012); // its plain triangles hold 0.8 % less
    expect(Math.abs(area(done.mesh) / 49561.76848 - 1)).toBeLessThan(0.02);
  });

  test("pose and unit change little: the same soup turned, shifted and in metres", () => {
    const soup = shaken(flipped(loose(body), 0.3), 0.5);
    const [c, d] = [0.8, 0.6];
    const laid = moved(soup, (x, y, z) => [0.001 * (c * x - d * z + 40), 0.001 * (y - 7), 0.001 * (d * x + c * z + 3)]);
    const there = cleaned(laid).mesh;
    const back = moved(there, (x, y, z) => {
      const [u, v, w] = [1000 * x - 40, 1000 * y + 7, 1000 * z - 3];
      return [c * u + d * w, v, c * w - d * u];
    });
    const here = cleaned(soup).mesh;
    expect(Math.abs(volume(back) / volume(here) - 1)).toBeLessThan(0.002);
    expect(Math.abs(area(back) / area(here) - 1)).toBeLessThan(0.01);
    expect(Math.abs(girth(back) - girth(here))).toBeLessThan(0.7);
    const [a, b] = [off(back).rms, off(here).rms];
    expect(Math.abs(a - b)).toBeLessThan(0.05);
  });
});
