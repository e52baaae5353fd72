// What waits beside the work (photographs or a scan that make no pattern yet) is part of the history: kept, taken back, done again.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { defaultJob, jobForScan, jobForTape } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import { filesOf, redo, redoable, revived, run, setWaiting, settle, startHistory, takenIn, undo, undoable, waitsAsBefore, type History } from "#app/state/history.ts";
import { takeOut } from "#app/state/tried.ts";

const work = (title: string): Job => ({ ...defaultJob(), title });
const tape = (...photos: string[]): Job => jobForTape({ photos, side: "right" });
const begun = (): History => startHistory(work("a"), "begin");

describe("what waits beside the work", () => {
  test("is a step that is taken back and done again, and the work stays what it is", () => {
    const h = setWaiting(begun(), tape("one.jpg"), "opening one.jpg");
    expect(h.now.job).toBe(h.past[0]!.job);
    expect(undoable(h)).toBe("opening one.jpg");
    expect(undo(h).now.waiting).toBeUndefined();
    expect(redoable(undo(h))).toBe("opening one.jpg");
    expect(redo(undo(h)).now.waiting).toEqual(tape("one.jpg"));
  });

  test("goes on waiting while the work is changed, until it is let go", () => {
    const h = run(setWaiting(begun(), tape("one.jpg"), "opening"), work("b"), "title");
    expect(h.now.waiting).toEqual(tape("one.jpg"));
    const free = setWaiting(h, undefined, "letting go");
    expect("waiting" in free.now).toBe(false);
    expect(undo(free).now.waiting).toEqual(tape("one.jpg"));
  });

  test("keeps its files with it, also those of steps that are taken back", () => {
    const h = setWaiting(setWaiting(begun(), tape("one.jpg"), "opening"), tape("one.jpg", "two.jpg"), "adding two.jpg");
    expect([...filesOf(undo(h))].sort()).toEqual(["one.jpg", "two.jpg"]);
  });

  test("becomes the work: one step back from there the pictures wait as they last did, and are not tried for ever", () => {
    const [one, both] = [tape("one.jpg"), tape("one.jpg", "two.jpg")];
    const h = takenIn(setWaiting(setWaiting(begun(), one, "opening"), both, "adding two.jpg"), both, "opening photographs");
    expect([h.now.job, h.now.waiting]).toEqual([both, undefined]);
    expect(undo(h).now).toMatchObject({ waiting: one, job: work("a") });
    // What never waited is a step of its own.
    expect(undo(takenIn(begun(), both, "opening")).now.job).toEqual(work("a"));
  });

  test("a drag on it is one step", () => {
    let h = setWaiting(begun(), tape("one.jpg"), "opening");
    for (const p of ["x", "y", "z"]) h = setWaiting(h, tape("one.jpg", p), "placing", "drag");
    h = settle(h);
    expect(undo(h).now.waiting).toEqual(tape("one.jpg"));
  });

  test("where what was asked of it cannot be, it waits as it was last seen", () => {
    const [seen, asked] = [jobForScan("a.stl"), { ...jobForScan("a.stl"), title: "asked" }];
    const h = setWaiting(setWaiting(begun(), seen, "opening"), asked, "moving a point");
    expect(waitsAsBefore(h, seen)).toEqual(setWaiting(begun(), seen, "opening"));
    expect(waitsAsBefore(run(h, work("b"), "title"), seen).now).toMatchObject({ job: work("b"), waiting: seen });
  });

  test("stays where a number of the work is refused and taken out", () => {
    const [good, bad] = [work("a"), work("bad")];
    const h = run(setWaiting(startHistory(good, "begin"), tape("one.jpg"), "opening"), bad, "title");
    const back = takeOut(h, bad, { isGood: (j) => j === good, isRefused: (j) => j === bad });
    expect(back?.now).toMatchObject({ job: good, waiting: tape("one.jpg") });
  });

  test("comes back from what was kept; what cannot be read any more costs nothing else", () => {
    const h = setWaiting(run(begun(), work("b"), "title"), tape("one.jpg"), "opening");
    const read = (job: unknown): Job => checkedJob("kept", job);
    expect(revived(structuredClone(h), read)).toEqual(h);
    const broken = { ...h, now: { ...h.now, waiting: { format: "lastwise job", version: 1 } as unknown as Job } };
    const back = revived(structuredClone(broken), read)!;
    expect(back.now.job).toEqual(work("b"));
    expect(back.now.waiting).toBeUndefined();
  });

  test("any mix of steps: taking all back and doing all again ends where it began", () => {
    fc.assert(fc.property(fc.array(fc.record({ kind: fc.constantFrom("run", "wait", "free"), name: fc.constantFrom("a", "b", "c") }), { maxLength: 30 }), (steps) => {
      let h = begun();
      for (const { kind, name } of steps) h = kind === "run" ? run(h, work(name), name) : setWaiting(h, kind === "wait" ? tape(name) : undefined, name);
      let back = h;
      for (let i = 0; i < steps.length; i++) back = undo(back);
      expect(back.now).toEqual(begun().now);
      for (let i = 0; i < steps.length; i++) back = redo(back);
      expect(back).toEqual(h);
    }), { seed: 8, numRuns: 300 });
  });
});
