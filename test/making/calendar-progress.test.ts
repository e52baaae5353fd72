import fc from "fast-check";
import { expect, test } from "vitest";
import { readMoment } from "#making/calendar/dates.ts";
import { stepStates, type Standing } from "#making/calendar/progress.ts";
import type { StepDone } from "#making/said.ts";
import { anyPlan, aStep, aWait } from "../support/invented-steps.ts";

const day = (time: string): number => readMoment(`2026-12-01T${time}`)!;
const tick = (time: string): StepDone => ({ left: `2026-12-01T${time}`, right: `2026-12-01T${time}` });
const steps = [aStep("cut"), aStep("cement", { after: ["cut"], wait: { ...aWait(20, 60), leastMin: 10 } }), aStep("fold", { after: ["cement"] }), aStep("insole", { wait: aWait(1440) })];
const both = (done: Readonly<Record<string, StepDone>>, now: string): readonly Standing[] => stepStates(steps, done, day(now)).map((s) => s.both);

test("at the beginning what needs nothing before it can begin", () => {
  expect(both({}, "19:00")).toEqual([{ is: "can begin" }, { is: "waits", steps: ["cut"] }, { is: "waits", steps: ["cement"] }, { is: "can begin" }]);
});

test("what dries says from when, best from when, and before when; what comes next waits, then can begin", () => {
  const done = { cut: tick("19:00"), cement: tick("19:40") };
  const drying = { is: "drying", soonest: day("19:50"), best: day("20:00"), latest: day("20:40") };
  expect(both(done, "19:42").slice(0, 3)).toEqual([{ is: "done" }, drying, { is: "waits", steps: [], until: day("19:50") }]);
  expect(both(done, "19:50")[2]).toEqual({ is: "can begin", best: day("20:00"), latest: day("20:40") });
  expect(both(done, "20:00")[2]).toEqual({ is: "can begin", latest: day("20:40") });
  // The open time is over and the fold has not begun: the moment stays, so that it can be told.
  expect(both(done, "23:00").slice(1, 3)).toEqual([drying, { is: "can begin", latest: day("20:40") }]);
  expect(both({ ...done, fold: tick("20:10") }, "20:10").slice(1, 3)).toEqual([{ is: "done" }, { is: "done" }]);
});

test("without an open time the wait is over by itself", () => {
  expect(both({ insole: tick("19:00") }, "19:01")[3]).toEqual({ is: "drying", soonest: day("19:00") + 720, best: day("19:00") + 1440 });
  expect(stepStates(steps, { insole: tick("19:00") }, day("19:00") + 1440)[3]!.both).toEqual({ is: "done" });
});

test("a shoe that is ticked goes ahead of the other", () => {
  const state = stepStates(steps, { cut: { left: "2026-12-01T19:00" } }, day("19:05"));
  expect(state[0]).toMatchObject({ left: { is: "done" }, right: { is: "can begin" }, both: { is: "can begin" } });
  expect(state[1]).toMatchObject({ left: { is: "can begin" }, right: { is: "waits", steps: ["cut"] }, both: { is: "waits", steps: ["cut"] } });
  const cemented = stepStates(steps, { cut: tick("19:00"), cement: { left: "2026-12-01T19:10", right: "2026-12-01T19:16" } }, day("19:17"));
  expect(cemented[1]!.both).toEqual({ is: "drying", soonest: day("19:26"), best: day("19:36"), latest: day("20:10") });
});

test("a tick without a readable time counts as long ago, and ticks of steps that are gone do no harm", () => {
  expect(both({ cement: { left: "yesterday", right: "yesterday" }, gone: tick("19:00") }, "19:00")[1]).toEqual({ is: "done" });
  expect(both({ cut: tick("19:00"), cement: { left: "yesterday", right: "yesterday" } }, "19:00")[2]).toEqual({ is: "can begin" });
});

test("working through any plan as it says one can begin, everything comes to its end", () => {
  fc.assert(
    fc.property(anyPlan(15), fc.nat(), (plan, pick) => {
      const done: Record<string, StepDone> = {};
      let now = 0;
      for (let n = 0; n < plan.length; n++) {
        let states = stepStates(plan, done, now);
        const untils = states.flatMap((s) => (s.both.is === "waits" && s.both.steps.length === 0 ? [s.both.until!] : []));
        if (!states.some((s) => s.both.is === "can begin")) states = stepStates(plan, done, (now = Math.min(...untils)));
        const able = states.filter((s) => s.both.is === "can begin");
        expect(able.length).toBeGreaterThan(0);
        const { step } = able[pick % able.length]!;
        expect(plan.find((s) => s.id === step)!.after.every((id) => done[id])).toBe(true);
        const at = `1970-01-${String(Math.floor(now / 1440) + 1).padStart(2, "0")}T${String(Math.floor(now / 60) % 24).padStart(2, "0")}:${String(now % 60).padStart(2, "0")}`;
        if (now < 31 * 1440) done[step] = { left: at, right: at };
        else return;
      }
      expect(stepStates(plan, done, now + 1e6).every((s) => s.both.is === "done" || (s.both.is === "drying" && s.both.latest !== undefined))).toBe(true);
    }),
    { seed: 7, numRuns: 200 },
  );
});
