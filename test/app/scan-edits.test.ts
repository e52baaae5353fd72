import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkedJob } from "#job/job-file.ts";
import { defaultJob, jobForScan } from "#job/default-job.ts";
import { toFile, toLast } from "#app/state/file-place.ts";
import { addPull, dropPull, movePull, saidOf, setPoint, setReading, setScanSide, withOther } from "#app/state/scan-edits.ts";

describe("places on the last and in the file", () => {
  const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
  const length = fc.double({ min: -500, max: 500, noNaN: true });
  test("lead to each other both ways, whatever the pose and the unit", () => {
    fc.assert(
      fc.property(angle, angle, fc.tuple(length, length, length), fc.tuple(length, length, length), fc.constantFrom(1, 0.1, 0.001, 1 / 25.4), (a, b, t, p, unitPerMm) => {
        const [ca, sa, cb, sb] = [Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b)];
        // A turn about z, then one about x: proper, row-major.
        const rotation = [ca, -sa, 0, cb * sa, cb * ca, -sb, sb * sa, sb * ca, cb];
        const placement = { unit: "mm" as const, unitPerMm, rotation, translationMm: t };
        const back = toLast(placement, toFile(placement, p));
        for (let k = 0; k < 3; k++) expect(back[k]).toBeCloseTo(p[k]!, 8);
      }),
      { seed: 3, numRuns: 200 },
    );
  });
  test("follow file = unit · (rotation · p + translation), worked by hand", () => {
    const quarter = { unit: "cm" as const, unitPerMm: 0.1, rotation: [0, -1, 0, 1, 0, 0, 0, 0, 1], translationMm: [10, 20, 30] as const };
    expect(toFile(quarter, [1, 2, 3])).toEqual([0.8, 2.1, 3.3000000000000003]);
  });
});

describe("what the maker says of a scan", () => {
  const job = jobForScan("a.stl");
  test("is kept apart from what others say, and leaves nothing behind when it is taken back", () => {
    const all = setPoint(addPull(setReading(setScanSide(job, "left"), "stickLength", 240), [1, 2, 3]), "toePoint", [4, 5, 6]);
    expect(saidOf(all)).toEqual({ side: "left", measured: { stickLength: 240 }, featherThrough: [[1, 2, 3]], landmarks: { toePoint: [4, 5, 6] } });
    const back = setPoint(dropPull(setReading(all, "stickLength", undefined), 0), "toePoint", undefined);
    expect(back).toEqual(setScanSide(job, "left"));
    expect(job.last).toEqual({ from: "scan", file: "a.stl" });
  });
  test("passes what is asked of a saved job", () => {
    const said = withOther(setPoint(addPull(setReading(job, "heelGirth", 320.5), [1, 2, 3]), "waistPoint", [4, 5, 6]), "b.stl");
    expect(checkedJob("a job", JSON.parse(JSON.stringify(said)))).toEqual(said);
  });
  test("moves and drops the place that is meant, and no other", () => {
    const two = addPull(addPull(job, [1, 1, 1]), [2, 2, 2]);
    expect(saidOf(movePull(two, 1, [3, 3, 3])).featherThrough).toEqual([[1, 1, 1], [3, 3, 3]]);
    expect(saidOf(dropPull(two, 0)).featherThrough).toEqual([[2, 2, 2]]);
  });
  test("is nothing where the work is not on a scan", () => {
    const made = defaultJob();
    for (const edited of [setReading(made, "stickLength", 240), addPull(made, [1, 2, 3]), setPoint(made, "toePoint", [1, 2, 3]), withOther(made, "b.stl")]) expect(edited).toBe(made);
  });
});
