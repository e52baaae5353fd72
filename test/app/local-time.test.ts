import { afterEach, expect, test, vi } from "vitest";
import { readMoment } from "#making/calendar/dates.ts";
import { listenToTime, putForward } from "#app/state/local-time.ts";

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.unstubAllEnvs();
});

test("one clock ticks for all that listen, and none when nobody does", () => {
  vi.useFakeTimers();
  const page = new EventTarget();
  vi.stubGlobal("document", page);
  let [one, two] = [0, 0];
  const first = listenToTime(() => one++);
  const second = listenToTime(() => two++);
  expect(vi.getTimerCount()).toBe(1);
  vi.advanceTimersByTime(4000);
  expect([one, two]).toEqual([2, 2]);
  first();
  page.dispatchEvent(new Event("visibilitychange"));
  expect([one, two]).toEqual([2, 3]);
  second();
  expect(vi.getTimerCount()).toBe(0);
  page.dispatchEvent(new Event("visibilitychange"));
  expect([one, two]).toEqual([2, 3]);
  listenToTime(() => one++)();
  expect(vi.getTimerCount()).toBe(0);
});

// Directive 2000/84/EC: summer time begins on the last Sunday in March and ends on the last Sunday in October, at 01:00 universal time.
test("the hour that summer takes and gives back is seen between two moments of the clock", () => {
  vi.stubEnv("TZ", "Europe/Berlin");
  const at = (text: string): number => readMoment(text)!;
  expect(putForward(at("2027-03-27T22:00"), at("2027-03-28T08:00"))).toBe(60);
  expect(putForward(at("2027-10-30T22:00"), at("2027-10-31T08:00"))).toBe(-60);
  expect(putForward(at("2027-03-28T08:00"), at("2027-03-29T08:00"))).toBe(0);
});
