// Measures that do not go together yet stay beside the work, are tried again with each further one, kept, and taken back one by one.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import { demoMeasurements } from "#last/demo.ts";
import { completeMeasures, measureKeys } from "#last/measures-by-size.ts";
import { setLines, setMeasure } from "#app/state/edits.ts";
import { revived, run, startHistory, undo, type History } from "#app/state/history.ts";
import { refusedNumbers } from "#app/state/refused-numbers.ts";
import type { MeasureKey } from "#app/state/spot.ts";
import { setBeside, takeOut, Tried } from "#app/state/tried.ts";
import { readUnused, triedAgain, unusedKeys, withNumbers } from "#app/state/unused.ts";

const measuresOf = ({ last }: Job) => (last.from === "measures" ? last.measures : demoMeasurements);
const begin = () => {
  const tried = new Tried();
  const history = startHistory(defaultJob(), "begin");
  tried.good(history.now.job);
  return { tried, history };
};

/** Types a number; `fits` says whether a last can be made of the whole. */
function type(h: History, tried: Tried, key: MeasureKey, mm: number, fits: (job: Job) => boolean): History {
  const job = triedAgain(setMeasure(h.now.job, key, mm), h.now, key);
  const next = run(h, job, key, undefined, "none");
  if (fits(job)) {
    tried.good(job);
    return next;
  }
  tried.refuse(job);
  return setBeside(next, job, tried, "It does not fit.", undefined, key, false)!;
}

describe("a number that does not fit yet", () => {
  test("stays beside the last good last, in its field, with the reason, and is a step of its own", () => {
    const { tried, history } = begin();
    const h = type(history, tried, "ballWidthMm", 78, () => false);
    expect(h.now.job).toBe(history.now.job);
    expect(refusedNumbers(undefined, h.now.unused)).toMatchObject([{ spot: "last ballWidthMm", text: "78", kept: true }]);
    expect(refusedNumbers(undefined, h.now.unused)[0]!.sentence).toMatch(/With a ball width of 78\smm .*It does not fit\..*tried again/);
    expect(undo(h).now).toEqual(history.now);
    expect(revived(structuredClone(h), (job) => checkedJob("kept", job))).toEqual(h);
  });

  test("a whole set typed in any order ends as that set, whatever fits on the way, and each number is taken back by itself", () => {
    const set = { ...completeMeasures({ sizeEu: 40 }).measures, heelHeightMm: 14 };
    const order = fc.shuffledSubarray([...measureKeys], { minLength: measureKeys.length });
    fc.assert(fc.property(order, fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }), (keys, luck) => {
      const { tried, history } = begin();
      let h = history;
      keys.forEach((key, i) => (h = type(h, tried, key, set[key], () => i === keys.length - 1 || luck[i]!)));
      expect(measuresOf(h.now.job)).toMatchObject(Object.fromEntries(measureKeys.map((key) => [key, set[key]])));
      expect(h.now.unused).toBeUndefined();
      for (const _ of keys) h = undo(h);
      expect(h.now).toEqual(history.now);
      expect(h.past).toEqual([]);
    }), { seed: 5, numRuns: 100 });
  });

  test("size words that follow the stick length go back with it", () => {
    const { tried, history } = begin();
    expect(type(history, tried, "stickLengthMm", 280, () => false).now.job.size).toBe(history.now.job.size);
  });

  test("typed before the one before it was refused, it is tried with it, and both stay steps", () => {
    const { tried, history } = begin();
    const first = setMeasure(history.now.job, "ballWidthMm", 78);
    const second = setMeasure(first, "heelGirthMm", 345);
    const h = run(run(history, first, "ball"), second, "heel");
    tried.refuse(first);
    const out = setBeside(h, first, tried, "No.", "instepGirthMm", "ballWidthMm", false)!;
    expect(out.now.job).toBe(second);
    expect(out.past.map((s) => unusedKeys(s.unused))).toEqual([[], ["ballWidthMm"]]);
  });

  test("a line changed meanwhile stays in the work, and a refused line leaves the numbers where they are", () => {
    const { tried, history } = begin();
    const bad = setLines(setMeasure(history.now.job, "ballWidthMm", 78), { throatDepthMm: 72 });
    const out = setBeside(run(history, bad, "both"), bad, tried, "No.", undefined, "ballWidthMm", true)!;
    expect(out.now.job).toEqual(setLines(history.now.job, { throatDepthMm: 72 }));
    const h = type(history, tried, "ballWidthMm", 78, () => false);
    const line = setLines(h.now.job, { throatDepthMm: 5 });
    tried.refuse(line);
    const later = run(h, line, "the throat");
    expect(later.now.unused).toBe(h.now.unused);
    expect(setBeside(later, line, tried, "No.", undefined, undefined, true)).toBeUndefined();
    expect(takeOut(later, line, tried)!.now).toEqual(h.now);
  });

  test("typed anew it is that which counts, and the number of the work takes it away", () => {
    const { tried, history } = begin();
    let h = type(history, tried, "ballWidthMm", 78, () => false);
    h = type(h, tried, "ballWidthMm", 79, () => false);
    expect(h.now.unused?.numbers).toEqual({ ballWidthMm: 79 });
    h = type(h, tried, "ballWidthMm", demoMeasurements.ballWidthMm, (job) => JSON.stringify(job) === JSON.stringify(history.now.job));
    expect(h.now.unused).toBeUndefined();
  });
});

test("what another version kept is read as far as it can be", () => {
  expect(readUnused({ numbers: { ballWidthMm: 78, toe: 3, heelGirthMm: "wide" }, at: "toe", why: "No." })).toEqual({ numbers: { ballWidthMm: 78 }, at: "ballWidthMm", why: "No." });
  for (const kept of [undefined, 3, { numbers: {}, at: "ballWidthMm", why: "No." }, { numbers: { ballWidthMm: 78 } }]) expect(readUnused(kept)).toBeUndefined();
  expect(measuresOf(withNumbers(defaultJob(), { ballWidthMm: 78 })).ballWidthMm).toBe(78);
});
