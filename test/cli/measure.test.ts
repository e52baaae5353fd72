// `measure` beyond lengths and girths: the shape, two lasts beside each other, what all of it means, and a foot.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { landmarkHelp, measureHelp } from "#last/help.ts";
import type { Last } from "#last/last.ts";
import { mirrorLast } from "#last/mirror.ts";
import { hasShared, sharedData } from "../support/shared.ts";
import { binaryStl } from "../support/solids.ts";
import { lastwise, scratchFolder } from "./command.ts";

const folder = scratchFolder();
const at = (name: string): string => join(folder, name);
let last: Last;

beforeAll(() => {
  // Invented numbers of the example, one made as its own pair, one a size larger.
  last = lastFromMeasures(demoMeasurements, "made", unwatched);
  writeFileSync(at("right.stl"), binaryStl(last.mesh));
  writeFileSync(at("left.stl"), binaryStl(mirrorLast(last).mesh, { scale: 0.1 }));
  const next = { ...demoMeasurements, stickLengthMm: demoMeasurements.stickLengthMm + 20 / 3, jointGirthMm: demoMeasurements.jointGirthMm + 5, waistGirthMm: demoMeasurements.waistGirthMm + 5, instepGirthMm: demoMeasurements.instepGirthMm + 5, heelGirthMm: demoMeasurements.heelGirthMm + 7 };
  writeFileSync(at("next.stl"), binaryStl(mirrorLast(lastFromMeasures(next, "next", unwatched)).mesh));
});

test("the shape is told in sentences and as numbers, all landmarks in the file's own coordinates", () => {
  const { out } = lastwise("measure", at("right.stl"));
  for (const words of ["joint line", "heel pitch", "heel curve", "toe height 10 mm", "bottom width"]) expect(out).toContain(words);
  const told = JSON.parse(lastwise("measure", at("right.stl"), "--json").out);
  expect(Object.keys(told)).toEqual(expect.arrayContaining(Object.keys(landmarkHelp)));
  expect(told.placed).toEqual([]);
  expect(told.description.stations).toHaveLength(5);
  expect(Math.abs(told.description.heelPitchMm - demoMeasurements.heelHeightMm)).toBeLessThan(0.7);
  // The file lies in the last's own frame: tread and counter point come back where they were made.
  for (const mark of ["treadPoint", "counterPoint"] as const) expect(Math.hypot(...told[mark].map((v: number, k: number) => v - last.landmarks[mark][k]!)), mark).toBeLessThan(3);
});

test("--explain says of everything what it is, how it was found and how to find it by hand", () => {
  const { out } = lastwise("measure", at("right.stl"), "--explain");
  for (const help of [...Object.values(landmarkHelp), ...Object.values(measureHelp)]) {
    expect(out).toContain(`${help.name}: ${help.meaning}`);
    expect(out).toContain(`By hand: ${help.byHand}`);
  }
});

test("--explain with --json says the same as data", () => {
  const { explained } = JSON.parse(lastwise("measure", at("right.stl"), "--explain", "--json").out);
  expect(explained).toEqual({ landmarks: landmarkHelp, measures: measureHelp });
});

describe("--beside", () => {
  test("left and right, in other units: a pair", () => {
    const { out, code } = lastwise("measure", at("right.stl"), "--beside", at("left.stl"));
    expect(out).toContain("right.stl beside left.stl, mirrored: a pair.");
    expect(code).toBeLessThan(2);
    const { comparison, beside } = JSON.parse(lastwise("measure", at("right.stl"), "--beside", at("left.stl"), "--json").out);
    expect(comparison).toMatchObject({ verdict: "pair", pair: true, mirrored: true });
    expect(comparison.surface.p95Mm).toBeLessThan(0.1);
    expect(beside.side).not.toBe(last.side);
  });

  test("one size larger: no pair, exit 1, and by how much", () => {
    const { out, code } = lastwise("measure", at("right.stl"), "--beside", at("next.stl"));
    expect(code).toBe(1);
    expect(out).toContain("no pair");
    expect(out).toMatch(/stick length .*\+6\.\d mm/);
  });

  test("a file that is not there is named", () => {
    const { code, err } = lastwise("measure", at("right.stl"), "--beside", at("gone.stl"));
    expect(code).toBe(2);
    expect(err).toContain("gone.stl");
  });

  test("a second one that is no last is named", () => {
    writeFileSync(at("ball.stl"), binaryStl({ positions: new Float64Array([0, 0, 0, 250, 0, 0, 0, 90, 0, 0, 0, 90]), triangles: new Uint32Array([0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3]) }));
    const { code, err } = lastwise("measure", at("right.stl"), "--beside", at("ball.stl"));
    expect(code).toBe(2);
    expect(err).toContain("The second last, ball.stl, cannot be held against the first.");
  });
});

describe.skipIf(!hasShared)("a foot", () => {
  const foot = sharedData("feet", "my-feet_left_foot.stl") ?? "";

  test("is measured as a foot, and says that it is none of a last", () => {
    const { out, code } = lastwise("measure", foot);
    expect(code).toBe(1);
    expect(out).toContain("a left foot");
    expect(out).toContain("the scan of a foot, not of a last");
    expect(out).not.toContain("toe spring");
    const told = JSON.parse(lastwise("measure", foot, "--json").out);
    // Figure of ../shared/data/README.md.
    expect(told.kind).toBe("foot");
    expect(Math.abs(told.planLength - 275.7)).toBeLessThan(1);
  });

  test("has a side of its own, and says so where another was told", () => {
    expect(lastwise("measure", foot, "--side", "right").out).toContain("it is measured as a left foot");
    expect(lastwise("measure", foot, "--side", "left").out).not.toContain("You said that it is");
  });

  test("is not held beside anything, first or second, nor explained; the file is named", () => {
    for (const words of [[foot, "--beside", at("right.stl")], [at("right.stl"), "--beside", foot], [foot, "--explain"]]) {
      const { code, err } = lastwise("measure", ...words);
      expect(code).toBe(2);
      expect(err).toMatch(/my-feet_left_foot\.stl is the scan of a foot, and --(beside|explain) is for lasts only/);
    }
  });

  test("gives no pattern, and says what is missing", () => {
    const { code, err } = lastwise("make", foot, "--out", at("foot"));
    expect(code).toBe(2);
    expect(err).toContain("no pattern can be made on it");
  });
});
