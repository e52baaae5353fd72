// Truth: the synthetic lasts of ../shared/data/lasts (CC0), measured there on the generating surface. Whatever their files do not
// hold themselves (joint line, pitch, bottom across) is worked out here from the points they do hold.
import { describe, expect, test } from "vitest";
import { demoMeasurements } from "#last/demo.ts";
import { describeLast, type LastDescription } from "#last/describe.ts";
import { mirrorLast } from "#last/mirror.ts";
import { scanOf } from "../support/against-truth.ts";
import { exampleLast, foundLast } from "../support/scans.ts";
import { hasShared } from "../support/shared.ts";
import { lastNames, truthOf, type Truth } from "../support/truth-last.ts";

/** What may lie between description and truth, mm and degrees. */
interface Limits {
  readonly height: number;
  /** The toe rises steeply: triangles of 1.5 mm cut it short. */
  readonly toe: number;
  /** A wall alone ends at the crest, which is nearly level across; the two walls of a cut together do not care where it is. */
  readonly wall: number;
  readonly walls: number;
  readonly profile: number;
  readonly bulgeHeight: number;
  readonly degrees: number;
}
const clean: Limits = { height: 0.1, toe: 0.15, wall: 0.35, walls: 0.2, profile: 0.1, bulgeHeight: 1, degrees: 0.3 };
// Rough by 0.1 to 0.3 mm or 15,000 uneven triangles; the pitch of a last with holes in its comb is up to 0.1 degrees off.
const damaged: Limits = { height: 0.4, toe: 0.4, wall: 2, walls: 1, profile: 0.4, bulgeHeight: 2, degrees: 1 };

const described = (file: string): LastDescription => describeLast(foundLast(file));

describe.skipIf(!hasShared)("the description of a last", () => {
  const files = lastNames.flatMap((name) => [[`${name}.stl`, name, clean], [scanOf(name).file, name, damaged]] as const);
  test.each(files)("%s: walls, heel curve, toe, comb and bottom as in truth", (file, name, limits) => {
    const told = described(file);
    const truth = truthOf(name);
    const near = (got: number, wanted: number, limit: number, what: string) => expect(Math.abs(got - wanted), `${what}: ${got}, truth ${wanted}`).toBeLessThan(limit);
    expectWalls(told, truth, limits, near);
    for (const { behindMm, heightMm } of told.toeHeights) near(heightMm, truth.toeHeights[behindMm]!, limits.toe, `toe height ${behindMm}`);
    near(told.comb!.heightMm, truth.combHeight, limits.height, "comb");
    if (limits === clean) near(told.comb!.lengthMm, truth.points.combFront![0] - truth.points.combBack![0], 0.3, "comb length");
    expectHeel(told, truth, limits, near);
    const { jointMedial, jointLateral, seatPoint } = truth.points;
    const angle = 90 - (Math.atan2(jointMedial[0] - jointLateral[0], Math.abs(jointMedial[1] - jointLateral[1])) * 180) / Math.PI;
    near(told.jointLineDegrees, angle, limits.degrees, "joint line");
    near(told.heelPitchMm, seatPoint[2], limits.height, "heel pitch");
    near(told.heelPitchDegrees, (Math.atan(seatPoint[2] / lowestX(truth)) * 180) / Math.PI, 0.15, "heel pitch, degrees");
  });
});

type Near = (got: number, wanted: number, limit: number, what: string) => void;

function expectWalls({ stations }: LastDescription, truth: Truth, limits: Limits, near: Near): void {
  expect(stations.map((s) => s.share)).toEqual([0.15, 0.3, 0.5, 0.7, 0.85]);
  stations.forEach((station, i) => {
    const wanted = truth.wallHeights[i]!;
    for (const side of ["medial", "lateral"] as const) {
      near(station[side].surfaceMm, wanted[side].surfaceLength, limits.wall, `${side} wall at ${station.share}`);
      near(station[side].heightMm, wanted[side].height, limits.height, `${side} height at ${station.share}`);
      near(station[side].overhangMm, wanted[side].overhang, limits.height, `${side} overhang at ${station.share}`);
      expect(station[side].endsAt).toBe(wanted[side].ends);
    }
    near(station.medial.surfaceMm + station.lateral.surfaceMm, wanted.medial.surfaceLength + wanted.lateral.surfaceLength, limits.walls, `both walls at ${station.share}`);
    const [left, right] = featherAcross(truth, wanted.x);
    near(station.bottom.widthMm, left.y - right.y, 2 * limits.height, `width at ${station.share}`);
    const chord = right.z + ((left.z - right.z) * -right.y) / (left.y - right.y);
    near(station.bottom.hollowAtAxisMm, heightAt(truth.bottomCentre.points, wanted.x) - chord, limits.height, `hollow at ${station.share}`);
  });
}

function expectHeel({ heelCurve }: LastDescription, truth: Truth, limits: Limits, near: Near): void {
  const back = truth.backCurve.points.map(([x, , z]) => ({ behind: -x, height: z - truth.values.heelHeight }));
  expect(heelCurve.heightsMm.length).toBeGreaterThanOrEqual(7);
  heelCurve.heightsMm.forEach((height, i) => {
    const k = back.findIndex((p) => p.height >= height);
    if (k < 1) return;
    const [a, b] = [back[k - 1]!, back[k]!];
    near(heelCurve.behindMm[i]!, a.behind + ((b.behind - a.behind) * (height - a.height)) / (b.height - a.height), limits.profile, `heel curve at ${height}`);
  });
  const bulge = back.reduce((best, p) => (p.behind > best.behind ? p : best));
  near(heelCurve.bulgeMm, bulge.behind, limits.profile, "bulge");
  near(heelCurve.bulgeHeightMm, bulge.height, limits.bulgeHeight, "height of the bulge");
}

const lowestX = (truth: Truth): number => truth.bottomCentre.points.filter(([x]) => x > truth.points.toePoint[0] / 2).reduce((low, p) => (p[2] < low[2] ? p : low))[0];

/** Where the true feather line crosses x, +y side first. */
function featherAcross(truth: Truth, x: number): readonly [{ y: number; z: number }, { y: number; z: number }] {
  const all = truth.feather.points.flatMap((a, i, points) => {
    const b = points[(i + 1) % points.length]!;
    if (a[0] > x === b[0] > x) return [];
    const t = (x - a[0]) / (b[0] - a[0]);
    return [{ y: a[1] + t * (b[1] - a[1]), z: a[2] + t * (b[2] - a[2]) }];
  });
  all.sort((a, b) => b.y - a.y);
  return [all[0]!, all[all.length - 1]!];
}

function heightAt(points: readonly (readonly number[])[], x: number): number {
  const k = points.findIndex((p) => p[0]! >= x);
  const [a, b] = [points[k - 1]!, points[k]!];
  return a[2]! + ((b[2]! - a[2]!) * (x - a[0]!)) / (b[0]! - a[0]!);
}

test("a made last and its mirror are described in the same words, and its pitch is what was asked", () => {
  // Invented numbers of the example.
  const last = exampleLast();
  const told = describeLast(last);
  const other = describeLast(mirrorLast(last));
  told.stations.forEach((station, i) => {
    for (const side of ["medial", "lateral"] as const) expect(other.stations[i]![side].surfaceMm).toBeCloseTo(station[side].surfaceMm, 6);
    expect(other.stations[i]!.bottom.widthMm).toBeCloseTo(station.bottom.widthMm, 9);
  });
  expect({ ...other, stations: [] }).toEqual({ ...told, stations: [] });
  expect(told.heelPitchMm).toBeCloseTo(demoMeasurements.heelHeightMm, 0);
  expect(told.jointLineDegrees).toBeGreaterThan(60);
  expect(told.jointLineDegrees).toBeLessThan(90);
});
