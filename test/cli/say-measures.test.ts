// What the command prints of two lasts. Values are worked by hand.
import { expect, test } from "vitest";
import { explain, finding } from "#base/findings.ts";
import { differing } from "../../src/cli/say-measures.ts";

test("a difference agrees with the two values printed beside it, and is never minus nothing", () => {
  expect(differing(220, 219.98)).toEqual(["220.0 mm", "220.0 mm", "0.0 mm"]);
  expect(differing(10, 12.5)).toEqual(["10.0 mm", "12.5 mm", "+2.5 mm"]);
  // 10.0 and 10.2 differ by 0.2 in print but by 0.12 in truth: one more decimal.
  expect(differing(10.04, 10.16)).toEqual(["10.04 mm", "10.16 mm", "+0.12 mm"]);
});

test("the heel height is told however many other reasons are graver", () => {
  const one = (what: string, byMm: number) => ({ what, byMm, limitMm: 1 });
  const reasons = [one("surface", 9), one("feather", 8), one("ballWidth", 7), one("jointGirth", 6), one("seatWidth", 5), one("heelHeight", -4)] as const;
  const text = explain(finding("pair-none", { reasons }));
  expect(text).toContain("heel height is 4.0 mm less");
  expect(text).toContain("ball width is 7.0 mm more");
  expect(text).toContain("and 2 more");
});
