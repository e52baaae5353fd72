// A row of a strip's table while it is typed or pasted.
import { expect, test } from "vitest";
import { loadField } from "#app/state/load-unit.ts";
import { commasBothWays, pastedRows, readReading } from "#app/state/new-reading.ts";
import { readMeasure } from "#app/state/numbers.ts";

const on = { widthMm: 20, gaugeMm: 100, known: "goat" } as const;
const row = (load: string, length: string, after = "") => ({ load, length, after });

test("a load in kilograms, grams or newtons is kept in newtons", () => {
  // 1 kg pulls 9.80665 N (standard gravity, 3rd CGPM 1901).
  expect(readReading(row("1,5", "106,2"), "kg", on)).toEqual({ reading: { loadN: 14.71, lengthMm: 106.2 } });
  expect(readReading(row("1500", "106.2"), "g", on)).toEqual({ reading: { loadN: 14.71, lengthMm: 106.2 } });
  expect(readReading(row("15", "106.2", "101"), "N", on)).toEqual({ reading: { loadN: 15, lengthMm: 106.2, afterMm: 101 } });
  expect(readMeasure("1500 g", "kg")).toBe(1.5);
  expect(readMeasure("2 kg", "N")).toBe(19.6133);
  expect(readMeasure("2 mm", "N")).toBeUndefined();
  expect(readMeasure("20 kg", "mm")).toBeUndefined();
});

test("a load goes into the job and back into its field unchanged", () => {
  for (const unit of ["kg", "g", "N"] as const) {
    const { factor } = loadField(unit);
    const { reading } = readReading(row("2.5", "110"), unit, on) as { reading: { loadN: number } };
    // To a thousandth of the unit that a spring balance shows at best.
    expect(Math.abs(reading.loadN * factor - 2.5)).toBeLessThan(unit === "g" ? 0.01 : 5e-4);
  }
});

test("what is wrong is told at its own field", () => {
  const at = (r: ReturnType<typeof readReading>) => ("at" in r ? r.at : "taken");
  expect(at(readReading(row("", ""), "kg", on))).toBe("load");
  expect(at(readReading(row("-2", "104"), "kg", on))).toBe("load");
  expect(at(readReading(row("2", ""), "kg", on))).toBe("length");
  expect(at(readReading(row("2", "98"), "kg", on))).toBe("length");
  expect(at(readReading(row("2", "250"), "kg", on))).toBe("length");
  expect(at(readReading(row("2", "104", "x"), "kg", on))).toBe("after");
  expect(at(readReading(row("2", "104", "105"), "kg", on))).toBe("after");
  expect(at(readReading(row("2", "104", "90"), "kg", on))).toBe("after");
  expect(at(readReading(row("2", "100"), "kg", on))).toBe("taken");
  // As in a table: a reading may be 1.5 mm short, no further than where goat tears, and no load beyond 50 N per mm of width.
  expect(at(readReading(row("2", "98.6"), "kg", on))).toBe("taken");
  expect(at(readReading(row("2", "161"), "kg", on))).toBe("length");
  expect(at(readReading(row("101", "104"), "kg", on))).toBe("taken");
  expect(at(readReading(row("500", "104"), "kg", on))).toBe("load");
});

test("how much it grew is no length, and the whole length is asked for", () => {
  expect(readReading(row("2", "3"), "kg", on)).toEqual({ at: "length", sentence: "Type the whole length between the marks, like 103, not by how much it grew." });
});

test("a heading is passed over, units stay with their numbers, and commas that may be either are told", () => {
  expect(pastedRows("load\tlength\n2\t102\n")).toEqual([row("2", "102")]);
  expect(pastedRows("load length")).toBeUndefined();
  expect(pastedRows("500 g; 102,5 mm")).toEqual([row("500g", "102,5mm")]);
  expect(pastedRows("0.5,102.5")).toEqual([row("0.5", "102.5")]);
  expect(commasBothWays("0,5,102,5")).toBe(true);
  for (const plain of ["102,5", "0,5;102,5", "0,5\t102,5\t101,5"]) expect(commasBothWays(plain)).toBe(false);
});

test("rows out of a table are told from a single number", () => {
  expect(pastedRows("2\t102\r\n5\t104,1\t101\r\n")).toEqual([row("2", "102"), row("5", "104,1", "101")]);
  expect(pastedRows("2;102\n5;104.1")).toEqual([row("2", "102"), row("5", "104.1")]);
  expect(pastedRows("102,5")).toBeUndefined();
  expect(pastedRows("load;length\n2;3;4;5")).toBeUndefined();
  expect(pastedRows("")).toBeUndefined();
});
