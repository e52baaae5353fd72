import { expect, test } from "vitest";
import { readMoment } from "#making/calendar/dates.ts";
import { readDoneAt } from "#app/state/step-done-at.ts";

test("the time a step was done at is read where it can be meant, and told where it cannot", () => {
  const now = readMoment("2026-12-01T19:40")!;
  const read = (text: string): number | string => {
    const of = readDoneAt(text, now);
    return "at" in of ? of.at - now : of.wrong;
  };
  expect([read("2026-12-01T19:20"), read("2025-12-01T19:40"), read("2026-12-01T20:10")]).toEqual([-20, -365 * 1440, 30]);
  // The first key of a year makes it the year 2.
  expect(read("0002-12-01T19:20")).toBe("That is more than a year ago: look at the year. The former time still holds.");
  expect(read("2027-12-01T19:20")).toBe("That is still to come: look at the date. The former time still holds.");
  expect([read(""), read("2026-02-30T19:20")]).toEqual(Array(2).fill("That is no whole date and time. The former time still holds."));
});
