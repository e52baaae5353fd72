// Prices, shelf and hours stay the maker's from pair to pair; an opened file keeps its own and changes nothing of hers.
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { onScan, setLines } from "#app/state/edits.ts";
import { giveUp, redo, revived, run, runBrought, startHistory, takenIn, undo } from "#app/state/history.ts";
import { setMaking, setMakingAt, setPrice } from "#app/state/making-edits.ts";
import { sameButMaking } from "#app/state/same-but-making.ts";
import { takeOut, Tried } from "#app/state/tried.ts";
import { departs, takingOwn, withWorkshop, workshopOf, type WorkshopSaid } from "#app/state/workshop.ts";
import { readWorkshop, writeWorkshop } from "#app/state/workshop-file.ts";
import { followed, workshopStep } from "#app/state/workshop-follow.ts";

const priced = (job: Job, price: string): Job => setPrice(job, "upper leather", { price, for: "1 ft2" });
const mine = setMaking(setMakingAt(priced(defaultJob(), "12,50"), "shelf", "thread", "300 m"), { rate: "28", pairs: "3", asked: "420", start: "2026-12-01", done: { "cut-upper": { left: "2026-12-01T19:40" } } });

describe("the workshop", () => {
  test("is prices, shelf and pay; number of pairs, price asked, first day and ticks belong to a pair", () => {
    expect(workshopOf(mine)).toEqual({ prices: { "upper leather": { price: "12,50", for: "1 ft2" } }, shelf: { thread: "300 m" }, rate: "28" });
    const next = withWorkshop(onScan(mine, "other.stl"), workshopOf(mine));
    expect(next.making).toEqual(workshopOf(mine));
    expect(next.last).toEqual({ from: "scan", file: "other.stl" });
    const back = withWorkshop(setMaking(mine, { rate: "5", overhead: "9" }), workshopOf(mine));
    expect(back.making).toEqual(mine.making);
  });

  test("goes along with one change at a pair of other prices, and with nothing else of that pair", () => {
    const opened = setPrice(priced(setMaking(defaultJob(), { rate: "60" }), "99"), "latex", { price: "7" });
    const edited = priced(opened, "98");
    const own = followed(workshopOf(mine), workshopOf(opened), workshopOf(edited));
    expect(own).toEqual({ ...workshopOf(mine), prices: { "upper leather": { price: "98", for: "1 ft2" } } });
    const emptied = setPrice(edited, "upper leather", { price: "", for: "" });
    expect(followed(own, workshopOf(edited), workshopOf(emptied)).prices ?? {}).not.toHaveProperty("upper leather");
    expect(followed(own, workshopOf(edited), workshopOf(setMaking(edited, { rate: undefined }))).rate).toBeUndefined();
  });

  test("begins as it stands with the first pair at which something of it is written", () => {
    expect(followed(undefined, {}, workshopOf(mine))).toEqual(workshopOf(mine));
  });

  test("takes steps, steps taken back and done again, but not an opened file or another last", () => {
    const first = startHistory(defaultJob(), "the example last");
    const second = run(first, priced(defaultJob(), "12"), "the price of the upper leather");
    expect(workshopStep(first, second)).toEqual({ before: {}, after: { prices: { "upper leather": { price: "12", for: "1 ft2" } } } });
    const back = undo(second);
    expect(workshopStep(second, back)?.after).toEqual({});
    expect(workshopStep(back, redo(back))?.after).toEqual({ prices: { "upper leather": { price: "12", for: "1 ft2" } } });
    const opened = takenIn(second, priced(defaultJob(), "99"), "opening Example pair");
    expect(workshopStep(second, opened)).toBeUndefined();
    expect(workshopStep(opened, undo(opened))).toBeUndefined();
    // Also where it is opened to be corrected, whatever it is called, and after the page was loaded again.
    const corrected = runBrought(second, priced(defaultJob(), "98"), "opening Example pair");
    expect(workshopStep(second, corrected)).toBeUndefined();
    expect(workshopStep(second, revived(corrected, (job) => job as Job)!)).toBeUndefined();
    expect(workshopStep(second, run(second, priced(defaultJob(), "98"), "opening a tin"))?.after).toEqual({ prices: { "upper leather": { price: "98", for: "1 ft2" } } });
    const hers = runBrought(opened, second.now.job, takingOwn);
    expect(workshopStep(opened, hers)).toBeUndefined();
    expect(workshopStep(hers, undo(hers))).toBeUndefined();
    expect(workshopStep(first, run(first, priced(setLines(defaultJob(), { throatDepthMm: 80 }), "12"), "two things at once"))).toBeUndefined();
    expect(workshopStep(first, run(first, setMaking(defaultJob(), { pairs: "7" }), "how many pairs"))).toBeUndefined();
  });

  test("goes along with typing key by key, and back with it where it is given up", () => {
    const first = startHistory(defaultJob(), "the example last");
    const one = run(first, priced(defaultJob(), "1"), "the price of the upper leather", "typing");
    const two = run(one, priced(defaultJob(), "12"), "the price of the upper leather", "typing");
    expect(workshopStep(one, two)).toEqual({ before: { prices: { "upper leather": { price: "1", for: "1 ft2" } } }, after: { prices: { "upper leather": { price: "12", for: "1 ft2" } } } });
    expect(workshopStep(two, giveUp(two, "typing"))?.after).toEqual({});
  });

  test("is left alone where the work begins anew, for no hand wrote that", () => {
    const before = run(startHistory(defaultJob(), "the example last"), priced(defaultJob(), "12"), "the price of the upper leather");
    expect(workshopStep(before, startHistory(defaultJob(), "the example last"))).toBeUndefined();
    // Nor is a step that has nothing to do with the one before, however it came about.
    expect(workshopStep(before, run(startHistory(defaultJob(), "other work"), priced(defaultJob(), "3"), "a price"))).toBeUndefined();
  });

  test("is left alone when hers were taken for an opened pair, a number was refused, and both are taken back", () => {
    const tried = new Tried();
    const [theirs, hers] = [setMaking(defaultJob(), { rate: "99" }), setMaking(defaultJob(), { rate: "30" })];
    const opened = takenIn(startHistory(defaultJob(), "the example last"), theirs, "opening a friend’s");
    const own = runBrought(opened, hers, takingOwn);
    for (const { job } of [opened.now, own.now]) tried.good(job);
    const bad = setLines(hers, { throatRadiusMm: 0 });
    tried.refuse(bad);
    const out = takeOut(run(own, bad, "the radius"), bad, tried)!;
    expect(workshopStep(out, undo(out))).toBeUndefined();
    // The same where something was done beside it before it was refused.
    const later = takeOut(runBrought(run(own, bad, "the radius"), setMaking(bad, { rate: "31" }), takingOwn), bad, tried)!;
    expect(later.now.job.making.rate).toBe("31");
    expect(workshopStep(later, undo(later))).toBeUndefined();
  });

  test("tells in words where a pair departs from it, and nothing where it does not", () => {
    const own = workshopOf(mine);
    expect(departs(own, own)).toBeUndefined();
    expect(departs({ ...own, shelf: { thread: "300 m" } }, own)).toBeUndefined();
    expect(departs(workshopOf(priced(mine, "13")), own)).toBe("one price");
    expect(departs({ sessions: "Sat 9-13" }, own)).toBe("one price, what lies on the shelf of one thing, the hour’s pay and when you work");
  });

  test("comes back from the browser as it went, and what is no workshop is refused", () => {
    const own = workshopOf(mine);
    expect(readWorkshop("kept", writeWorkshop({ own, former: [] }))).toEqual({ own, former: [] });
    expect(readWorkshop("kept", writeWorkshop({ own, former: [{ rate: "9" }, {}] }))).toEqual({ own, former: [{ rate: "9" }, {}] });
    expect(() => readWorkshop("kept", "{}")).toThrow(Refusal);
    expect(() => readWorkshop("kept", "no prices")).toThrow(Refusal);
    expect(() => readWorkshop("kept", "null")).toThrow(Refusal);
    expect(() => readWorkshop("kept", writeWorkshop({ own: { ...own, prices: { thread: { price: true } } } as unknown as WorkshopSaid, former: [] }))).toThrow(/prices/);
    expect(() => readWorkshop("kept", JSON.stringify({ format: "lastwise workshop", version: 1, making: {}, former: {} }))).toThrow(Refusal);
    expect(() => readWorkshop("kept", JSON.stringify({ format: "lastwise workshop", version: 2, making: {} }))).toThrow(Refusal);
  });

  test("jobs that differ in making alone are known, so that nothing heavy is done for a price", () => {
    expect(sameButMaking(priced(mine, "1"), mine)).toBe(true);
    expect(sameButMaking(structuredClone(priced(mine, "1")), mine)).toBe(true);
    expect(sameButMaking({ ...mine, title: "Another" }, mine)).toBe(false);
    expect(sameButMaking(mine, undefined)).toBe(false);
  });
});
