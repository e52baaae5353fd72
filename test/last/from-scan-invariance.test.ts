// One body, scanned in other ways, is one last. No truth is needed: what is found is held against what was found before.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import type { Last } from "#last/last.ts";
import { cleanScan } from "#mesh/clean.ts";
import { EditMesh } from "#mesh/edit-mesh.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { nextCorner } from "#mesh/neighbours.ts";
import { remesh } from "#mesh/remesh.ts";
import { asInTruth, featherError, intoTruth, laid, lengthsMm, type FileRule } from "../support/against-truth.ts";
import { cleanedScan, exampleLast } from "../support/scans.ts";
import { hasShared } from "../support/shared.ts";
import { lastNames } from "../support/truth-last.ts";
import { roughened } from "../support/worn.ts";

const find = (mesh: Mesh): Last => lastFromScan(mesh, { name: "trial" }, unwatched);
const lineOf = (last: Last): number[][] => Array.from({ length: 480 }, (_, i) => [...intoTruth(last, asInTruth, last.feather.points.subarray(3 * i, 3 * i + 3))]);

/** A rotation by a unit quaternion, from any four numbers. */
function rotation(q: readonly number[]): number[][] {
  const n = Math.hypot(...q);
  const [w, x, y, z] = (n > 1e-6 ? q.map((v) => v / n) : [1, 0, 0, 0]) as [number, number, number, number];
  return [
    [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
    [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
    [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
  ];
}

/** Limits: lengths 0.3 mm, feather line 0.5 mm root mean square. */
function expectSame(again: Last, rule: FileRule, first: Last, lengthMm = 0.3): void {
  for (const k of lengthsMm) expect(Math.abs(again.measures[k] - first.measures[k]), k).toBeLessThan(lengthMm);
  expect(featherError(again, rule, lineOf(first)).rms).toBeLessThan(0.5);
}

const upright: readonly (readonly [string, readonly number[]])[] = [
  ["upside down", [0, 1, 0, 0]],
  ["on its left side", [1, 1, 0, 0]],
  ["on its right side", [1, -1, 0, 0]],
  ["on its cone, toe up", [1, 0, 1, 0]],
  ["on its toe", [1, 0, -1, 0]],
  ["turned about", [0, 0, 0, 1]],
];

describe("the made last", () => {
  const { mesh } = exampleLast();
  const first = find(mesh);

  test.each(upright)("%s", (_, q) => {
    const rule: FileRule = { ...asInTruth, rotation: rotation(q) };
    const again = find(laid(mesh, rule));
    expect(again.side).toBe(first.side);
    expectSame(again, rule, first);
  });

  test("in any pose and unit, of either hand", () => {
    const number = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(number, number, number, number), fc.constantFrom(0.001, 0.1, 1, 1 / 25.4), fc.boolean(), (q, unitPerMm, mirrored) => {
        const rule: FileRule = { unitPerMm, rotation: rotation(q), translationMm: [300 * q[0], 300 * q[1], 300 * q[2]] };
        const again = find(laid(mesh, rule, mirrored));
        expect(again.placement.unitPerMm).toBe(unitPerMm);
        expect(again.side === first.side).toBe(!mirrored);
        if (mirrored) for (const k of lengthsMm) expect(Math.abs(again.measures[k] - first.measures[k]), k).toBeLessThan(0.3);
        else expectSame(again, rule, first);
      }),
      { seed: 31, numRuns: 6 },
    );
  });

  test("in other triangles, rough by 0.2 mm, inside out", () => {
    for (const edge of [2, 3]) expectSame(find(remesh(mesh, edge, unwatched)), asInTruth, first);
    expectSame(find(roughened(remesh(mesh, 1.5, unwatched), 0.2, 5)), asInTruth, first);
    const inside: Mesh = { positions: mesh.positions, triangles: mesh.triangles.slice().reverse() };
    const again = find(cleanScan(inside, unwatched).mesh);
    expect(again.side).toBe(first.side);
    expectSame(again, asInTruth, first);
  });
});

/** The same surface in uneven triangles: as many edges again as there are triangles, split anywhere between a tenth and nine tenths. */
function splintered(mesh: Mesh): Mesh {
  const m = new EditMesh(mesh);
  let s = 11;
  const next = (): number => (s = (s * 48271) % 2147483647) / 2147483647;
  for (let k = mesh.triangles.length / 3; k > 0; k--) {
    const h = Math.floor(next() * mesh.triangles.length);
    if (m.corners[h]! < 0) continue;
    const [a, b, t] = [3 * m.corners[h]!, 3 * m.corners[nextCorner(h)]!, 0.1 + 0.8 * next()];
    const between = (c: number): number => m.positions[a + c]! + t * (m.positions[b + c]! - m.positions[a + c]!);
    m.split(h, between(0), between(1), between(2));
  }
  return m.taken().mesh;
}

describe.skipIf(!hasShared)("a synthetic last", () => {
  test.each(lastNames)("%s in triangles made uneven, slivers among them, without another surface", (name) => {
    const mesh = cleanedScan("lasts", `${name}.stl`);
    const first = find(mesh);
    const again = find(splintered(mesh));
    for (const key of Object.keys(first.measures) as (keyof typeof first.measures)[]) expect(Math.abs(again.measures[key] - first.measures[key]), key).toBeLessThan(0.1);
  });

  test.each(lastNames)("%s in other triangles, and rough by 0.2 mm", (name) => {
    const mesh = cleanedScan("lasts", `${name}.stl`);
    const first = find(mesh);
    expectSame(find(remesh(mesh, 2, unwatched)), asInTruth, first);
    const rough = find(roughened(mesh, 0.2, 5));
    // Along the bottom a pointed toe ends where its edge is found in the roughness; the tip itself is smoothed back by less than 0.3 mm.
    expectSame(rough, asInTruth, first, name === "last_eu41_pointed" ? 0.5 : 0.3);
    expect(Math.abs(rough.measures.stickLength - first.measures.stickLength)).toBeLessThan(0.3);
  });
});
