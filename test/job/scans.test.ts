import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { jobForScan } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { Memory } from "#job/memory.ts";
import { lastOf } from "#job/read-last.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { mirrorLast } from "#last/mirror.ts";
import { unwatched } from "#base/watch.ts";
import { hasShared, sharedData } from "../support/shared.ts";
import { binaryStl } from "../support/solids.ts";

// The example last written as a scan, and its mirror as the other one of the pair: both are known.

const last = lastFromMeasures(demoMeasurements, "example", unwatched);
const files = new Map([["right.stl", binaryStl(last.mesh)], ["left.stl", binaryStl(mirrorLast(last).mesh)], ["broken.stl", new TextEncoder().encode("solid a\nendsolid a\n")]]);

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

  test.each([["missing.stl", "missing.stl"], ["broken.stl", "broken.stl"]])("stands without the second one where that is of no use: %s", (file, named) => {
    const alone = look(job);
    const both = look({ ...job, last: { from: "scan", file: "right.stl", other: { file } } });
    expect(both.key).toBe(alone.key);
    expect(both.value.other).toBeUndefined();
    const told = both.value.findings.filter((f) => !alone.value.findings.includes(f));
    expect(told.map((f) => [f.code, severityOf(f)])).toEqual([["second-last-refused", "look"]]);
    expect(explain(told[0]!)).toContain(`${named}, was not held against the first`);
  });
});

describe.skipIf(!hasShared)("the scan of a foot", () => {
  const foot = new Map([...files, ["foot.stl", readFileSync(sharedData("feet", "my-feet_left_foot.stl") ?? "")]]);
  const read = (last: Job["last"]) => lastOf(new Memory().start(unwatched, () => 0), { ...jobForScan("foot.stl"), last }, foot, unwatched).value;

  test("is refused as the last, and told as the second one", () => {
    expect(() => read({ from: "scan", file: "foot.stl" })).toThrow(/scan of a foot/);
    const { other, findings } = read({ from: "scan", file: "right.stl", other: { file: "foot.stl" } });
    expect(other).toBeUndefined();
    expect(findings.filter((f) => f.code === "second-last-refused").map(explain)[0]).toMatch(/foot\.stl.*scan of a foot/);
  });

  test("is taken for a last by whoever draws its feather line", () => {
    // Any points will do: what is tested is whose word counts, so a refusal of the line itself is as good as a last.
    const refusal = (() => {
      try {
        read({ from: "scan", file: "foot.stl", said: { featherThrough: [[0, 0, 0], [50, 0, 0], [0, 50, 0]] } });
        return "";
      } catch (error) {
        return error instanceof Refusal ? error.finding.code : String(error);
      }
    })();
    expect(refusal).not.toBe("foot-has-no-pattern");
    expect(refusal).not.toMatch(/Error/);
  });
});
