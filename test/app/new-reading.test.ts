// A row of a strip's table while it is typed or pasted.
import { expect, test } from "vitest";
import { loadField } from "#app/state/load-unit.ts";
import { pastedRows, readReading } from "#app/state/new-reading.ts";
import { readMeasure } from "#app/state/numbers.ts";

const row = (load: string, length: string, after = "") => ({ load, length, after });

test("a load in kilograms, grams or newtons is kept in newtons", () => {
  // 1 kg pulls 9.80665 N (standard gravity, 3rd CGPM 1901).
  expect(readReading(row("1,5", "106,2"), "kg", 100)).toEqual({ reading: { loadN: 14.71, lengthMm: 106.2 } });
  expect(readReading(row("1500", "106.2"), "g", 100)).toEqual({ reading: { loadN: 14.71, lengthMm: 106.2 } });
  expect(readReading(row("15", "106.2", "101"), "N", 100)).toEqual({ reading: { loadN: 15, lengthMm: 106.2, afterMm: 101 } });
  expect(readMeasure("1500 g", "kg")).toBe(1.5);
  expect(readMeasure("2 kg", "N")).toBe(19.6133);
  expect(readMeasure("2 mm", "N")).toBeUndefined();
  expect(readMeasure("20 kg", "mm")).toBeUndefined();
});

test("a load goes into the job and back into its field unchanged", () => {
  for (const unit of ["kg", "g", "N"] as const) {
    const { factor } = loadField(unit);
    const { reading } = readReading(row("2.5", "110"), unit, 100) as { reading: { loadN: number } };
    // To a thousandth of the unit that a spring balance shows at best.
    expect(Math.abs(reading.loadN * factor - 2.5)).toBeLessThan(unit === "g" ? 0.01 : 5e-4);
  }
});

test("what is wrong is told at its own field", () => {
  const at = (r: ReturnType<typeof readReading>) => ("at" in r ? r.at : "taken");
  expect(at(readReading(row("", ""), "kg", 100))).toBe("load");
  expect(at(readReading(row("-2", "104"), "kg", 100))).toBe("load");
  expect(at(readReading(row("2", ""), "kg", 100))).toBe("length");
  expect(at(readReading(row("2", "98"), "kg", 100))).toBe("length");
  expect(at(readReading(row("2", "250"), "kg", 100))).toBe("length");
  expect(at(readReading(row("2", "104", "x"), "kg", 100))).toBe("after");
  expect(at(readReading(row("2", "104", "105"), "kg", 100))).toBe("after");
  expect(at(readReading(row("2", "104", "90"), "kg", 100))).toBe("after");
  expect(at(readReading(row("2", "100"), "kg", 100))).toBe("taken");
});

test("rows out of a table are told from a single number", () => {
  expect(pastedRows("2\t102\r\n5\t104,1\t101\r\n")).toEqual([row("2", "102"), row("5", "104,1", "101")]);
  expect(pastedRows("2;102\n5;104.1")).toEqual([row("2", "102"), row("5", "104.1")]);
  expect(pastedRows("102,5")).toBeUndefined();
  expect(pastedRows("load;length\n2;3;4;5")).toBeUndefined();
  expect(pastedRows("")).toBeUndefined();
});
