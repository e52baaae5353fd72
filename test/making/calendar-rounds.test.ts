// Fewer pairs of lasts than pairs: what is done on the lasts goes in rounds.
import fc from "fast-check";
import { expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { calendarOf } from "#making/calendar/calendar-of.ts";
import type { Calendar } from "#making/calendar/calendar.ts";
import { lastsOf, readLasts } from "#making/calendar/lasts.ts";
import { readyWords, roundsWords, stintWords, whichPairs } from "#making/calendar/stint-words.ts";
import type { Step } from "#making/steps/step.ts";
import { at, has, holds, stintsOf } from "../support/calendar-holds.ts";
import { anyPlan, anyWeek, aStep, aWait } from "../support/invented-steps.ts";

/** Without the spaces that hold a line together. */
const plain = (words: string): string => words.replaceAll("\u00a0", " ");

const start = "2026-12-01";

/** Plans of which some steps are done on the lasts. */
const onLasts = (most: number): fc.Arbitrary<readonly Step[]> =>
  fc.tuple(anyPlan(most), fc.array(fc.boolean(), { minLength: most, maxLength: most })).map(([steps, on]) => steps.map((step, k) => ({ ...step, onLast: on[k]! && k > 0 })));
const counts = fc.record({ pairs: fc.integer({ min: 1, max: 6 }), lasts: fc.integer({ min: 1, max: 4 }) });

/** From when to when each pair has its lasts. */
function onTheLasts(steps: readonly Step[], pairs: number, calendar: Calendar): readonly { readonly from: number; readonly to: number }[] {
  const done = stintsOf(calendar, pairs).filter((s) => steps.find(({ id }) => id === s.step)!.onLast);
  return Array.from({ length: pairs }, (_, k) => {
    const mine = done.filter((s) => has(s, k + 1));
    return { from: Math.min(...mine.map((s) => s.from)), to: Math.max(...mine.map((s) => s.to)) };
  });
}

test("whatever the plan, never more pairs are on lasts than there are lasts, and the next round begins when the one before is off", () => {
  let made = 0;
  fc.assert(
    fc.property(onLasts(20), anyWeek, counts, (steps, week, { pairs, lasts }) => {
      const { calendar } = calendarOf({ steps, pairs, said: { sessions: week, start, lasts } });
      if (!calendar) return;
      holds(steps, pairs, calendar);
      const few = Math.min(lasts, pairs);
      if (few === pairs || !steps.some((s) => s.onLast)) return void expect(calendar.rounds).toBeUndefined();
      made++;
      expect([calendar.rounds, calendar.lasts]).toEqual([Math.ceil(pairs / few), few]);
      const spans = onTheLasts(steps, pairs, calendar);
      for (const { from } of spans) expect(spans.filter((s) => s.from <= from && from < s.to).length).toBeLessThanOrEqual(few);
      // Dealt as evenly as it goes: 5 on 3 are 3 and 2, 5 on 2 are 2, 2 and 1.
      const rounds = Math.ceil(pairs / few), sizes = Array.from({ length: rounds }, (_, r) => Math.ceil((pairs - r) / rounds));
      const roundOf = spans.map((_, k) => sizes.findIndex((_size, r) => k < sizes.slice(0, r + 1).reduce((sum, n) => sum + n, 0)));
      spans.forEach((s, k) => spans.forEach((t, l) => { if (roundOf[k]! < roundOf[l]!) expect(t.from).toBeGreaterThanOrEqual(s.to); }));
    }),
    { seed: 7, numRuns: 300 },
  );
  expect(made).toBeGreaterThan(80);
});

/** By hand: five pairs, two pairs of lasts, so rounds of 2, 2 and 1; each is lasted (30 min a pair), dries a day, and is slipped. */
test("five pairs on two pairs of lasts come out as by hand", () => {
  const steps = [
    aStep("cut", { minutes: 10 }), aStep("last", { minutes: 30, after: ["cut"], onLast: true, wait: aWait(1440) }), aStep("slip", { minutes: 5, after: ["last"], onLast: true, wait: aWait(2880) }), aStep("polish", { minutes: 10, after: ["slip"] }),
  ];
  const { calendar } = calendarOf({ steps, pairs: 5, said: { sessions: "daily 19-21", start, lasts: "2" } });
  const told = calendar!.sessions.flatMap(({ date, stints }) => stints.map((s) => `${date.slice(8)} ${s.fromMin}-${s.toMin} ${s.step} ${plain(stintWords(s, 5))}`.trim()));
  // On the 2nd the first two have rested a day at 20:50 only (cut until 19:50, lasted until 20:50): slipped until 21:00; the next two are lasted on the 3rd.
  expect(told).toEqual([
    "01 0-50 cut", "01 50-110 last pairs 1 and 2 of 5", "02 110-120 slip pairs 1 and 2 of 5", "03 0-60 last pairs 3 and 4 of 5", "04 60-70 slip pairs 3 and 4 of 5", "04 70-100 last pair 5 of 5",
    "05 100-105 slip pair 5 of 5",
    // Slipped on the 5th at 20:45 it rests two days: what is left of the 7th holds no polish in one go.
    "08 0-50 polish",
  ]);
  expect(calendar!.sessions[0]!.waits).toEqual([{ step: "last", first: 1, pairs: 2, untilDate: "2026-12-02", untilMin: 1140 + 110 }]);
  expect([calendar!.rounds, calendar!.lasts, roundsWords(calendar!, 5)]).toEqual([3, 2, "5 pairs on 2 pairs of lasts: what is done on them goes in 3 rounds."]);
  expect(readyWords(calendar!)).toBe("Tue 8 December 2026");
  expect(readyWords({ ready: { date: "week 10, Tuesday", min: 600 } })).toBe("Tuesday of week 10");
  expect(stintWords({ step: "last", fromMin: 0, toMin: 60, part: 1, parts: 2, first: 1, pairs: 1 }, 3)).toBe("pair\u00a01\u00a0of\u00a03, part\u00a01\u00a0of\u00a02");
});

test("what lies between two steps on the lasts goes in the same round; what does not waits for no lasts", () => {
  const steps = [aStep("block", { minutes: 10, onLast: true }), aStep("glue", { minutes: 10, after: ["block"] }), aStep("slip", { minutes: 10, after: ["glue"], onLast: true }), aStep("bow", { minutes: 10 })];
  const { calendar } = calendarOf({ steps, pairs: 2, said: { sessions: "Sat 9-18", start } });
  const told = calendar!.sessions[0]!.stints.map((s) => `${s.step} ${plain(whichPairs(s, 2))}`.trim());
  expect(told.filter((t) => !t.startsWith("bow"))).toEqual(["block pair 1 of 2", "glue pair 1 of 2", "slip pair 1 of 2", "block pair 2 of 2", "glue pair 2 of 2", "slip pair 2 of 2"]);
  expect(told.filter((t) => t.startsWith("bow"))).toEqual(["bow"]);
});

test("a chain that begins off the lasts and ends on them stays in one session in each round", () => {
  const steps = [aStep("cut", { minutes: 20 }), aStep("coat", { minutes: 10, after: ["cut"], wait: aWait(15, 30) }), aStep("last", { minutes: 10, after: ["cut"], onLast: true }), aStep("press", { minutes: 20, after: ["coat", "last"], onLast: true })];
  const { calendar } = calendarOf({ steps, pairs: 3, said: { sessions: "daily 19-20", start, lasts: 1 } });
  holds(steps, 3, calendar!);
  expect(stintsOf(calendar!, 3).filter((s) => s.step === "coat").map((s) => s.pairs)).toEqual([1, 1, 1]);
});

test("lasts are marked once for each pair of them, a pattern once", () => {
  const steps = [aStep("cut-cards", { phase: "pattern", minutes: 15 }), aStep("mark-lasts", { phase: "pattern", minutes: 10 }), aStep("last", { minutes: 20, after: ["mark-lasts"], onLast: true })];
  const { calendar } = calendarOf({ steps, pairs: 4, said: { sessions: "Sat 9-18", start, lasts: 2 } });
  const minutes = (id: string): number => calendar!.sessions.flatMap((s) => s.stints).filter((s) => s.step === id).reduce((sum, s) => sum + s.toMin - s.fromMin, 0);
  expect([minutes("cut-cards"), minutes("mark-lasts"), minutes("last")]).toEqual([15, 20, 80]);
});

test("more rounds than the sessions hold are told, not planned, be it thousands", () => {
  const steps = [aStep("last", { minutes: 20, onLast: true, wait: aWait(2880) }), aStep("slip", { minutes: 5, after: ["last"], onLast: true })];
  const { calendar, findings } = calendarOf({ steps, pairs: 9000, said: { sessions: "Sat 9-13", start, lasts: 2 } });
  expect(calendar).toBeUndefined();
  expect(findings.map(explain)).toEqual(["There is no calendar: 9000 pairs take about 3750 hours at the bench, in 4500 rounds on your lasts, and with all that dries on them that takes more than 400 of your sessions (400 weeks or more of them). Make fewer pairs at a time, take more lasts, or work in more or longer sessions."]);
});

test("how many pairs of lasts there are is read as it is written; what is no such number is told at its field", () => {
  for (const [written, lasts] of [["2", 2], [" 3 pairs", 3], ["1 pair of lasts", 1], [4, 4], ["7", 5], ["1e9", 1], [undefined, 1], ["", 1]] as const) expect(lastsOf({ ...(written !== undefined && { lasts: written }) }, 5), String(written)).toBe(lasts);
  for (const wrong of ["0", "-1", "1.5", "two", "1/2", -3, 0, 2.5, Number.NaN]) {
    const { lasts, findings } = readLasts({ lasts: wrong }, 5);
    expect(lasts).toBe(1);
    expect(findings.map(explain)).toEqual([`How many pairs of lasts you have: “${wrong}” is no whole number from 1 on, and one pair is reckoned with. Write a number like 2.`]);
  }
  expect(readLasts({ lasts: "99999999999" }, 5)).toEqual({ lasts: 5, findings: [] });
  expect(calendarOf({ steps: [aStep("cut")], pairs: 2, said: { lasts: "many" } }).findings.map(({ code }) => code)).toEqual(["lasts-unread"]);
});

test("a first day without times is answered", () => {
  const { calendar, findings } = calendarOf({ steps: [aStep("cut")], pairs: 1, said: { start } });
  expect(calendar).toBeUndefined();
  expect(findings.map(explain)).toEqual(["A first day of work is said, but not when you work; so there is no calendar. Write days and times like “Tue 19:00-21:30, Sat 9:00-13:00”."]);
});

test("ready is never before all rounds can be over, and seldom much after", () => {
  const evenings = { from: 1140, to: 1290 };
  const after = (time: number, minutes: number): number => {
    for (let day = Math.max(0, Math.floor(time / 1440)); ; day++) {
      const begin = Math.max(time, day * 1440 + evenings.from), free = day * 1440 + evenings.to - begin;
      if (free >= minutes && free > 0) return begin + minutes;
      minutes -= Math.max(0, free);
    }
  };
  const rest = (step: Step): number => step.wait?.wellMin ?? 0;
  /** Hands enough for everything, but lasts for two: all rounds one after the other, each in what it needs at the least. */
  const bound = (steps: readonly Step[], pairs: number): number => {
    const ahead = new Map<string, Set<string>>();
    for (const s of steps) ahead.set(s.id, new Set(s.after.flatMap((id) => [id, ...ahead.get(id)!])));
    const on = steps.filter((s) => s.onLast);
    const between = (s: Step): boolean => s.onLast === true || (on.some((o) => ahead.get(s.id)!.has(o.id)) && on.some((o) => ahead.get(o.id)!.has(s.id)));
    const end = new Map<string, number>();
    let freed = 0;
    const step = (s: Step, n: number, soonest: number): void => void end.set(s.id, after(Math.max(soonest, ...s.after.map((id) => end.get(id)! + rest(steps.find((o) => o.id === id)!))), s.minutes * n));
    const later = (s: Step): boolean => !between(s) && steps.some((o) => between(o) && ahead.get(s.id)!.has(o.id));
    for (const s of steps) if (!between(s) && !later(s)) step(s, pairs, 0);
    for (let left = pairs; left > 0; left -= 2) {
      for (const s of steps) if (between(s)) step(s, Math.min(2, left), s.onLast ? freed : 0);
      freed = Math.max(...on.map((s) => end.get(s.id)!));
    }
    for (const s of steps) if (later(s)) step(s, pairs, 0);
    return Math.max(after(0, steps.reduce((sum, s) => sum + s.minutes * pairs, 0)), ...steps.map((s) => end.get(s.id)! + rest(s)));
  };
  const ratios: number[] = [];
  fc.assert(
    fc.property(onLasts(30), fc.constantFrom(4, 6), (made, pairs) => {
      const steps = made.map(({ wait, ...others }) => (wait ? { ...others, wait: aWait(wait.wellMin) } : others));
      if (!steps.some((s) => s.onLast)) return;
      const { calendar } = calendarOf({ steps, pairs, said: { sessions: "daily 19:00-21:30", start, lasts: 2 } });
      const ready = at(calendar!.ready.date, calendar!.ready.min) - at(start, 0);
      expect(ready).toBeGreaterThanOrEqual(bound(steps, pairs));
      ratios.push((ready - evenings.from) / (bound(steps, pairs) - evenings.from));
    }),
    { seed: 7, numRuns: 200 },
  );
  expect(ratios.reduce((sum, r) => sum + r, 0) / ratios.length).toBeLessThan(1.03);
});
