import fc from "fast-check";
import { expect, test } from "vitest";
import { calendarOf } from "#making/calendar/calendar-of.ts";
import type { Step } from "#making/steps/step.ts";
import { anyPlan } from "../support/invented-steps.ts";

const evenings = "daily 19:00-21:30";
/** Minutes at the bench until a moment counted from the first evening's midnight, and the moment at which so many are over. */
const evening = { from: 1140, to: 1290 };
const after = (time: number, minutes: number): number => {
  for (let day = Math.max(0, Math.floor(time / 1440)); ; day++) {
    const begin = Math.max(time, day * 1440 + evening.from);
    const free = day * 1440 + evening.to - begin;
    if (free >= minutes && free > 0) return begin + minutes;
    minutes -= Math.max(0, free);
  }
};
const rest = (step: Step): number => step.wait?.wellMin ?? 0;
const readyOf = (steps: readonly Step[]): number | undefined => {
  const { calendar } = calendarOf({ steps, pairs: 1, said: { sessions: evenings, start: "2026-12-01" } });
  return calendar && (Date.parse(calendar.ready.date) - Date.parse("2026-12-01")) / 60_000 + calendar.ready.min;
};
const plain = (steps: readonly Step[]): readonly Step[] => steps.map((step) => {
  const { wait, ...others } = step;
  return wait ? { ...others, wait: { leastMin: wait.leastMin, wellMin: wait.wellMin, what: wait.what, source: wait.source } } : others;
});

/** No plan can be ready before: all minutes one after the other without a gap, and each way through the steps as if there were hands enough. */
function bound(steps: readonly Step[]): number {
  const end = new Map<string, number>();
  for (const step of steps) end.set(step.id, after(Math.max(0, ...step.after.map((id) => end.get(id)! + rest(steps.find((s) => s.id === id)!))), step.minutes));
  return Math.max(after(0, steps.reduce((sum, step) => sum + step.minutes, 0)), ...steps.map((step) => end.get(step.id)! + rest(step)));
}

test("is ready never before it can be, and seldom much after", () => {
  const ratios: number[] = [];
  fc.assert(
    fc.property(anyPlan(40).map(plain), (steps) => {
      const ready = readyOf(steps)!;
      expect(ready).toBeGreaterThanOrEqual(bound(steps));
      ratios.push((ready - evening.from) / (bound(steps) - evening.from));
    }),
    { seed: 7, numRuns: 300 },
  );
  expect(ratios.reduce((sum, r) => sum + r, 0) / ratios.length).toBeLessThan(1.06);
});

/** Every order of a few steps that keeps what comes first, each step as early as it can be and cut only at an evening's end. */
function bestOf(steps: readonly Step[]): number {
  let best = Infinity;
  const go = (left: readonly Step[], time: number, end: ReadonlyMap<string, number>, ready: number): void => {
    if (ready >= best) return;
    if (left.length === 0) best = ready;
    for (const step of left) {
      if (left.some((s) => step.after.includes(s.id))) continue;
      const to = after(Math.max(time, ...step.after.map((id) => end.get(id)!)), step.minutes);
      go(left.filter((s) => s !== step), to, new Map(end).set(step.id, to + rest(step)), Math.max(ready, to + rest(step)));
    }
  };
  go(steps, 0, new Map(), 0);
  return best;
}

test("is ready on the same day as the best of all orders of a few steps", () => {
  let later = 0;
  fc.assert(
    fc.property(anyPlan(6).map(plain), (steps) => {
      if (Math.floor(readyOf(steps)! / 1440) > Math.floor(bestOf(steps) / 1440)) later++;
    }),
    { seed: 7, numRuns: 300 },
  );
  expect(later).toBeLessThanOrEqual(3);
});
