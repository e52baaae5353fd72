import { expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { readMoment } from "#making/calendar/dates.ts";
import { stepStates } from "#making/calendar/progress.ts";
import type { StepDone } from "#making/said.ts";
import { clearTicks, setTick } from "../../src/app/state/step-edits.ts";
import { calendarOfRest } from "../../src/app/state/step-left.ts";
import { canDoNow } from "../../src/app/state/step-now.ts";
import { calls, clockChangeWords, restsOf, timersAt, titleWords } from "../../src/app/state/step-timers.ts";
import { ableWords, spanWords, progressWords, restWords, stepWords, tickWords, whenWords } from "../../src/app/state/step-words.ts";
import { aStep, aWait } from "../support/invented-steps.ts";

const at = (time: string, day = "2026-12-01"): number => readMoment(`${day}T${time}`)!;
const tick = (time: string): StepDone => ({ left: `2026-12-01T${time}`, right: `2026-12-01T${time}` });
const plain = (text: string | undefined): string | undefined => text?.replaceAll("\u00a0", " ");
const cement = aStep("cement", { title: "Cement the margins", wait: { ...aWait(30, 60), leastMin: 12, what: "the margins dry" } });
const insole = aStep("insole", { title: "Block the insoles", wait: { ...aWait(1440), what: "the insoles dry" } });
const press = aStep("press", { title: "Press them down", after: ["cement", "insole"] });
const steps = [cement, insole, press];
const titleOf = (id: string): string => steps.find((s) => s.id === id)!.title;

test("how long and when, as it is said", () => {
  expect([1, 119, 120, 320, 2879, 2880, 3060].map((m) => plain(spanWords(m)))).toEqual(["1 min", "119 min", "2 h", "5 h 20 min", "47 h 59 min", "2 days", "2 days 3 h"]);
  const now = at("19:40");
  expect([at("19:52"), at("07:38", "2026-12-02"), at("23:59", "2026-11-30"), at("09:00", "2026-12-10"), at("09:00", "2027-01-02")].map((m) => whenWords(m, now))).toEqual(["19:52", "tomorrow 07:38", "yesterday 23:59", "Thu 10 December 09:00", "Sat 2 January 2027 09:00"]);
});

test("a rest tells how long still, from when, best from when, and before when", () => {
  const [{ rest }] = restsOf([cement], { cement: tick("19:40") }) as [ReturnType<typeof restsOf>[number]];
  const said = (time: string): string | undefined => plain(restWords(rest, at(time)));
  expect(said("19:40")).toBe("12 min more; you can go on from 19:52, best from 20:10, before 20:40");
  expect(said("19:52")).toBe("you can go on; best from 20:10, in 18 min, before 20:40");
  expect(said("20:10")).toBe("go on now, before 20:40: 30 min left");
  expect(said("20:40")).toBe("go on now, before 20:40: 0 min left");
  expect(said("20:41")).toBe("too long: what comes next should have begun by 20:40. Look at it before you go on; cement may need a fresh coat");
});

test("timers stand with what asks for hands first, are called out once, and show in the title", () => {
  const done = { insole: tick("19:00"), cement: tick("19:40") };
  const rests = restsOf(steps, done);
  expect(timersAt(rests, at("19:41")).map((t) => t.step.id)).toEqual(["cement", "insole"]);
  // A cement that has waited too long stays on show, the insole's rest goes when it is over.
  expect(timersAt(rests, at("19:00") + 1440).map((t) => t.step.id)).toEqual(["cement"]);
  expect(calls(rests, at("19:41"), at("19:45"))).toEqual([]);
  expect(calls(rests, at("19:51"), at("19:52")).map(plain)).toEqual(["“Cement the margins”: you can go on; best from 20:10, in 18 min, before 20:40."]);
  expect(calls(rests, at("19:52"), at("20:10")).map(plain)).toEqual(["“Cement the margins”: go on now, before 20:40: 30 min left."]);
  // A page that slept tells where things stand now, not all that was missed.
  expect(calls(rests, at("19:45"), at("19:00") + 1440).map(plain)).toEqual([
    "“Cement the margins”: too long: what comes next should have begun by yesterday 20:40. Look at it before you go on; cement may need a fresh coat.",
    "“Block the insoles”: the insoles dry, its time is over. You can go on.",
  ]);
  expect(plain(titleWords(rests, at("19:41")))).toBe("11 min: “Cement the margins”");
  expect(plain(titleWords(rests, at("19:55")))).toBe("15 min: “Cement the margins”");
  expect(titleWords(rests, at("20:15"))).toBe("before 20:40: go on after “Cement the margins”");
  expect(titleWords(restsOf(steps, { insole: tick("19:00") }), at("19:41"))).toBeUndefined();
  expect(restsOf(steps, { ...done, press: tick("20:12") })).toEqual([]);
  // A clock that is put back calls nothing a second time.
  expect(calls(rests, at("20:10"), at("19:55"))).toEqual([]);
});

test("a shoe that rests by itself has a line, a call and a title of its own", () => {
  const one = restsOf(steps, { cement: { left: "2026-12-01T19:40" } });
  expect(one.map((t) => [t.shoe, t.rest.best])).toEqual([["left", at("20:10")]]);
  expect(calls(one, at("19:51"), at("19:52")).map(plain)).toEqual(["“Cement the margins”, left shoe: you can go on; best from 20:10, in 18 min, before 20:40."]);
  expect(plain(titleWords(one, at("19:41")))).toBe("11 min: “Cement the margins”, left shoe");
  // A shoe ticked right after the other rests with it; one half an hour later does not.
  const pair = (right: string): (string | undefined)[] => restsOf(steps, { cement: { left: "2026-12-01T19:40", right: `2026-12-01T${right}` } }).map((t) => t.shoe);
  expect([pair("19:45"), pair("20:10")]).toEqual([[undefined], ["left", "right"]]);
  const done = { insole: { left: "x", right: "x" }, cement: tick("19:40"), press: { left: "2026-12-01T20:12" } };
  expect(restsOf(steps, done).map((t) => [t.step.id, t.shoe])).toEqual([["cement", "right"]]);
  const said = stepStates(steps, done, at("20:13"))[0]!;
  expect(plain(stepWords(said, done.cement, at("20:13"), titleOf))).toBe("left shoe done; right shoe done; go on now, before 20:40: 27 min left");
});

test("where the clocks change while something rests, it is said by how much", () => {
  const [timer] = restsOf(steps, { insole: tick("19:00") }) as [ReturnType<typeof restsOf>[number]];
  const asked: number[][] = [];
  const words = (shift: number): string | undefined => plain(clockChangeWords(timer, (...of) => (asked.push(of), shift)));
  expect([words(0), words(60), words(-60)]).toEqual(["", "The clocks are put forward meanwhile: add 60 min to these times.", "The clocks are put back meanwhile: take 60 min off these times."]);
  expect(asked[0]).toEqual([at("19:00"), at("19:00") + 1440]);
});

test("each step tells how it stands, shoe by shoe where they differ", () => {
  const said = (done: Readonly<Record<string, StepDone>>, time: string): (string | undefined)[] => stepStates(steps, done, at(time)).map((s) => plain(stepWords(s, done[s.step], at(time), titleOf)));
  expect(said({}, "19:00")).toEqual(["can begin", "can begin", "waits for “Cement the margins” and “Block the insoles”"]);
  expect(said({ cement: { left: "2026-12-01T19:00" } }, "19:01")[0]).toBe("left shoe done; 11 min more; you can go on from 19:12, best from 19:30, before 20:00; right shoe can begin");
  expect(said({ insole: { left: "2026-11-29T19:00", right: "2026-11-29T19:00" }, cement: tick("19:00") }, "19:05").slice(1)).toEqual(["done Sun 29 November 19:00", "waits until 19:12"]);
  expect(said({ insole: { left: "x", right: "x" }, cement: tick("19:00") }, "19:20").slice(1)).toEqual(["done", "can begin, best from 19:30, before 20:00"]);
  expect(said({ insole: { left: "x", right: "x" }, cement: tick("19:00") }, "21:00")[2]).toBe("can begin, but should have begun by 20:00: look at the cement first");
  const half = stepStates(steps, { cement: { left: "2026-12-01T19:00" } }, at("19:01"));
  expect(plain(progressWords(half, 322))).toBe("Nothing is done yet; about 5 h 20 min of work left, beside what dries.");
  expect(progressWords(stepStates(steps, { cement: tick("19:00"), insole: tick("19:00"), press: tick("20:00") }, at("20:00")), 0)).toBe("All steps are done.");
});

test("what can be done now begins with what an open cement waits for, then goes as the calendar has it", () => {
  const now = (done: Readonly<Record<string, StepDone>>, time: string, order?: readonly string[]): string[] => {
    const states = new Map(stepStates(steps, done, at(time)).map((s) => [s.step, s]));
    const stints = order?.map((step) => ({ step, fromMin: 0, toMin: 1, part: 1, parts: 1 }));
    const calendar = stints && { sessions: [{ date: "2026-12-01", fromMin: 0, toMin: 99, stints, waits: [] }], ready: { date: "2026-12-01", min: 0 } };
    return canDoNow(steps, states, calendar).map((a) => a.step.id + ableWords(a, at(time)));
  };
  expect(now({}, "19:00")).toEqual(["cement", "insole"]);
  expect(now({}, "19:00", ["insole", "cement", "press"])).toEqual(["insole", "cement"]);
  expect(now({ cement: { left: "2026-12-01T19:00" } }, "19:01")).toEqual(["cement (right shoe)", "insole"]);
  expect(now({ insole: { left: "x" }, cement: tick("19:00") }, "19:20")).toEqual(["press (left shoe, before 20:00)", "insole (right shoe)"]);
  expect(now({ insole: { left: "x", right: "x" }, cement: tick("19:00") }, "20:01")).toEqual(["press (late)"]);
});

test("ticks are edits: the other shoe keeps its time, and what is taken out leaves nothing behind", () => {
  const job = defaultJob();
  const one = setTick(job, "cement", ["left"], at("19:40"));
  expect(one.making.done).toEqual({ cement: { left: "2026-12-01T19:40" } });
  const both = setTick(one, "cement", ["right"], at("19:44"));
  expect(both.making.done).toEqual({ cement: { left: "2026-12-01T19:40", right: "2026-12-01T19:44" } });
  expect(setTick(both, "cement", ["left"], at("19:30")).making.done).toEqual({ cement: { left: "2026-12-01T19:30", right: "2026-12-01T19:44" } });
  expect(setTick(setTick(both, "cement", ["left"], undefined), "cement", ["right"], undefined)).toEqual(job);
  expect(clearTicks(setTick(both, "press", ["left", "right"], 0))).toEqual(job);
  expect([tickWords(cement, ["left"], true), tickWords(cement, ["left", "right"], false)]).toEqual(["ticking off “Cement the margins” on the left shoe", "taking back “Cement the margins” on both shoes"]);
});

test("what is left is planned from now on, around what rests already", () => {
  const said = { sessions: "daily 19-22", start: "2026-11-01", done: { insole: tick("19:00"), cement: {} } };
  // Tuesday 19:10: cement at once, 30 min. The insoles dry until Wednesday 19:00, and cement does not wait for that: it is put on the next evening, as late as it has to be.
  const { calendar } = calendarOfRest({ steps, pairs: 1 }, said, at("19:10"));
  expect(calendar!.sessions.map((s) => [s.date, s.stints.map((i) => [i.step, i.fromMin, i.toMin])])).toEqual([["2026-12-02", [["cement", 0, 30], ["press", 60, 90]]]]);
  expect(calendarOfRest({ steps, pairs: 1 }, { ...said, start: "2026-12-20" }, at("19:10")).calendar!.sessions[0]!.date).toBe("2026-12-20");
  expect(calendarOfRest({ steps, pairs: 1 }, { ...said, sessions: "" }, at("19:10")).calendar).toBeUndefined();
});
