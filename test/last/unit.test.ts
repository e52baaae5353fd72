import { expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { guessUnit, unitFinding } from "#last/unit.ts";

// Exact by definition: 1 in = 25.4 mm.
test.each([
  [252, "mm"],
  [25.2, "cm"],
  [2.52, "dm"],
  [0.252, "m"],
  [252 / 25.4, "in"],
  [181, "mm"],
  [0.329, "m"],
])("a length of %f is read in %s", (length, unit) => {
  const guess = guessUnit(length);
  expect(guess.unit).toBe(unit);
  expect(unitFinding(guess, length / guess.unitPerMm).code).toBe("unit-read");
});

test("where two units would do, the likelier is taken and the doubt is said", () => {
  const guess = guessUnit(12.2); // 310 mm in inches, 122 mm in centimetres
  expect(guess.unit).toBe("in");
  const finding = unitFinding(guess, 12.2 * 25.4);
  expect(finding.code).toBe("unit-doubtful");
  expect(explain(finding)).toContain("122 mm");
});

test("a child's or a giant's last is possible but said", () => {
  expect(unitFinding(guessUnit(150), 150).code).toBe("last-unusual-length");
  expect(unitFinding(guessUnit(370), 370).code).toBe("last-unusual-length");
});

test.each([0.03, 0.7, 90, 2000, 1e-6, 1e9])("a length of %f is no last in any unit", (length) => {
  expect(() => guessUnit(length)).toThrow(Refusal);
});
