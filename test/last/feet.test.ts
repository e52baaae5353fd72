// Real and modelled feet as stand-ins for a last. Figures: ../shared/data/README.md (plan length of the smallest rectangle, tape girth at
// 70 % of the length), measured there with other means.
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { meshIntoFrame } from "#last/axes.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { girthAt, planLength } from "#last/girth.ts";
import type { Point3 } from "#last/last.ts";
import { poseLyingOn } from "#last/pose.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { Sectioner } from "#mesh/section.ts";
import { cleanedScan } from "../support/scans.ts";
import { hasShared } from "../support/shared.ts";

const z: Point3 = [0, 0, -1];
const y: Point3 = [0, -1, 0];
const feet = [
  ["my-feet_left_foot.stl", 1000, z, 275.7, 251.1],
  ["my-feet_left_foot.obj", 1000, z, 275.7, 251.1],
  ["find_template_foot.obj", 1000, z, 264.7, 226.6],
  ["crop_VH_F_foot_xpos.obj", 1, y, 244.7, 215.1],
  ["crop_makehuman_base_foot.obj", 1, y, 244.2, 227.6],
  ["crop_antonia_foot.obj", 1, z, 251.0, 223.5],
  ["crop_human_woman_foot.obj", 1, y, 245.3, 215.6],
] as const;

const load = (file: string): Mesh => cleanedScan("feet", file);

describe.skipIf(!hasShared)("a foot as stand-in for a last", () => {
  test.each(feet)("%s: length and girth at 70 %% within 1 mm of the figures beside it", (file, mmPerUnit, down, lengthMm, girthMm) => {
    const scan = load(file);
    const standing = meshIntoFrame(poseLyingOn(scan, down).axes, scan);
    expect(Math.abs(planLength(standing) * mmPerUnit - lengthMm)).toBeLessThan(1);
    expect(Math.abs(girthAt(new Sectioner(standing), 0.7) * mmPerUnit - girthMm)).toBeLessThan(1);
  });

  test.each(["my-feet_left_foot.stl", "find_template_foot.obj", "crop_VH_F_foot_xpos.obj"])("%s gives a last that says it has no feather edge", (file) => {
    const last = lastFromScan(load(file), { name: file }, unwatched);
    expect(last.findings.map((f) => f.code)).toContain("edge-none");
    expect(last.feather.points.every(Number.isFinite)).toBe(true);
  });

  test.each(["my-feet_left_foot.stl", "find_template_foot.obj"])("%s is told to be a left one", (file) => {
    // Both are named as left feet by their authors.
    expect(lastFromScan(load(file), { name: file }, unwatched).side).toBe("left");
  });
});
