import { describe, expect, test } from "vitest";
import { jobForScan } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { Memory } from "#job/memory.ts";
import { lastOf } from "#job/read-last.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { mirrorLast } from "#last/mirror.ts";
import { unwatched } from "#base/watch.ts";
import { binaryStl } from "../support/solids.ts";

// The example last written as a scan, and its mirror as the other one of the pair: both are known.

const last = lastFromMeasures(demoMeasurements, "example", unwatched);
const files = new Map([["right.stl", binaryStl(last.mesh)], ["left.stl", binaryStl(mirrorLast(last).mesh)]]);

describe("the last of a job on a scan", () => {
  const memory = new Memory();
  const look = (job: Job) => {
    const seen = new Set<string>();
    let t = 0;
    const stages = memory.start((stage, f) => void (f === 0 && seen.add(stage)), () => t++);
    const made = lastOf(stages, job, files, unwatched);
    return { ...made, seen: [...seen] };
  };
  const job = jobForScan("right.stl");

  test("is cleaned once, whatever the maker says of it", () => {
    const first = look(job);
    expect(first.seen).toEqual(["scan", "last"]);
    expect(look(job).seen).toEqual([]);
    const said = look({ ...job, last: { from: "scan", file: "right.stl", said: { side: "left" } } });
    expect(said.seen).toEqual(["last"]);
    expect(said.value.last.side).toBe("left");
    expect(said.key).not.toBe(first.key);
  });

  test("is held against a second one, and what follows from the first is kept", () => {
    const alone = look(job);
    const both = look({ ...job, last: { from: "scan", file: "right.stl", other: { file: "left.stl" } } });
    expect(both.seen).toEqual(["second scan", "second last", "comparison"]);
    expect(both.key).toBe(alone.key);
    expect(both.value.other?.comparison.pair).toBe(true);
    expect(both.value.other?.last.side).toBe("left");
  });
});
