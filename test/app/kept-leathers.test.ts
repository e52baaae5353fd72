// Leathers that are kept for other pairs: what goes along, how they come back, and that nothing is written twice.
import { expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { addReading, addStrip, setLeather } from "#app/state/leather-edits.ts";
import { isKept, isLeathersFile, leatherToKeep, readLeathers, withKept, withLeather, withoutLeather, writeLeathers } from "#app/state/kept-leathers.ts";

const shoe = (pair: number, side: "left" | "right", leather: string, throatDepthMm: number): Job["log"][number] => ({ pair, side, last: "38", leather, measured: { throatDepthMm } });
const plain = defaultJob();
const named = setLeather(addReading(addStrip(plain, "upper", "along"), "upper", 0, { loadN: 5, lengthMm: 103 }), "upper", { known: "calf", name: "Rosa", thicknessMm: 1 });
const worn: Job = { ...named, log: [shoe(1, "left", "Rosa", 71), shoe(1, "right", "Rosa", 71.5), shoe(2, "left", "other", 70)] };
const rosa = leatherToKeep(worn, "upper")!;

test("a leather is kept by its name, with its strips and the shoes that were made of it", () => {
  expect(leatherToKeep(plain, "upper")).toBeUndefined();
  expect(leatherToKeep(setLeather(plain, "upper", { name: "  " }), "upper")).toBeUndefined();
  expect(rosa).toMatchObject({ name: "Rosa", said: { known: "calf", thicknessMm: 1, strips: [{ way: "along" }] } });
  expect(rosa.shoes.map((s) => [s.pair, s.side])).toEqual([[1, "left"], [1, "right"]]);
});

test("taken for another pair it brings its shoes after those that are written down, and never twice", () => {
  const other: Job = { ...plain, log: [shoe(1, "left", "goat", 69)] };
  const taken = withKept(other, "upper", rosa);
  expect(taken.leather.upper).toEqual(rosa.said);
  expect(taken.log.map((s) => [s.pair, s.leather])).toEqual([[1, "goat"], [2, "Rosa"], [2, "Rosa"]]);
  expect(isKept(taken, "upper", rosa)).toBe(true);
  expect(withKept(taken, "upper", rosa).log).toBe(taken.log);
  expect(withKept(worn, "lining", rosa)).toMatchObject({ log: worn.log, leather: { lining: { name: "Rosa" } } });
});

test("what changes of it since is seen", () => {
  expect(isKept(worn, "upper", rosa)).toBe(true);
  expect(isKept(setLeather(worn, "upper", { thicknessMm: 1.1 }), "upper", rosa)).toBe(false);
  expect(isKept({ ...worn, log: [...worn.log, shoe(3, "left", "Rosa", 72)] }, "upper", rosa)).toBe(false);
});

test("one of a name gives way to the next; names stand in order", () => {
  const all = withLeather(withLeather([], rosa), { ...rosa, name: "Anna" });
  expect(all.map((k) => k.name)).toEqual(["Anna", "Rosa"]);
  expect(withLeather(all, { ...rosa, shoes: [] }).find((k) => k.name === "Rosa")!.shoes).toEqual([]);
  expect(withoutLeather(all, "Anna").map((k) => k.name)).toEqual(["Rosa"]);
});

test("they come back from their file as they went; one that is wrong is refused with its field", () => {
  const text = writeLeathers([rosa]);
  expect(isLeathersFile(new TextEncoder().encode(text))).toBe(true);
  expect(readLeathers("mine.json", text)).toEqual([rosa]);
  const wrong = (edit: (raw: { [key: string]: unknown }) => void): string => {
    const raw = JSON.parse(text) as { [key: string]: unknown };
    edit(raw);
    return JSON.stringify(raw);
  };
  expect(() => readLeathers("mine.json", "no json")).toThrow(/no leathers/);
  expect(() => readLeathers("mine.json", wrong((r) => (r["version"] = 2)))).toThrow(/newer Lastwise/);
  expect(() => readLeathers("mine.json", wrong((r) => (r["leathers"] = [{ name: "x", said: { thicknessMm: -1 }, shoes: [] }])))).toThrow(/leather → upper → thicknessMm/);
  expect(() => readLeathers("mine.json", wrong((r) => (r["leathers"] = [{ name: "x", said: {} }])))).toThrow(/leathers → 0 → shoes/);
});
