// Prices, shelf and hours stay the maker's from pair to pair; an opened file keeps its own and changes nothing of hers.
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { onScan, setLines } from "#app/state/edits.ts";
import { redo, revived, run, runBrought, startHistory, takenIn, undo } from "#app/state/history.ts";
import { setMaking, setMakingAt, setPrice } from "#app/state/making-edits.ts";
import { departs, followed, readWorkshop, sameButMaking, takingOwn, withWorkshop, workshopOf, workshopStep, writeWorkshop, type WorkshopSaid } from "#app/state/workshop.ts";

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

  test("tells in words where a pair departs from it, and nothing where it does not", () => {
    const own = workshopOf(mine);
    expect(departs(own, own)).toBeUndefined();
    expect(departs({ ...own, shelf: { thread: "300 m" } }, own)).toBeUndefined();
    expect(departs(workshopOf(priced(mine, "13")), own)).toBe("one price");
    expect(departs({ sessions: "Sat 9-13" }, own)).toBe("one price, what lies on the shelf of one thing, the hour’s pay and when you work");
  });

  test("comes back from the browser as it went, and what is no workshop is refused", () => {
    const own = workshopOf(mine);
    expect(readWorkshop("kept", writeWorkshop(own))).toEqual(own);
    expect(() => readWorkshop("kept", "{}")).toThrow(Refusal);
    expect(() => readWorkshop("kept", "no prices")).toThrow(Refusal);
    expect(() => readWorkshop("kept", "null")).toThrow(Refusal);
    expect(() => readWorkshop("kept", writeWorkshop({ ...own, prices: { thread: { price: true } } } as unknown as WorkshopSaid))).toThrow(/prices/);
    expect(() => readWorkshop("kept", JSON.stringify({ format: "lastwise workshop", version: 2, making: {} }))).toThrow(Refusal);
  });

  test("jobs that differ in making alone are known, so that nothing heavy is done for a price", () => {
    expect(sameButMaking(priced(mine, "1"), mine)).toBe(true);
    expect(sameButMaking(structuredClone(priced(mine, "1")), mine)).toBe(true);
    expect(sameButMaking({ ...mine, title: "Another" }, mine)).toBe(false);
    expect(sameButMaking(mine, undefined)).toBe(false);
  });
});
