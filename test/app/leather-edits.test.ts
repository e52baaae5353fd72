// Strips and their readings as parts of the job: put in by load, changed, taken out, and found again at their spots.
import { expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { checkedJob } from "#job/job-file.ts";
import { addReading, addStrip, addStrips, forgetAfter, forgetOfLeather, leatherNumberAt, removeReading, removeStrip, setLeather, setReading, setStrip, stripsOf, usualStrip } from "#app/state/leather-edits.ts";
import { numberAt, stillStanding, type Standing } from "#app/state/standing.ts";
import { onMeasures, onScan } from "#app/state/edits.ts";

const job = defaultJob();
const one = addStrip(job, "upper", "along");
const read = [{ loadN: 10, lengthMm: 106 }, { loadN: 2, lengthMm: 102 }, { loadN: 5, lengthMm: 104, afterMm: 101 }].reduce((j, r) => addReading(j, "upper", 0, r), one);

test("a strip is cut as the drawing says, the next as the one before it", () => {
  expect(stripsOf(one, "upper")).toEqual([{ way: "along", ...usualStrip, readings: [] }]);
  const wider = setStrip(one, "upper", 0, { widthMm: 25 });
  expect(stripsOf(addStrip(wider, "upper", "bias"), "upper")[1]).toMatchObject({ way: "bias", widthMm: 25 });
  expect(stripsOf(job, "upper")).toEqual([]);
});

test("readings stand in the order of their loads, however they were typed", () => {
  expect(stripsOf(read, "upper")[0]!.readings.map((r) => r.loadN)).toEqual([2, 5, 10]);
});

test("one reading is changed or taken out, and the others stay", () => {
  expect(stripsOf(setReading(read, "upper", 0, 1, { lengthMm: 104.5 }), "upper")[0]!.readings[1]).toEqual({ loadN: 5, lengthMm: 104.5, afterMm: 101 });
  expect(stripsOf(forgetAfter(read, "upper", 0, 1), "upper")[0]!.readings[1]).toEqual({ loadN: 5, lengthMm: 104 });
  expect(stripsOf(removeReading(read, "upper", 0, 0), "upper")[0]!.readings.map((r) => r.loadN)).toEqual([5, 10]);
});

test("with the last strip nothing of strips is left in the job", () => {
  expect(removeStrip(read, "upper", 0).leather).toEqual({ upper: {} });
  expect(forgetOfLeather(setLeather(job, "lining", { name: "Rosa" }), "lining", "name").leather).toEqual({ lining: {} });
});

test("every edit is a job that can be saved and read again", () => {
  for (const j of [one, read, addStrips(read, "lining", stripsOf(read, "upper")), setLeather(read, "upper", { known: "calf", name: "Rosa", thicknessMm: 1.1 })]) expect(checkedJob("test", j)).toEqual(j);
});

test("a number is found at its spot", () => {
  expect(leatherNumberAt(read, "strip upper 0 widthMm")).toBe(20);
  expect(numberAt(read, "strip upper 0 1 afterMm")).toBe(101);
  expect(numberAt(read, "strip upper 0 0 afterMm")).toBeUndefined();
  expect(numberAt(read, "strip lining 0 0 loadN")).toBeUndefined();
  expect(numberAt(setLeather(job, "lining", { thicknessMm: 0.7 }), "leather lining")).toBe(0.7);
});

test("what was typed wrong at one reading stands until that reading is another", () => {
  const wrong: Standing = { spot: "strip upper 0 1 lengthMm", text: "1o4", sentence: "No.", over: 104 };
  expect(stillStanding([wrong], setStrip(read, "upper", 0, { widthMm: 21 }))).toEqual([wrong]);
  expect(stillStanding([wrong], setReading(read, "upper", 0, 1, { lengthMm: 105 }))).toEqual([]);
});

test("leathers, pulls and the log go with the maker to her next last", () => {
  const own = { ...read, lasting: { pullToeN: 25 }, log: [{ pair: 1, side: "left", last: "a", leather: "goat", measured: { backHeightMm: 54 } }] } as const;
  for (const next of [onScan(own, "other.stl"), onMeasures(own, "right")]) expect([next.leather, next.lasting, next.log]).toEqual([own.leather, own.lasting, own.log]);
});
