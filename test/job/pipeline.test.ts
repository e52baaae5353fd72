import { beforeAll, describe, expect, test } from "vitest";
import { Cancelled } from "#base/watch.ts";
import { defaultJob, jobForScan } from "#job/default-job.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";
import type { Rules } from "#job/run-options.ts";
import { onLast } from "../support/on-last.ts";

const none = new Map<string, Uint8Array>();
/** A clock that advances by one at each look: whatever ran shows a time above zero. */
const ticking = () => {
  let t = 0;
  return () => t++;
};

describe("the pipeline on the example pair", () => {
  const pipeline = new Pipeline();
  const ran: string[] = [];
  const watch = (stage: string, fraction: number) => {
    if (fraction === 0 && !ran.includes(stage)) ran.push(stage);
  };
  let first: LastPair;
  beforeAll(() => {
    first = onLast(pipeline.run(defaultJob(), none, { watch, now: ticking(), triangles: 4000 }));
  });

  test("runs its stages in the order of the work and times each", () => {
    const order = ["last", "forme", "bottom", "lines", "shell", "beneath", "flatten", "tension", "leather", "lining", "heel part", "heel", "pieces"];
    expect(ran.filter((stage) => order.includes(stage))).toEqual(order);
    expect(Object.keys(first.timesMs)).toEqual(order);
    for (const ms of Object.values(first.timesMs)) expect(ms).toBeGreaterThan(0);
  });

  test("makes anew only what follows from an edit", () => {
    const known = new Set([...Object.keys(first.timesMs), "panels", "halves"]);
    const stagesOf = (job: Parameters<Pipeline["run"]>[0]) => {
      const seen = new Set<string>();
      const pair = onLast(pipeline.run(job, none, { watch: (stage, f) => void (f === 0 && seen.add(stage)), triangles: 4000 }));
      return { seen: [...seen].filter((s) => known.has(s)), pair };
    };
    const fromTension = ["tension", "lining", "heel", "pieces"], fromBeneath = ["beneath", "flatten", "tension", "lining", "heel part", "heel", "pieces"];
    expect(stagesOf(defaultJob()).seen).toEqual([]);
    expect(stagesOf({ ...defaultJob(), sheets: { paper: "Letter" } }).seen).toEqual([]);
    expect(stagesOf({ ...defaultJob(), pieces: { toplineFoldMm: 5 } }).seen).toEqual(["pieces"]);
    expect(stagesOf({ ...defaultJob(), pieces: { liningPocketWingMm: 110 } }).seen).toEqual(["heel part", "heel", "pieces"]);
    expect(stagesOf({ ...defaultJob(), parts: { sock: "half", bow: true } }).seen).toEqual(["pieces"]);
    expect(stagesOf({ ...defaultJob(), parts: { cut: "quarters" } }).seen).toEqual(["panels", "pieces"]);
    expect(stagesOf({ ...defaultJob(), parts: { cut: "quarters", seam: "lapped" } }).seen).toEqual(["pieces"]);
    expect(stagesOf({ ...defaultJob(), shell: { springMm: 6 } }).seen).toEqual(fromTension);
    expect(stagesOf({ ...defaultJob(), shell: { edge: "raw" } }).seen).toEqual(fromTension);
    expect(stagesOf({ ...defaultJob(), shell: { halves: "mean" } }).seen).toEqual(["tension", "halves", "lining", "heel", "pieces"]);
    expect(stagesOf({ ...defaultJob(), shell: { halves: "separate" } }).seen).toEqual(["pieces"]);
    expect(stagesOf({ ...defaultJob(), pieces: { liningThicknessMm: 1 } }).seen).toEqual(["beneath", "flatten", "tension", "leather", "lining", "heel part", "heel", "pieces"]);
    expect(stagesOf({ ...defaultJob(), shell: { counterMm: 2 } }).seen).toEqual(fromBeneath);
    const thrown = stagesOf({ ...defaultJob(), lines: { throatDepthMm: 66 } });
    expect(thrown.seen).toEqual(["lines", "shell", ...fromBeneath]);
    expect(thrown.pair.last).toBe(first.last);
    expect(thrown.pair.lines.settings.throatDepthMm).toBe(66);
    const other = stagesOf({ ...defaultJob(), lines: { throatDepthMm: 66 }, leather: { upper: { known: "nappa" } } });
    expect(other.seen).toEqual(["leather"]);
    expect(other.pair.pieces).toBe(thrown.pair.pieces);
  });

  test("halves that differ much are told where they are to share one form, and only there", () => {
    const told = (job: Parameters<Pipeline["run"]>[0]) => onLast(pipeline.run(job, none, { triangles: 4000 })).findings.filter(({ code }) => code === "halves-differ");
    expect(told(defaultJob())).toEqual([]);
    const [differ] = told({ ...defaultJob(), shell: { halves: "mean" } });
    expect(differ?.at).toHaveLength(3);
  });

  test("a fine run after drafts of a drag gives the same bytes as one without, also after a draft that was refused", () => {
    const dragged = new Pipeline();
    const draft = (throatDepthMm: number, springMm = 0) => dragged.run({ ...defaultJob(), lines: { throatDepthMm }, shell: { springMm } }, none, { triangles: 1500, follow: true, withoutPieces: true });
    dragged.run(defaultJob(), none, { triangles: 3000 });
    for (const throat of [70, 70.5, 71]) draft(throat);
    expect(() => draft(72, 400)).toThrow();
    // A line that leaves the last is refused before anything is laid flat.
    expect(() => draft(300)).toThrow();
    draft(72.5);
    const job = { ...defaultJob(), lines: { throatDepthMm: 73 } };
    const fine = onLast(dragged.run(job, none, { triangles: 3000 }));
    const alone = onLast(new Pipeline().run(job, none, { triangles: 3000 }));
    expect(fine.flat.uv).toEqual(alone.flat.uv);
    expect(fine.pieces).toEqual(alone.pieces);
  });

  test("without pieces gives those of the last full run, or none, and all else as ever", () => {
    const job = { ...defaultJob(), lines: { throatDepthMm: 66 } };
    const empty = onLast(new Pipeline().run(job, none, { triangles: 1500, withoutPieces: true }));
    expect(empty.pieces).toEqual([]);
    const own = new Pipeline();
    const full = own.run(defaultJob(), none, { triangles: 1500 });
    const draft = onLast(own.run(job, none, { triangles: 1500, withoutPieces: true }));
    expect(draft.pieces).toBe(full.pieces);
    expect(draft.flat.uv).toEqual(empty.flat.uv);
    expect(own.run(job, none, { triangles: 1500 }).pieces).not.toBe(full.pieces);
  });

  test("tells the rules of the last also where the job is refused later on", () => {
    let told: Rules | undefined;
    expect(() => new Pipeline().run({ ...defaultJob(), lines: { throatRadiusMm: 0 } }, none, { onRules: (rules) => (told = rules) })).toThrow("throat radius");
    expect(told?.line).toEqual(first.lineRules);
  });

  test("gives the same pair in a fresh pipeline", () => {
    const again = onLast(new Pipeline().run(defaultJob(), none, { triangles: 4000 }));
    expect(again.pieces).toEqual(first.pieces);
    expect(again.flat.uv).toEqual(first.flat.uv);
  });

  test("holds every piece of both shoes, left and right mirrored to the last bit", () => {
    const rights = first.pieces.filter((p) => p.side === "right");
    expect(rights.map((p) => p.name)).toEqual([
      "upper, net", "upper", "vamp lining", "inner quarter lining", "outer quarter lining", "heel pocket", "stiffener", "toe puff",
      "insole", "second insole board", "shank", "shank bend", "bottom filler", "outsole", "split lift", "lift 1", "top piece", "sock",
    ]);
    for (const right of rights) {
      const left = first.pieces.find((p) => p.side === "left" && p.name === right.name)!;
      const points = (xy: Float64Array, sign: 1 | -1) => new Set(Array.from({ length: xy.length / 2 }, (_, i) => `${xy[2 * i]} ${sign * xy[2 * i + 1]! + 0}`));
      expect(points(left.outline.xy, -1)).toEqual(points(right.outline.xy, 1));
      expect(left.areaMm2).toBeCloseTo(right.areaMm2, 6);
    }
  });

  test("stops where its watch says so, and works on afterwards", () => {
    const stop = (stage: string) => {
      if (stage === "shell") throw new Cancelled();
    };
    const job = { ...defaultJob(), lines: { throatDepthMm: 69 } };
    expect(() => pipeline.run(job, none, { watch: stop, triangles: 4000 })).toThrow(Cancelled);
    expect(onLast(pipeline.run(job, none, { triangles: 4000 })).lines.settings.throatDepthMm).toBe(69);
  });

  test("names the scan that is missing", () => {
    expect(() => new Pipeline().run(jobForScan("gone.stl"), none)).toThrow(/gone.stl/);
  });
});
