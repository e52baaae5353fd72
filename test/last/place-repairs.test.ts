// Where a hole was mended, in the words of the trade and as a place to point at. The places are known: the holes are cut here, or told in
// the README of the synthetic lasts ("two holes at the cone top, one in the seat"; "cone top missing").
import { describe, expect, test } from "vitest";
import { explain, type Finding } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lastFromScan } from "#last/from-scan.ts";
import type { Point3 } from "#last/last.ts";
import { placeRepairs } from "#last/place-repairs.ts";
import { cleanScan } from "#mesh/clean.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { keepTriangles } from "#mesh/weld.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";

const made = lastFromMeasures(demoMeasurements, "made", unwatched);

/** In centimetres, lying on its side and far off: the places have to come back. */
function thrown(mesh: Mesh): Mesh {
  return { positions: mesh.positions.map((_, i) => (mesh.positions[i - (i % 3) + ((i % 3) + 1) % 3]! + 500) / 10), triangles: mesh.triangles };
}

/** The last with what lies nearer to a place than `reach` cut out, read as a scan. */
function mended(middle: Point3, reach: number): Finding[] {
  const { positions: p, triangles } = made.mesh;
  const open = keepTriangles(made.mesh, (t) => [0, 1, 2].some((k) => Math.hypot(...middle.map((m, a) => p[3 * triangles[3 * t + k]! + a]! - m)) > reach));
  const scan = thrown(open);
  const { mesh, repairs } = cleanScan(scan, unwatched);
  return placeRepairs(repairs, lastFromScan(mesh, { name: "trial", scanned: scan }, unwatched));
}

const nearest = (x: number, want: (p: readonly number[]) => number): Point3 => {
  const p = made.mesh.positions;
  let [best, most] = [0, -Infinity];
  for (let i = 0; i < p.length; i += 3) {
    const value = Math.abs(p[i]! - x) < 3 ? want([p[i]!, p[i + 1]!, p[i + 2]!]) : -Infinity;
    if (value > most) [best, most] = [i, value];
  }
  return [p[best]!, p[best + 1]!, p[best + 2]!];
};
const length = made.landmarks.toePoint[0];

describe("a hole cut into a made last", () => {
  test.each([
    ["inner side near the joint", nearest(0.68 * length, ([, y]) => y!), /^A hole on the inside at the joint, \d+ mm from the feather line was closed/],
    ["outer side of the waist", nearest(0.45 * length, ([, y, z]) => -y! - Math.abs(z! - 35)), /^A hole on the outside at the waist, \d+ mm from the feather line was closed/],
    ["heel seat", nearest(0.15 * length, ([, y, z]) => -z! - Math.abs(y!)), /^A hole on the bottom at the seat, on the centre line, \d+ mm from the feather line was closed/],
  ] as [string, Point3, RegExp][])("%s", (_, middle, words) => {
    const [hole] = mended(middle, 9).filter((f) => f.code === "hole-closed");
    expect(explain(hole!)).toMatch(words);
    // The pin lies on the surface again, not farther from the middle of the cut than the cap bulges or the frame was found anew.
    expect(Math.hypot(...hole!.at!.map((v, k) => v - middle[k]!))).toBeLessThan(3);
  });
});

test.skipIf(!hasShared)("the holes of a synthetic scan lie where its README has them", () => {
  const { mesh: raw } = readScan("last_eu36_round_scan.ply", sharedBytes("lasts/last_eu36_round_scan.ply"));
  const { mesh, repairs } = cleanScan(raw, unwatched);
  const told = placeRepairs(repairs, lastFromScan(mesh, { name: "trial", scanned: raw }, unwatched)).map(explain);
  expect(told.filter((t) => t.startsWith("A hole on the comb"))).toHaveLength(2);
  expect(told.filter((t) => t.startsWith("A hole on the bottom at the seat"))).toHaveLength(1);
});
