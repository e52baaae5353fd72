// The maker's points on the feather line. On the made last (invented numbers, always there) and on softened synthetic lasts of
// ../shared/data/lasts, whose true line is known from the generating surface.
import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { unwatched } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import type { Last, Point3 } from "#last/last.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { asInTruth, featherError, intoTruth, laid, rotations } from "../support/against-truth.ts";
import { cleanedScan, exampleLast } from "../support/scans.ts";
import { hasShared } from "../support/shared.ts";
import { truthOf } from "../support/truth-last.ts";
import { fromLine, roughened, softened } from "../support/worn.ts";

const through = (mesh: Mesh, featherThrough: readonly Point3[]): Last => lastFromScan(mesh, { name: "trial", featherThrough }, unwatched);
/** A found line in the coordinates of the file. */
const inFile = (last: Last): Float64Array =>
  Float64Array.from(Array.from({ length: last.feather.points.length / 3 }, (_, i) => intoTruth(last, asInTruth, last.feather.points.subarray(3 * i, 3 * i + 3))).flat());
const onto = (mesh: Mesh, points: readonly (readonly number[])[]): Point3[] => {
  const closest = new ClosestPoint(mesh);
  return points.map((p) => closest.find(p as unknown as Point3).point);
};
const refusal = (run: () => unknown): Refusal => {
  try {
    run();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error("it was not refused");
};

const made = exampleLast();
/** A place at a share of the line's length, so much up the wall. */
const at = (share: number, up = 0): Point3 => {
  const i = Math.round(share * made.feather.confidence.length);
  const p = made.feather.points.subarray(3 * i, 3 * i + 3);
  return [p[0]!, p[1]!, p[2]! + up];
};
const asFound = inFile(lastFromScan(made.mesh, { name: "found" }, unwatched));

describe("on a clear edge", () => {
  const [beside] = onto(made.mesh, [at(0.3, 3)]) as [Point3];

  test("the line runs through a point beside it and is as found farther off", () => {
    const last = through(made.mesh, [beside]);
    const line = inFile(last);
    expect(fromLine(asFound, beside)).toBeGreaterThan(2);
    expect(fromLine(line, beside)).toBeLessThan(0.1);
    let farthest = 0;
    for (let i = 0; i < line.length; i += 3) {
      const p = line.subarray(i, i + 3);
      // Even steps begin elsewhere on a line of another length: chords differ by less than this.
      if (fromLine(asFound, p) > 0.03) farthest = Math.max(farthest, Math.hypot(p[0]! - beside[0], p[1]! - beside[1], p[2]! - beside[2]));
    }
    expect(farthest).toBeLessThan(60);
    expect(last.findings.map((f) => f.code)).toContain("edge-drawn");
  });

  test("the order of the points does not matter, and twice the same is once", () => {
    const points = onto(made.mesh, [at(0.1, 1), at(0.3, 2), at(0.72, 1.5), at(0.9)]);
    const first = through(made.mesh, points);
    const other = through(made.mesh, [points[2]!, points[0]!, points[3]!, points[1]!, points[0]!]);
    expect(other.feather.points).toEqual(first.feather.points);
    for (const p of points) expect(fromLine(inFile(first), p)).toBeLessThan(0.1);
  });

  test("points are told in the file: another pose and unit make no difference", () => {
    const rule = { unitPerMm: 1 / 25.4, rotation: rotations(3).next().value as number[][], translationMm: [40, -7, 90] };
    const file = laid(made.mesh, rule);
    const [point] = [laid({ positions: Float64Array.from(beside), triangles: new Uint32Array() }, rule).positions];
    const last = through(file, [[point[0]!, point[1]!, point[2]!]]);
    const line = Float64Array.from(Array.from({ length: 480 }, (_, i) => intoTruth(last, rule, last.feather.points.subarray(3 * i, 3 * i + 3))).flat());
    expect(fromLine(line, beside)).toBeLessThan(0.1);
  });

  test("a point far off is refused by its number, and so are two that no edge can join", () => {
    const far = refusal(() => through(made.mesh, [at(0.2), made.landmarks.instepPoint]));
    expect(far.finding.code).toBe("pull-far-off");
    expect(explain(far.finding)).toContain("Point 2 of the 2");
    const [i, j] = onto(made.mesh, [at(0.3, 8), at(0.302)]);
    expect(explain(refusal(() => through(made.mesh, [at(0.7), i!, j!])).finding)).toContain("Points 2 and 3");
  });
});

describe.skipIf(!hasShared)("on an edge worn to a radius of some 7 mm", () => {
  test.each([
    ["last_eu38_round_heel20", 0],
    ["last_eu38_round_heel20", 0.15],
    ["last_eu41_pointed", 0],
    ["last_eu41_pointed", 0.15],
  ])("%s, rough by %f mm: four points give the line", (name, rough) => {
    const clean = cleanedScan("lasts", `${name}.stl`);
    const truth = truthOf(name).feather.points;
    const smooth = softened(clean, truth, 45);
    // Wear takes the edge itself away: what a finger can still find is the place of the worn surface nearest to it.
    const left = onto(smooth, truth);
    const worn = rough > 0 ? roughened(smooth, rough, 7) : smooth;
    const points = onto(worn, [0, 110, 200, 310].map((i) => left[i]!));
    const last = through(worn, points);
    const { rms } = featherError(last, asInTruth, left);
    expect(rms).toBeLessThan(0.6);
    for (const p of points) expect(fromLine(inFile(last), p)).toBeLessThan(0.1);
  });

  test("soft places are told by name and length", () => {
    const name = "last_eu38_round_heel20";
    const clean = cleanedScan("lasts", `${name}.stl`);
    const truth = truthOf(name).feather.points;
    const soft = (where: (p: readonly number[]) => boolean): string[] =>
      lastFromScan(softened(clean, truth.filter(where), 110), { name }, unwatched).findings.filter((f) => f.code === "edge-soft").map(explain);
    expect(soft(([x]) => x! < 40).join()).toMatch(/soft along \d+ mm .*heel seat/);
    // A right last: inner is +y.
    expect(soft(([x, y]) => y! > 0 && x! > 60 && x! < 130).join()).toMatch(/soft along \d+ mm .*inner (waist|side)/);
    expect(soft(() => false)).toEqual([]);
  });
});
