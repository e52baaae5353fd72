import { beforeAll, describe, expect, test } from "vitest";
import { explain, finding, severityOf } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { unwatched } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { Prover, tryOut, type Proof } from "#job/proof.ts";

const none = new Map<string, Uint8Array>();

describe("trying out the example pair's pattern", () => {
  const prover = new Prover();
  const stages: string[] = [];
  let proof: Proof;
  beforeAll(() => {
    proof = prover.prove(defaultJob(), none, (stage) => void stages.push(stage))!;
  });

  test("lays the card back, tries nicks and seams, and says where it is", () => {
    expect(stages).toContain("wrap");
    expect(stages.indexOf("nicks")).toBeGreaterThan(stages.indexOf("wrap"));
    expect(stages.indexOf("seams")).toBeGreaterThan(stages.indexOf("nicks"));
    expect(proof.checkedUv.length / 2).toBe(proof.check.mesh.positions.length / 3);
    expect(proof.check.standOff.length).toBe(proof.check.mesh.positions.length / 3);
    expect(proof.relief.nicks.length).toBeGreaterThan(0);
  });

  // Tolerances of a hand check of the base pattern against the last (common practice, no source): lengths 0.5 to 1 mm, area 2 %.
  test("the card's lengths and area are those of the last within a hand check's tolerances", () => {
    const lengths = proof.check.rows.filter(({ key }) => key !== "flank");
    expect(lengths.length).toBe(12);
    for (const row of lengths) expect(row.holds, `${row.key} ${row.half}: ${row.onCardMm - row.onLastMm}`).toBe(true);
  });

  test("nothing is tried out again for a change that leaves the shell alone", () => {
    const again = prover.prove({ ...defaultJob(), pieces: { toplineFoldMm: 5 } }, none, unwatched);
    expect(again).toBe(proof);
    // A stiffener twice as thick gives another shell.
    expect(prover.prove({ ...defaultJob(), shell: { counterMm: 2 } }, none, unwatched)).not.toBe(proof);
  });

  test("another leather alone, under the same share, leaves the card as it lies but not what is advised", () => {
    const shell = { toplineShorter: 0.025 };
    const kid = prover.prove({ ...defaultJob(), shell }, none, unwatched)!.check;
    const soft = prover.prove({ ...defaultJob(), shell: { ...shell, leather: "soft" } }, none, unwatched)!.check;
    expect(soft.wrapped).toEqual(kid.wrapped);
    expect(soft.gapes.map(({ change }) => change)).not.toEqual(kid.gapes.map(({ change }) => change));
  });

  test("in the pipeline that made the pair the last is not read again, and the proof is the same", () => {
    const pipeline = new Pipeline();
    pipeline.run(defaultJob(), none);
    const seen = new Set<string>();
    const { proof: shared, findings } = tryOut(new Prover(pipeline), defaultJob(), none, (stage) => void seen.add(stage));
    expect([...seen]).toEqual(["wrap", "nicks", "seams"]);
    expect(shared).toEqual(proof);
    expect(findings).toEqual([...proof.check.findings, ...proof.relief.findings]);
  });
});

describe("a pattern that cannot be tried out", () => {
  const failing = (error: Error) => ({
    prove: () => {
      throw error;
    },
  });

  test("is made all the same, with what stopped it and what to do by hand", () => {
    const { proof, findings } = tryOut(failing(new Refusal(finding("surface-does-not-settle", { moveMm: 1, steps: 9 }))), defaultJob(), none, unwatched);
    expect(proof).toBeUndefined();
    expect(findings.map((f) => [f.code, severityOf(f)])).toEqual([["not-tried", "look"]]);
    expect(explain(findings[0]!)).toMatch(/does not come to rest.*hold it on the last/);
  });

  test("hides no mistake of ours", () => {
    expect(() => tryOut(failing(new TypeError("ours")), defaultJob(), none, unwatched)).toThrow("ours");
  });
});
