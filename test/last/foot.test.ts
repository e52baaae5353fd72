// Feet as feet. Figures: ../shared/data/README.md (measured there with other means); landmark vertices: the keypoints beside
// find_template_foot.obj, placed by its authors (MIT, O. Boyne, FOCUS); people: ANSUR II (US Government, public release).
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { measureFoot, type Foot } from "#last/foot.ts";
import { girthByBoth, girthByLength, unusualFoot, usualFoot } from "#last/foot-usual.ts";
import type { Point3 } from "#last/last.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { laid, rotations } from "../support/against-truth.ts";
import { percentile, womensFeet } from "../support/people.ts";
import { cleanedScan } from "../support/scans.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";

const feet = [
  ["my-feet_left_foot.stl", "m", 275.7, 108.2, 251.1],
  ["my-feet_left_foot.obj", "m", 275.7, 108.2, 251.1],
  ["find_template_foot.obj", "m", 264.7, 87.6, 226.6],
  ["crop_VH_F_foot_xpos.obj", "mm", 244.7, 81.0, 215.1],
  ["crop_makehuman_base_foot.obj", "mm", 244.2, 94.2, 227.6],
  ["crop_antonia_foot.obj", "mm", 251.0, 93.5, 223.5],
  ["crop_human_woman_foot.obj", "mm", 245.3, 92.1, 215.6],
] as const;

const load = (file: string): Mesh => cleanedScan("feet", file);
const known = new Map<string, Foot>();
function measured(file: string): Foot {
  let foot = known.get(file);
  if (!foot) known.set(file, (foot = measureFoot(load(file), unwatched)));
  return foot;
}

function inFile({ placement: { unitPerMm: s, rotation: r, translationMm: t } }: Foot, p: Point3): Point3 {
  return [0, 1, 2].map((k) => s * (r[3 * k]! * p[0] + r[3 * k + 1]! * p[1] + r[3 * k + 2]! * p[2] + t[k]!)) as unknown as Point3;
}

describe.skipIf(!hasShared)("a scanned foot", () => {
  test.each(feet)("%s: unit found, length, breadth and girth within 1 mm of the figures beside it", (file, unit, length, breadth, girth) => {
    const foot = measured(file);
    expect(foot.placement.unit).toBe(unit);
    expect(Math.abs(foot.measures.planLength - length)).toBeLessThan(1);
    expect(Math.abs(foot.measures.planBreadth - breadth)).toBeLessThan(1);
    expect(Math.abs(foot.measures.girthAt70 - girth)).toBeLessThan(1);
    expect(foot.findings.map((f) => f.code)).toContain("is-a-foot");
  });

  test.each(["my-feet_left_foot.stl", "find_template_foot.obj"])("%s is a left one, as its author says", (file) => {
    expect(measured(file).side).toBe("left");
  });

  test("turned any way and mirrored, a foot with a leg cut off straight measures the same", () => {
    const turned = rotations(17);
    const scan = load("crop_VH_F_foot_xpos.obj");
    const { side, measures } = measureFoot(scan, unwatched);
    for (const mirrored of [false, true]) {
      const again = measureFoot(laid(scan, { unitPerMm: 1 / 25.4, rotation: turned.next().value as number[][], translationMm: [900, -20, 55] }, mirrored), unwatched);
      expect(again.side === side).toBe(!mirrored);
      for (const what of ["planLength", "planBreadth", "girthAt70", "footLength"] as const) expect(Math.abs(again.measures[what] - measures[what]), what).toBeLessThan(0.3);
    }
  });

  test("without a straight cut and away from the axes it is let down to rest, which is said", () => {
    const foot = measureFoot(laid(load("find_template_foot.obj"), { unitPerMm: 1, rotation: rotations(3).next().value as number[][], translationMm: [0, 0, 0] }), unwatched);
    expect(foot.level).toBe("rest");
    expect(foot.findings.map((f) => f.code)).toContain("foot-level-from-rest");
    // The leg is in the plan length, and leans as the foot does.
    expect(Math.abs(foot.measures.planLength - 264.7)).toBeLessThan(8);
    expect(Math.abs(foot.measures.footLength - measured("find_template_foot.obj").measures.footLength)).toBeLessThan(3);
  });
});

describe.skipIf(!hasShared)("landmarks of a foot", () => {
  const rows = (): string[][] => new TextDecoder().decode(sharedBytes("feet", "find_template_keypoints.csv")).trim().split(/\r?\n/).map((row) => row.split(","));
  const vertices = (): number[][] => new TextDecoder().decode(sharedBytes("feet", "find_template_foot.obj")).split("\n").filter((line) => line.startsWith("v ")).map((line) => line.split(/\s+/).slice(1, 4).map(Number));

  test("toe tips, heel, lower heel and outermost place lie within 5 mm of their vertices; the innermost one across, but not along", () => {
    const foot = measured("find_template_foot.obj");
    const [names, marks] = rows();
    const all = vertices();
    const wanted = (name: string): Point3 => all[Number(marks![names!.indexOf(name)])] as unknown as Point3;
    const off = (p: Point3, name: string): number => {
      const q = inFile(foot, p);
      return 1000 * Math.hypot(...wanted(name).map((v, k) => v - q[k]!));
    };
    const { toes, heel, lowerHeel, outermost, innermost } = foot.points;
    expect(toes).toHaveLength(5);
    ["big toe", "2nd toe", "3rd toe", "4th toe", "little toe"].forEach((name, i) => expect(off(toes![i]!, name), name).toBeLessThan(5));
    expect(off(heel, "heel")).toBeLessThan(5);
    expect(off(lowerHeel, "lower heel")).toBeLessThan(5);
    expect(off(outermost, "outer extrema")).toBeLessThan(5);
    // The inner side runs along the axis for 20 mm there, so where along it the authors put theirs, shape does not tell.
    const { placement: { rotation: r, unitPerMm: s } } = foot;
    const d = wanted("inner extrema").map((v, k) => (v - inFile(foot, innermost)[k]!) / s);
    expect(Math.abs(r[1]! * d[0]! + r[4]! * d[1]! + r[7]! * d[2]!)).toBeLessThan(3);
    expect(Math.hypot(...d)).toBeLessThan(20);
  });

  test("toes that do not stand apart are not told", () => {
    expect(measured("crop_VH_F_foot_xpos.obj").points.toes).toBeUndefined();
  });
});

describe.skipIf(!hasShared)("what is usual in feet, against the women's own data", () => {
  const columns = { footLength: "footlength", ballLength: "balloffootlength", ballGirth: "balloffootcircumference", footBreadth: "footbreadthhorizontal", heelBreadth: "heelbreadth" } as const;
  const women = hasShared ? womensFeet() : [];

  test("the data are the ones meant: 1,986 women, the first as published", () => {
    expect(women).toHaveLength(1986);
    expect(women[0]).toMatchObject({ SubjectId: 10037, footlength: 246, balloffootcircumference: 222, balloffootlength: 177, footbreadthhorizontal: 91, heelbreadth: 69 });
  });

  test.each(Object.entries(columns))("%s: 1st and 99th percentile", (what, column) => {
    const values = women.map((w) => w[column]!);
    const [low, high] = usualFoot[what as keyof typeof usualFoot];
    expect(Math.abs(percentile(values, 0.01) - low)).toBeLessThan(0.5);
    expect(Math.abs(percentile(values, 0.99) - high)).toBeLessThan(0.5);
  });

  test("ball girth by length, and by length and breadth", () => {
    const girth = women.map((w) => w["balloffootcircumference"]!);
    const spreadOf = (expected: (w: Readonly<Record<string, number>>) => number, fitted: number): number => {
      const left = women.map((w, i) => girth[i]! - expected(w));
      // Least squares leave no mean; a wrong coefficient would.
      expect(Math.abs(left.reduce((a, b) => a + b, 0) / left.length)).toBeLessThan(0.01);
      return Math.sqrt(left.reduce((sum, v) => sum + v * v, 0) / (left.length - fitted));
    };
    expect(spreadOf((w) => girthByLength.constant + girthByLength.length * w["footlength"]!, 2)).toBeCloseTo(girthByLength.spread, 2);
    expect(spreadOf((w) => girthByBoth.constant + girthByBoth.length * w["footlength"]! + girthByBoth.breadth * w["footbreadthhorizontal"]!, 3)).toBeCloseTo(girthByBoth.spread, 2);
  });

  test("few women are called unusual, and a slip of the tape is", () => {
    const asMeasured = (w: Readonly<Record<string, number>>) => ({ footLength: w["footlength"]!, ballLength: w["balloffootlength"]!, ballGirth: w["balloffootcircumference"]!, footBreadth: w["footbreadthhorizontal"]!, heelBreadth: w["heelbreadth"]! });
    const share = women.filter((w) => unusualFoot(asMeasured(w)).length > 0).length / women.length;
    // Five measures with 2 % each, some of them the same women.
    expect(share).toBeLessThan(0.1);
    expect(share).toBeGreaterThan(0.02);
    const first = asMeasured(women[0]!);
    expect(unusualFoot(first)).toEqual([]);
    expect(unusualFoot({ ...first, ballGirth: first.ballGirth + 25 }).map((f) => f.code)).toEqual(["foot-unusual"]);
  });
});
