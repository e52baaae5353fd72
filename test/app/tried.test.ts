import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { setLines, setShell } from "#app/state/edits.ts";
import { addReading, addStrip } from "#app/state/leather-edits.ts";
import { run, startHistory } from "#app/state/history.ts";
import { speaksOf, takeOut, Tried, without } from "#app/state/tried.ts";

const begin = (): { readonly tried: Tried; readonly first: Job; readonly history: ReturnType<typeof startHistory> } => {
  const tried = new Tried();
  const first = setLines(defaultJob(), { throatDepthMm: 70 });
  tried.good(first);
  return { tried, first, history: startHistory(first, "begin") };
};

describe("taking a refused job out of the history", () => {
  test("leaves the last good state, and no step", () => {
    const { tried, first, history } = begin();
    const bad = setLines(first, { throatRadiusMm: 0 });
    tried.refuse(bad);
    expect(takeOut(run(history, bad, "the radius"), bad, tried)).toEqual(history);
  });

  test("keeps lists that were changed since as the lists they are", () => {
    const { tried, first, history } = begin();
    const withStrip = addStrip(first, "upper", "along");
    tried.good(withStrip);
    const bad = setLines(withStrip, { throatRadiusMm: 0 });
    const later = addReading(bad, "upper", 0, { loadN: 5, lengthMm: 104 });
    tried.refuse(bad);
    const out = takeOut(run(run(run(history, withStrip, "a strip"), bad, "the radius"), later, "a reading"), bad, tried)!;
    expect(out.now.job).toEqual(addReading(withStrip, "upper", 0, { loadN: 5, lengthMm: 104 }));
  });

  test("keeps what was changed since, on top of the good state", () => {
    const { tried, first, history } = begin();
    const bad = setLines(first, { throatRadiusMm: 0 });
    const later = setShell(setLines(bad, { backHeightMm: 53 }), { springMm: 3 });
    tried.refuse(bad);
    const out = takeOut(run(run(history, bad, "the radius"), later, "the back"), bad, tried)!;
    expect(out.now).toEqual({ job: setShell(setLines(first, { backHeightMm: 53 }), { springMm: 3 }), what: "the back" });
    expect(out.past.map((s) => s.what)).toEqual(["begin"]);
  });

  test("keeps a setting away that was given up since, and brings back none that the good state lacks", () => {
    const { tried, first, history } = begin();
    const bad = setLines(first, { throatRadiusMm: 0 });
    const later: Job = { ...bad, lines: { throatRadiusMm: 0 }, sheets: { paper: "Letter" } };
    tried.refuse(bad);
    const out = takeOut(run(run(history, bad, "the radius"), later, "the paper"), bad, tried)!;
    expect(out.now.job).toEqual({ ...first, lines: {}, sheets: { paper: "Letter" } });
  });

  test("goes back within a drag to its last good place, and the drag stays one step", () => {
    const { tried, first, history } = begin();
    const [good, bad] = [setShell(first, { springMm: 5 }), setShell(first, { springMm: 50 })];
    tried.good(good);
    tried.refuse(bad);
    const h = run(run(history, good, "the spring", "drag"), bad, "the spring", "drag");
    const out = takeOut(h, bad, tried, { job: good, what: "the spring" })!;
    expect(out).toEqual({ past: history.past.concat(history.now), now: { job: good, what: "the spring" }, future: [], gesture: "drag" });
  });

  test("passes over states that nobody has tried, to one that is good", () => {
    const { tried, first, history } = begin();
    const [unknown, bad] = [setShell(first, { springMm: 9 }), setShell(first, { springMm: 90 })];
    tried.refuse(bad);
    expect(takeOut(run(run(history, unknown, "a"), bad, "b"), bad, tried)!.now.job).toBe(first);
  });

  test("is not possible where no state is good", () => {
    const bad = defaultJob();
    const tried = new Tried();
    tried.refuse(bad);
    expect(takeOut(startHistory(bad, "old work"), bad, tried)).toBeUndefined();
  });
});

test("what is kept holds good states alone", () => {
  const { tried, first, history } = begin();
  const [unknown, second] = [setShell(first, { springMm: 9 }), setShell(first, { springMm: 2 })];
  tried.good(second);
  const h = run(run(history, unknown, "a"), second, "b");
  expect(without(h, (job) => !tried.isGood(job)).past.map((s) => s.job)).toEqual([first]);
  expect([speaksOf(h, unknown), speaksOf(h, defaultJob())]).toEqual([true, false]);
  // Nothing to leave out: the very same history.
  expect(without(history, tried.isRefused)).toBe(history);
});
