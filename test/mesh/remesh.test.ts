import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { area, volume } from "#mesh/area.ts";
import { cleanScan } from "#mesh/clean.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import { EditMesh } from "#mesh/edit-mesh.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { neighbours, nextCorner } from "#mesh/neighbours.ts";
import { readScan } from "#mesh/read.ts";
import { remesh } from "#mesh/remesh.ts";
import { thin } from "#mesh/repair/thin.ts";
import { parts } from "#mesh/topology.ts";
import { weld } from "#mesh/weld.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";
import { box, ellipsoid, quartered, torus, where } from "./support/shapes.ts";

/** Farthest that points, edge middles and triangle middles of one mesh lie off the other. */
function farthest(from: Mesh, to: Mesh): number {
  const closest = new ClosestPoint(to);
  const out = new Float64Array(3);
  const p = from.positions;
  let worst = 0;
  const ask = (...corners: number[]): void => {
    const at = (k: number): number => corners.reduce((s, v) => s + p[3 * v + k]!, 0) / corners.length;
    closest.findInto(out, at(0), at(1), at(2));
    worst = Math.max(worst, closest.squaredDistance);
  };
  for (let i = 0; i < from.triangles.length; i += 3) {
    const [a, b, c] = [from.triangles[i]!, from.triangles[i + 1]!, from.triangles[i + 2]!];
    ask(a);
    ask(a, b);
    ask(b, c);
    ask(c, a);
    ask(a, b, c);
  }
  return Math.sqrt(worst);
}

function edges({ positions: p, triangles }: Mesh): number[] {
  return Array.from(triangles, (v, h) => {
    const w = triangles[nextCorner(h)]!;
    return Math.hypot(p[3 * v]! - p[3 * w]!, p[3 * v + 1]! - p[3 * w + 1]!, p[3 * v + 2]! - p[3 * w + 2]!);
  }).sort((a, b) => a - b);
}

const closed = { openEdges: 0, crowdedEdges: 0, turnedEdges: 0 };

describe("a mesh that is being changed", () => {
  test("stays a closed surface of the same kind through any splits, turns and collapses (Euler)", () => {
    fc.assert(
      fc.property(fc.constantFrom(ellipsoid(3, 2, 1, 2), torus(6, 2, 12, 8), box(1, 2, 3)), fc.array(fc.tuple(fc.nat(2), fc.nat()), { maxLength: 200 }), (start, steps) => {
        const m = new EditMesh(start);
        for (const [kind, at] of steps) {
          const h = at % (m.triangles * 3);
          if (m.corners[h]! < 0) continue;
          if (kind === 0) m.split(h, at % 3, at % 5, at % 7);
          else if (kind === 1 && m.canFlip(h)) m.flip(h);
          else if (kind === 2 && m.canCollapse(h)) m.collapse(h);
        }
        const { mesh } = m.taken();
        expect(neighbours(mesh)).toMatchObject(closed);
        expect(parts(mesh)).toMatchObject([{ euler: parts(start)[0]!.euler, loops: 0 }]);
        for (let v = 0; v < m.vertices; v++) if (m.leaving[v]! >= 0) expect(m.corners[m.leaving[v]!]).toBe(v);
      }),
      { seed: 12, numRuns: 150 },
    );
  });

  test("keeps its open edges through splits and collapses", () => {
    const open = where(ellipsoid(1, 1, 1, 2), (x, _y, z) => z > -0.4 && Math.hypot(x, z - 1) > 0.2);
    const start = parts(open);
    const m = new EditMesh(open);
    for (let h = 0; h < 400; h++) {
      if (m.corners[h]! < 0) continue;
      if (h % 3 === 0) m.split(h, 0, 0, h);
      else if (m.canCollapse(h)) m.collapse(h);
    }
    expect(parts(m.taken().mesh)).toMatchObject(start.map(({ euler, loops }) => ({ euler, loops })));
  });
});

describe("remeshing", () => {
  test.each([1.5, 3, 6])("an ellipsoid to edges of %d mm: even, and within a twentieth of an edge of the surface", (edge) => {
    const body = ellipsoid(60, 45, 35, 5);
    const done = remesh(body, edge, unwatched);
    expect(neighbours(done)).toMatchObject(closed);
    expect(farthest(done, body)).toBeLessThan(edge * 0.06);
    expect(farthest(body, done)).toBeLessThan(edge * 0.06);
    const lengths = edges(done);
    expect(lengths[lengths.length >> 1]! / edge).toBeGreaterThan(0.85);
    expect(lengths[lengths.length >> 1]! / edge).toBeLessThan(1.15);
    expect(lengths[Math.floor(lengths.length * 0.98)]! / edge).toBeLessThan(1.45);
    expect(lengths[Math.floor(lengths.length * 0.02)]! / edge).toBeGreaterThan(0.45);
  });

  test("a box keeps its edges and corners exactly", () => {
    let fine = box(30, 20, 10);
    for (let i = 0; i < 4; i++) fine = quartered(fine);
    const done = remesh(fine, 3, unwatched);
    expect(done.triangles.length).toBeLessThan(fine.triangles.length);
    expect(volume(done)).toBeCloseTo(6000, 6);
    expect(area(done)).toBeCloseTo(2200, 6);
  });

  test("a ring stays a ring", () => {
    expect(parts(remesh(torus(60, 20, 60, 30), 8, unwatched))).toMatchObject([{ genus: 1, loops: 0 }]);
  });

  test("is the same twice", () => {
    const body = ellipsoid(60, 45, 35, 4);
    expect(remesh(body, 5, unwatched)).toEqual(remesh(body, 5, unwatched));
  });

  test.skipIf(!hasShared)("a last with its tight feather edge to 2 mm: within 0.11 mm", () => {
    const last = weld(readScan("last.stl", sharedBytes("lasts", "last_eu38_round_heel20.stl")).mesh, 1e-4);
    const done = remesh(last, 2, unwatched);
    expect(neighbours(done)).toMatchObject(closed);
    expect(done.triangles.length).toBeLessThan(last.triangles.length * 0.75);
    expect(farthest(done, last)).toBeLessThan(0.11);
    expect(farthest(last, done)).toBeLessThan(0.11);
  });
});

describe("thinning", () => {
  test("leaves about as many triangles as asked, near the surface", () => {
    const body = ellipsoid(120, 45, 35, 6); // 81 920 triangles
    const { mesh, error } = thin(body, 20_000, unwatched);
    expect(neighbours(mesh)).toMatchObject(closed);
    expect(Math.abs(mesh.triangles.length / 3 / 20_000 - 1)).toBeLessThan(0.05);
    expect(error).toBeLessThan(0.25); // edges of up to 3.5 mm over a tip of 10 mm radius: 3.5² / 80 and a little
    expect(farthest(body, mesh)).toBeLessThan(2 * error);
  });

  test("is done on scans finer than is needed, and said", () => {
    const fine = ellipsoid(120, 45, 35, 7); // 327 680 triangles
    const done = cleanScan(fine, unwatched);
    expect(done.mesh.triangles.length / 3).toBeLessThan(260_000);
    expect(done.repairs.length).toBe(1);
    expect(explain(done.repairs[0]!)).toMatch(/^The scan is finer than is needed and was thinned from 327 680 to 250 000 triangles\./);
    expect(volume(done.mesh) / volume(fine)).toBeCloseTo(1, 4);
  });
});
