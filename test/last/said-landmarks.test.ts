// The maker's own landmarks go before what is found. On a made last of invented numbers; the rules are those of docs/method/last.md.
import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { pointAtIndex } from "#last/closed-curve.ts";
import type { Landmarks, Last, Point3 } from "#last/last.ts";
import { measureLast } from "#last/measure.ts";
import { arcNearest, pointOn } from "#last/surface-curve.ts";
import { exampleLast } from "../support/scans.ts";

const made = exampleLast();
const withSaid = (said: Partial<Landmarks>, last: Last = made): Last => measureLast({ ...last, said, findings: [] });
const length = made.landmarks.toePoint[0];
const apart = (a: Point3, b: Point3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
/** A place of the feather line, some points on from where a landmark is. */
const shifted = (mark: keyof Landmarks, by: number): Point3 => {
  const n = made.feather.points.length / 3;
  const near = Array.from({ length: n }, (_, i) => i).reduce((best, i) => (apart(pointAtIndex(made.feather.points, i), made.landmarks[mark]) < apart(pointAtIndex(made.feather.points, best), made.landmarks[mark]) ? i : best));
  return pointAtIndex(made.feather.points, (near + by + n) % n);
};

test("nothing said changes nothing", () => {
  const again = withSaid({});
  expect(again.measures).toEqual(made.measures);
  expect(again.placed).toEqual([]);
});

test("saying what was found changes nothing but who said it", () => {
  const again = withSaid(made.landmarks);
  // The maker's vamp point makes the joint plane lean by what rounding is in it, no more.
  for (const [name, v] of Object.entries(made.measures)) expect(Math.abs(again.measures[name as keyof typeof made.measures] - v), name).toBeLessThan(1e-3);
  expect(again.placed.length).toBe(Object.keys(made.landmarks).length);
  expect(again.findings).toEqual([]);
});

test("a joint point moved takes ball width, joint girth and all points up the ridge with it", () => {
  const jointMedial = shifted("jointMedial", 8);
  const last = withSaid({ jointMedial });
  expect(apart(last.landmarks.jointMedial, jointMedial)).toBeLessThan(1e-9);
  expect(last.measures.ballWidth).toBeLessThan(made.measures.ballWidth);
  expect(last.measures.ballWidth).toBeCloseTo(Math.abs(jointMedial[1] - made.landmarks.jointLateral[1]), 9);
  expect(last.landmarks.vampPoint[0]).not.toBeCloseTo(made.landmarks.vampPoint[0], 1);
  // Upright through both joint points: the vamp point lies straight over their line.
  const [a, b, v] = [jointMedial, made.landmarks.jointLateral, last.landmarks.vampPoint];
  expect((b[0] - a[0]) * (v[1] - a[1]) - (b[1] - a[1]) * (v[0] - a[0])).toBeCloseTo(0, 6);
  // Instep still a quarter of the last length behind the vamp point, waist half way.
  const along = (p: Point3): number => arcNearest(last.centreRidge, p);
  expect(along(last.landmarks.instepPoint) - along(v)).toBeCloseTo(last.measures.lastLength / 4, 6);
  expect(along(last.landmarks.waistPoint)).toBeCloseTo((along(v) + along(last.landmarks.instepPoint)) / 2, 6);
  expect(last.measures.stickLength).toBe(made.measures.stickLength);
});

test("a vamp point moved back leans the joint tape through it: shorter at first, as a tape that is free to settle", () => {
  const at = arcNearest(made.centreRidge, made.landmarks.vampPoint);
  const last = withSaid({ vampPoint: pointOn(made.centreRidge, at - 6) });
  expect(last.measures.vampPointFromToe).toBeCloseTo(at - 6, 6);
  expect(last.measures.jointGirth).toBeLessThan(made.measures.jointGirth);
  expect(last.measures.ballWidth).toBe(made.measures.ballWidth);
});

test("toe and seat point make the axis: it goes through them, heights and the surface itself stay", () => {
  const toePoint = shifted("toePoint", 4);
  const seatPoint = shifted("seatPoint", -3);
  const last = withSaid({ toePoint, seatPoint });
  expect(last.landmarks.toePoint[1]).toBeCloseTo(0, 9);
  expect(last.landmarks.seatPoint[0]).toBeCloseTo(0, 9);
  expect(last.landmarks.seatPoint[1]).toBeCloseTo(0, 9);
  // The line is divided anew, which cuts its bends by some micrometres.
  expect(Math.abs(last.measures.toeSpring - toePoint[2])).toBeLessThan(0.02);
  expect(Math.abs(last.measures.heelHeight - seatPoint[2])).toBeLessThan(0.02);
  expect(last.measures.featherLength).toBeCloseTo(made.measures.featherLength, 1);
  // The placement takes the new frame's toe point back to where it was said in the old one.
  const { rotation: r, translationMm: t } = last.placement;
  const back = [0, 1, 2].map((k) => r[3 * k]! * last.landmarks.toePoint[0] + r[3 * k + 1]! * last.landmarks.toePoint[1] + r[3 * k + 2]! * last.landmarks.toePoint[2] + t[k]!) as unknown as Point3;
  expect(apart(back, toePoint)).toBeLessThan(0.1);
  expect(last.findings).toEqual([]);
});

describe("a point that lies off its line", () => {
  test("is taken to the nearest place on it, and that is said when it is far", () => {
    const p = made.landmarks.instepPoint;
    const near = withSaid({ instepPoint: [p[0], p[1], p[2] + 2] });
    expect(near.findings).toEqual([]);
    expect(Math.abs(near.landmarks.instepPoint[1])).toBeLessThan(1e-6);
    const far = withSaid({ instepPoint: [p[0], p[1], p[2] + 9], counterPoint: [-30, 0, 60] });
    expect(far.findings.map((f) => f.code).filter((code) => code !== "landmark-far-from-found")).toEqual(["landmark-off-line", "landmark-off-line"]);
    expect(far.findings[0]!.data).toMatchObject({ landmark: "instepPoint", line: "centre ridge" });
  });

  test("on its line, but far from where it was found: which, how far, toward which end; 8 mm is not far", () => {
    const at = arcNearest(made.centreRidge, made.landmarks.vampPoint);
    const codes = (by: number): string[] => withSaid({ vampPoint: pointOn(made.centreRidge, at + by) }).findings.map((f) => f.code);
    expect(codes(8)).toEqual([]);
    expect(codes(-30)).toEqual(["landmark-far-from-found"]);
    const toHeel = withSaid({ vampPoint: pointOn(made.centreRidge, at + 13) }).findings[0]!;
    expect(explain(toHeel)).toMatch(/vamp point you placed lies (12|13) mm nearer the heel than where it was found/);
    const joint = withSaid({ jointMedial: shifted("jointMedial", 9) }).findings.find((f) => f.code === "landmark-far-from-found")!;
    expect(joint.data).toMatchObject({ landmark: "jointMedial", toward: "toe" });
    const toe = withSaid({ toePoint: shifted("toePoint", 8) }).findings.map((f) => f.code);
    expect(toe).toContain("landmark-far-from-found");
  });

  test("on the wrong side of the last: both joints swapped, or one of them, is said as that and not as far off", () => {
    const { jointMedial, jointLateral, seatMedial, seatLateral } = made.landmarks;
    const swapped = withSaid({ jointMedial: jointLateral, jointLateral: jointMedial });
    expect(swapped.findings.map((f) => f.code)).toEqual(["landmarks-swapped"]);
    expect(explain(swapped.findings[0]!)).toMatch(/inner joint point and the outer joint point you placed look swapped.*no right last/);
    const roughly = withSaid({ jointMedial: shifted("jointLateral", -6), jointLateral: shifted("jointMedial", 6) });
    expect(roughly.findings.map((f) => f.code)).toEqual(["landmarks-swapped"]);
    expect(withSaid({ seatMedial: seatLateral, seatLateral: seatMedial }).findings[0]!.data).toMatchObject({ inner: "seatMedial", outer: "seatLateral" });
    expect(() => withSaid({ jointLateral: shifted("jointMedial", 3) })).toThrow(/outer joint point you placed lies on the other side of the last, where the inner joint point was found/);
  });

  test("a vamp point with no room for the instep behind it is refused as that, not as no last", () => {
    const at = arcNearest(made.centreRidge, made.landmarks.vampPoint);
    expect(() => withSaid({ vampPoint: pointOn(made.centreRidge, at + 60) })).toThrow(/vamp point you placed leaves only \d+ mm of ridge/);
  });

  test("points in the wrong order up the ridge are said, not refused", () => {
    const last = withSaid({ instepPoint: pointOn(made.centreRidge, 40) });
    expect(last.findings.map((f) => f.code)).toContain("landmarks-out-of-order");
  });
});

test("counter point a fifth of the length up the back; tread point where the bottom is lowest", () => {
  const { counterPoint, treadPoint } = made.landmarks;
  expect(arcNearest(made.backCurve, counterPoint)).toBeCloseTo(made.measures.lastLength / 5, 6);
  expect(treadPoint[2]).toBeLessThan(0.5);
  expect(treadPoint[0] / length).toBeGreaterThan(0.6);
  expect(treadPoint[0] / length).toBeLessThan(0.8);
});
