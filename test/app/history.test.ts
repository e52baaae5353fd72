import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { defaultJob, jobForScan } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import { setShell } from "#app/state/edits.ts";
import { filesOf, giveUp, longestPast, redo, redoable, revived, run, settle, startHistory, undo, undoable, type History } from "#app/state/history.ts";

const sprung = (mm: number): Job => setShell(defaultJob(), { springMm: mm });
const begun = (): History => startHistory(sprung(0), "begin");

describe("taking back and doing again", () => {
  test("what is taken back comes again, in order, under its own words", () => {
    let h = run(run(begun(), sprung(1), "first"), sprung(2), "second");
    expect(undoable(h)).toBe("second");
    h = undo(h);
    expect(h.now.job.shell.springMm).toBe(1);
    expect([undoable(h), redoable(h)]).toEqual(["first", "second"]);
    h = redo(undo(undo(h)));
    expect(h.now.job.shell.springMm).toBe(1);
    expect(redo(h).now.job.shell.springMm).toBe(2);
  });

  test("a new change ends what could be done again", () => {
    const h = run(undo(run(begun(), sprung(1), "first")), sprung(5), "other");
    expect(redoable(h)).toBeUndefined();
    expect(undo(h).now.job.shell.springMm).toBe(0);
  });

  test("a drag is one step, and the next drag another", () => {
    let h = begun();
    for (const mm of [1, 2, 3]) h = run(h, sprung(mm), "drag", "a");
    h = settle(h);
    for (const mm of [4, 5]) h = run(h, sprung(mm), "drag", "b");
    expect(undo(h).now.job.shell.springMm).toBe(3);
    expect(undo(undo(h)).now.job.shell.springMm).toBe(0);
  });

  test("what is typed and given up leaves no step, and what could be done again still can", () => {
    const before = undo(run(run(begun(), sprung(1), "first"), sprung(2), "second"));
    let h = before;
    for (const mm of [3, 4]) h = run(h, sprung(mm), "typing", "a");
    expect(giveUp(h, "a")).toEqual(before);
    expect(redoable(giveUp(h, "a"))).toBe("second");
    // Another gesture, or one that has ended, is no longer to be given up.
    expect(giveUp(h, "b")).toBe(h);
    expect(giveUp(settle(h), "a")).toEqual(settle(h));
    expect(settle(h)).not.toHaveProperty("formerFuture");
    expect(redoable(settle(h))).toBeUndefined();
  });

  test("with nothing to take back or to do again the work stays", () => {
    expect(undo(begun()).now.job).toEqual(sprung(0));
    expect(redo(begun()).now.job).toEqual(sprung(0));
  });

  test("the past is not endless", () => {
    let h = begun();
    for (let i = 1; i <= longestPast + 50; i++) h = run(h, sprung(i), "change");
    expect(h.past).toHaveLength(longestPast);
  });

  test("any mix of steps behaves as a list of states with a place in it", () => {
    const step = fc.oneof(fc.constant("undo" as const), fc.constant("redo" as const), fc.integer({ min: 1, max: 999 }));
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        let states = [0];
        let at = 0;
        let h = begun();
        for (const s of steps) {
          if (s === "undo") {
            h = undo(h);
            at = Math.max(0, at - 1);
          } else if (s === "redo") {
            h = redo(h);
            at = Math.min(states.length - 1, at + 1);
          } else {
            h = run(h, sprung(s), "change");
            states = [...states.slice(0, ++at), s];
          }
          expect(h.now.job.shell.springMm).toBe(states[at]);
        }
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  test("a scan is needed as long as any step speaks of it", () => {
    const onScan: Job = { ...defaultJob(), last: { from: "scan", file: "mine.stl" } };
    const h = undo(run(begun(), onScan, "opening mine.stl"));
    expect([...filesOf(h)]).toEqual(["mine.stl"]);
    expect([...filesOf(run(h, sprung(3), "change"))]).toEqual([]);
  });

  test("kept by an older program comes back in today's shape; what cannot be read is left out", () => {
    const read = (job: unknown): Job => checkedJob("kept", job);
    const old = { ...jobForScan("mine.stl"), version: 1, last: { from: "scan", file: "mine.stl", side: "left" } } as unknown as Job;
    const broken = { ...sprung(0), shell: { springMm: "much" } } as unknown as Job;
    const h = run(run(run(startHistory(old, "opening"), broken, "breaking"), sprung(2), "after"), broken, "breaking again");
    expect(revived(h, read)).toEqual({ past: [{ job: { ...jobForScan("mine.stl", "left"), parts: { lining: "one" } }, what: "opening" }], now: { job: sprung(2), what: "after" }, future: [] });
    expect(revived(startHistory(broken, "begin"), read)).toBeUndefined();
  });
});
