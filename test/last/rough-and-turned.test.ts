// Truth: the synthetic lasts of ../shared/data/lasts (CC0). Their damaged scans once more, each laid down in two other ways and told in
// inches; and the pointed one as a scanner that shakes by 0.2 mm would give it.
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { cleanScan } from "#mesh/clean.ts";
import { readScan } from "#mesh/read.ts";
import { asInTruth, laid, rotations, scanOf, type FileRule } from "../support/against-truth.ts";
import { expectNear } from "../support/near-truth.ts";
import { cleanedScan } from "../support/scans.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";
import { lastNames, truthOf } from "../support/truth-last.ts";
import { roughened } from "../support/worn.ts";

type Matrix = FileRule["rotation"];
const times = (a: Matrix, b: Matrix): number[][] => a.map((row) => [0, 1, 2].map((c) => row.reduce((sum, v, k) => sum + v * b[k]![c]!, 0)));
const inch = 1 / 25.4;

describe.skipIf(!hasShared)("a damaged scan in another pose, in inches", () => {
  const turned = rotations(29);
  const cases = lastNames.flatMap((name) => [1, 2].map((pose) => [name, pose, turned.next().value as number[][]] as const));
  test.each(cases)("%s, pose %i", (name, _, rotation) => {
    const first = scanOf(name);
    // What lies in the file goes back to millimetres, is turned, shifted and told in inches.
    const shift = [-120, 45, 260];
    const raw = laid(readScan(first.file, sharedBytes("lasts", first.file)).mesh, { unitPerMm: inch / first.unitPerMm, rotation, translationMm: shift.map((v) => v * first.unitPerMm) });
    const moved = rotation.map((row, k) => row.reduce((sum, v, i) => sum + v * first.translationMm[i]!, shift[k]!));
    const rule: FileRule = { unitPerMm: inch, rotation: times(rotation, first.rotation), translationMm: moved };
    const last = lastFromScan(cleanScan(raw, unwatched).mesh, { name, scanned: raw }, unwatched);
    expect(last.placement.unit).toBe("in");
    expectNear(last, name, rule);
  });
});

describe.skipIf(!hasShared)("the pointed last, rough by 0.2 mm", () => {
  const name = "last_eu41_pointed";
  test.each([3, 8])("as its truth says, and told to be rough (noise %i)", (seed) => {
    const rough = roughened(cleanedScan("lasts", `${name}.stl`), 0.2, seed);
    const last = lastFromScan(cleanScan(rough, unwatched).mesh, { name, scanned: rough }, unwatched);
    expectNear(last, name, asInTruth);
    expect(last.findings.map((f) => f.code)).toContain("scan-rough");
    // The point of the toe is what noise wears first: the line must still reach it.
    const { toePoint } = truthOf(name).points;
    const tip = last.landmarks.toePoint;
    expect(Math.abs(tip[0] - toePoint[0])).toBeLessThan(1.5);
  });
});
