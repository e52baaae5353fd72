import fc from "fast-check";
import { expect, test } from "vitest";
import { clockText } from "#base/clock.ts";
import { dateWords, dayNumber, dayOf, dayText, momentText, readDay, readMoment, weekdayNames, weekdayOf } from "#making/calendar/dates.ts";

/** The platform's own calendar. */
const utc = (year: number, month: number, day: number): Date => {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  return date;
};

test("days known from elsewhere", () => {
  // Gregorian reform: Thursday 4 October 1582 (Julian) was followed by Friday 15 October 1582. Moon landing: Sunday 20 July 1969. ISO 8601's
  // own example of a leap day that a century year has: 2000-02-29, a Tuesday. From memory.
  const known = [["1582-10-15", "Friday"], ["1969-07-20", "Sunday"], ["2000-02-29", "Tuesday"], ["1970-01-01", "Thursday"], ["2026-12-01", "Tuesday"]] as const;
  for (const [text, name] of known) expect(weekdayNames[weekdayOf(dayNumber(readDay(text)!))]).toBe(name);
  // Julian day 2 451 545 is 1 January 2000 and 2 440 588 is 1 January 1970 (astronomers' count, from memory).
  expect(dayNumber({ year: 2000, month: 1, day: 1 })).toBe(2_451_545 - 2_440_588);
});

test("agrees with the platform's own calendar, day by day and far away", () => {
  for (let number = -200_000; number < 200_000; number += 1) {
    const day = dayOf(number);
    if (dayNumber(day) !== number) expect(dayNumber(day)).toBe(number);
  }
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }), (year, month, day) => {
      const date = utc(year, month, day);
      const number = dayNumber({ year, month, day });
      expect(number).toBe(Math.round(date.getTime() / 86_400_000));
      expect(weekdayOf(number)).toBe((date.getUTCDay() + 6) % 7);
      expect(dayText(dayOf(number))).toBe(date.toISOString().slice(0, 10));
    }),
    { seed: 7, numRuns: 500 },
  );
});

test("a date is read only where there is such a day", () => {
  for (const text of ["2026-02-29", "2100-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "0000-01-01", "1.12.2026", "tomorrow", ""]) expect(readDay(text)).toBeUndefined();
  expect(readDay(" 2024-2-29 ")).toEqual({ year: 2024, month: 2, day: 29 });
});

test("moments are read and written alike", () => {
  expect(readMoment("2026-12-01T19:40")).toBe(readMoment("2026-12-01T19:40:59"));
  expect(momentText(readMoment("2026-12-31T23:59")! + 1)).toBe("2027-01-01T00:00");
  expect([readMoment("2026-12-01"), readMoment("2026-12-01T24:00"), readMoment("2026-12-01T10:60"), readMoment("")]).toEqual([undefined, undefined, undefined, undefined]);
  fc.assert(fc.property(fc.integer({ min: -1e6, max: 1e8 }), (moment) => void expect(readMoment(momentText(moment))).toBe(moment)), { seed: 7 });
  expect([clockText(0), clockText(1190), clockText(1440)]).toEqual(["00:00", "19:50", "24:00"]);
  expect([dateWords("2026-12-01"), dateWords("week 1, Tuesday")]).toEqual(["Tue 1 December 2026", "week 1, Tuesday"]);
});
