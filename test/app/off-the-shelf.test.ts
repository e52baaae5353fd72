// The shelf after a pair: counts to the piece, amounts as fine as what was taken, nothing taken that is drawn out again, and a sign that it was done.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Job } from "#job/job.ts";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import type { GoodId, Measure } from "#making/goods.ts";
import { ofUnit, readAmount } from "#making/amounts/units.ts";
import type { Making } from "#making/making.ts";
import type { Need } from "#making/need.ts";
import { onScan } from "#app/state/edits.ts";
import { run, startHistory, takenIn, undo } from "#app/state/history.ts";
import { makingNow } from "#app/state/making-now.ts";
import { setMaking } from "#app/state/making-edits.ts";
import { offTheShelf, takenOff, takingOff } from "#app/state/off-the-shelf.ts";

const job = (shelf: Readonly<Record<string, string>>, pairs?: string): Job => setMaking(defaultJob(), { shelf, ...(pairs && { pairs }) });
const pair = new Pipeline().run(defaultJob(), new Map());
const after = (of: Job): unknown => offTheShelf(of, makingNow(pair, of.making)!)?.making.shelf;

/** A pair that takes so much of one good, of which so much lies there, both in the good's own measure. */
const taking = (good: GoodId, measure: Measure, gross: number, onShelf: number, pairs = 1): Pick<Making, "needs" | "toBuy" | "pairs"> => ({
  pairs,
  needs: [{ good, measure, parts: [], net: gross, gross, kind: "", reason: "", source: "" } satisfies Need],
  toBuy: [{ good, needed: pairs * gross, onShelf, short: 0, left: 0 }],
});
const left = (good: GoodId, measure: Measure, gross: number, onShelf: number, said: string, pairs?: number): string | number | undefined => offTheShelf(job({ [good]: said }), taking(good, measure, gross, onShelf, pairs))?.making.shelf?.[good];

describe("taking pairs off the shelf", () => {
  test("counts to the piece, however many lie there", () => {
    expect(left("heel nails", "count", 11, 1500, "1500")).toBe("1489 pieces");
    expect(left("heel nails", "count", 11, 4987, "4987 pieces", 3)).toBe("4954 pieces");
    // 2 of 24 pairs; a dozen that is broken into is told in pieces.
    expect(left("shanks", "count", 2, 48, "24 pairs")).toBe("23 pairs");
    expect(left("shanks", "count", 2, 36, "3 dozen")).toBe("34 pieces");
    expect(left("shanks", "count", 2, 36, "3 dozen", 6)).toBe("2 dozen");
    expect(left("shanks", "count", 2, 1, "1")).toBe("0 pieces");
  });

  test("keeps what is large as exact as what is taken from it, time after time", () => {
    expect(left("thread", "length", 9_700, 4_987_000, "4987 m")).toBe("4977.3 m");
    expect(left("paste", "mass", 0.2, 1000, "1 kg")).toBe("0.9998 kg");
    expect(left("upper leather", "area", 243_650, 2e6, "2 m²")).toBe("1.7560 m²");
    let shelf = "1 kg";
    for (let i = 0; i < 100; i++) shelf = String(left("paste", "mass", 0.2, 1000 * Number.parseFloat(shelf), shelf));
    expect(shelf).toBe("0.98 kg");
    expect(left("paste", "mass", 0.5, 500, "500 g", 1000)).toBe("0 g");
  });

  test("writes only what is read again as what is left, whatever is taken from whatever", () => {
    fc.assert(fc.property(fc.constantFrom("m2", "ft2", "dm2", "in2"), fc.double({ min: 0.01, max: 5000, noNaN: true }), fc.double({ min: 1, max: 1e6, noNaN: true }), (unit, amount, gross) => {
      const onShelf = ofUnit(amount, unit);
      const read = readAmount(left("upper leather", "area", gross, onShelf, `${amount.toFixed(9)} ${unit}`)!, "area");
      const rest = Math.max(0, onShelf - gross);
      expect("value" in read && Math.abs(read.value - rest)).toBeLessThanOrEqual(Math.max(0.00051 * ofUnit(1, unit), 1e-6 * onShelf));
    }));
  });

  test("takes what the pair's list says of each thing, and leaves what is drawn out again and what is kept in hand", () => {
    const making = makingNow(pair, { pairs: "2" })!;
    const of = (good: GoodId): Need => making.needs.find((n) => n.good === good)!;
    expect(of("lasting tacks").again).toBe(true);
    expect(of("needles").spare).toBe(1);
    const shelf = { "lasting tacks": "500", "insole tacks": "100", "pattern card": "3 m2", needles: "10", "heel nails": "500", shanks: "5 pairs", thread: "1 m", latex: "half" };
    expect(after(job(shelf, "2"))).toEqual({ ...shelf, needles: `${10 - 2 * of("needles").gross} pieces`, "heel nails": `${500 - 2 * of("heel nails").gross} pieces`, shanks: "3 pairs", thread: "0 m" });
    // Nothing of it can be taken: nothing is offered.
    expect(after(job({ "lasting tacks": "500", latex: "half" }))).toBeUndefined();
  });

  test("is told with what it changed, as often as it was done, until it is taken back or another pair comes", () => {
    const first = job({ thread: "300 m", shanks: "5 pairs" });
    const begun = run(startHistory(first, "the example last"), setMaking(first, { rate: "30" }), "the hour’s pay");
    expect(takenOff(begun)).toBeUndefined();
    const once = run(begun, setMaking(begun.now.job, { shelf: { thread: "290.25 m", shanks: "5 pairs" } }), takingOff);
    expect(takenOff(once)).toEqual({ times: 1, changed: ["thread: 300 m, now 290.25 m"] });
    const later = run(once, setMaking(once.now.job, { rate: "31" }), "the hour’s pay");
    const twice = run(later, setMaking(later.now.job, { shelf: { thread: "280.5 m", shanks: "4 pairs" } }), takingOff);
    expect(takenOff(twice)).toEqual({ times: 2, changed: ["thread: 290.25 m, now 280.5 m", "shanks: 5 pairs, now 4 pairs"] });
    expect(takenOff(undo(twice))?.times).toBe(1);
    expect(takenOff(undo(undo(undo(twice))))).toBeUndefined();
    // The same pair with other prices is the same pair; another last is another.
    expect(takenOff(takenIn(twice, setMaking(twice.now.job, { rate: "9" }), "opening it again"))?.times).toBe(2);
    expect(takenOff(takenIn(twice, onScan(twice.now.job, "next.stl"), "opening next.stl"))).toBeUndefined();
  });
});
