import fc from "fast-check";
import { expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { calendarOf } from "#making/calendar/calendar-of.ts";
import type { Calendar } from "#making/calendar/calendar.ts";
import type { Step } from "#making/steps/step.ts";
import { at, holds, stintsOf } from "../support/calendar-holds.ts";
import { anyPlan, anyWeek, aStep, aWait } from "../support/invented-steps.ts";

const start = "2026-12-01";
const said = (sessions: string) => ({ sessions, start });
const shown = (calendar: Calendar): readonly string[] => calendar.sessions.flatMap(({ date, fromMin, stints }) => stints.map((s) => `${date} ${s.step} ${fromMin + s.fromMin - 1140}-${fromMin + s.toMin - 1140}${s.parts > 1 ? ` ${s.part}/${s.parts}` : ""}`));

/**
 * By hand. Tuesdays 19:00-21:00 and Saturdays 9:00-12:00. The insole is on the longest way (30 + a day + 90 + two days + 60), so it is pasted
 * first; then the upper is cut. Cement, its 15 min and the fold take 85 min in one go and do not fit into the 30 that are left: the bow does.
 * On Saturday cement at 9:00, fold at 9:45, lasting at 10:25 (the insole has rested since Wednesday); lasted until 11:55, rests to Monday
 * 11:55, soled on Tuesday.
 */
test("a small plan comes out as by hand", () => {
  const steps = [
    aStep("cut", { minutes: 60 }), aStep("cement", { minutes: 30, after: ["cut"], wait: aWait(15, 40) }), aStep("fold", { minutes: 40, after: ["cement"] }),
    aStep("insole", { minutes: 30, wait: aWait(1440) }), aStep("last", { minutes: 90, after: ["fold", "insole"], wait: aWait(2880) }), aStep("sole", { minutes: 60, after: ["last"] }), aStep("bow", { minutes: 25, after: ["cut"] }),
  ];
  const { calendar, findings } = calendarOf({ steps, pairs: 1, said: said("Tue 19-21, Sat 9-12") });
  expect(findings).toEqual([]);
  const at19 = (h: number, m: number): number => 60 * h + m - 1140;
  expect(shown(calendar!)).toEqual([
    "2026-12-01 insole 0-30", "2026-12-01 cut 30-90", "2026-12-01 bow 90-115",
    `2026-12-05 cement ${at19(9, 0)}-${at19(9, 30)}`, `2026-12-05 fold ${at19(9, 45)}-${at19(10, 25)}`, `2026-12-05 last ${at19(10, 25)}-${at19(11, 55)}`,
    "2026-12-08 sole 0-60",
  ]);
  expect(calendar!.sessions.map((s) => s.waits)).toEqual([[{ step: "insole", untilDate: "2026-12-02", untilMin: 1170 }], [{ step: "last", untilDate: "2026-12-07", untilMin: 715 }], []]);
  expect(calendar!.ready).toEqual({ date: "2026-12-08", min: 1200 });
});

test("while something dries other work is done, and a long step goes on in the next session", () => {
  const steps = [aStep("first coat", { minutes: 20, wait: aWait(30) }), aStep("second coat", { minutes: 20, after: ["first coat"] }), aStep("sew", { minutes: 100 })];
  const { calendar } = calendarOf({ steps, pairs: 1, said: said("daily 19-21") });
  // By hand: 140 min of work leave 20 for the second evening at the best; sewing first does that without being cut.
  expect(shown(calendar!)).toEqual(["2026-12-01 sew 0-100", "2026-12-01 first coat 100-120", "2026-12-02 second coat 0-20"]);
  // With half an hour more all is done in one evening, and sewing is what is done while the first coat dries.
  const roomy = calendarOf({ steps, pairs: 1, said: said("daily 19-21:30") });
  expect(shown(roomy.calendar!)).toEqual(["2026-12-01 first coat 0-20", "2026-12-01 sew 20-120", "2026-12-01 second coat 120-140"]);
  const long = calendarOf({ steps: [aStep("sew", { minutes: 250 })], pairs: 1, said: said("daily 19-21") });
  expect(shown(long.calendar!)).toEqual(["2026-12-01 sew 0-120 1/3", "2026-12-02 sew 0-120 2/3", "2026-12-03 sew 0-10 3/3"]);
});

test("many pairs go through a chain in rounds that the cement's open time lets", () => {
  const steps = [aStep("cement", { minutes: 5, wait: aWait(15, 40) }), aStep("fold", { minutes: 8, after: ["cement"] })];
  const { calendar } = calendarOf({ steps, pairs: 10, said: said("Sat 9-18") });
  // By hand: 15 + (k − 1) · 8 ≤ 40 holds for k = 4, so that ten pairs are three rounds: 4, 3 and 3.
  const rounds = stintsOf(calendar!).filter((s) => s.step === "cement").map((s) => s.pairs);
  expect(rounds.toSorted()).toEqual([3, 3, 4]);
});

test("the last shoe is begun before its own coat has dried too far", () => {
  const chain = (b: number, shoes: Step["shoes"], most: number): readonly Step[] => [aStep("cement", { minutes: 5, wait: aWait(15, most) }), aStep("lay", { minutes: b, after: ["cement"], shoes })];
  const batches = (steps: readonly Step[], pairs: number) => { const { calendar } = calendarOf({ steps, pairs, said: said("Sat 9-18") }); return calendar && stintsOf(calendar, pairs).filter((s) => s.step === "cement").map((s) => s.pairs).toSorted(); };
  // By hand: 2 k shoes of 4 min each, 15 + (2 k − 1) · 4 ≤ 40 holds for k = 3 (35) and not for 4 (43).
  expect(batches(chain(8, "one after the other", 40), 10)).toEqual([2, 2, 3, 3]);
  // One pair: 15 min of rest and 15 for the first shoe are the 30 that the second has; with 16 it is late.
  expect(batches(chain(30, "one after the other", 30), 1)).toEqual([1]);
  const late = calendarOf({ steps: chain(32, "one after the other", 30), pairs: 1, said: said("Sat 9-18") });
  expect([late.calendar, late.findings.map((f) => f.code)]).toEqual([undefined, ["chain-too-slow"]]);
  expect(batches(chain(32, "together", 30), 1)).toEqual([1]);
  // What else is urgent does not come between so that the second shoe is late: 30 − 10 leave 20, less than the 25 of other work.
  const between = calendarOf({ steps: [...chain(20, "one after the other", 30), aStep("sew", { minutes: 25 })], pairs: 1, said: said("Sat 9-18") });
  holds(between.calendar ? [...chain(20, "one after the other", 30), aStep("sew", { minutes: 25 })] : [], 1, between.calendar!);
});

test("a pattern is made once, whatever the number of pairs", () => {
  const steps = [aStep("card", { phase: "pattern", minutes: 50 }), aStep("cut", { phase: "cutting", minutes: 20, after: ["card"] })];
  const { calendar } = calendarOf({ steps, pairs: 3, said: said("Sat 9-18") });
  expect(calendar!.sessions[0]!.stints.map((s) => s.toMin - s.fromMin)).toEqual([50, 60]);
});

/** When the work is ready if one thing is done after the other and nothing meanwhile; as a maker without a plan would. Steps of a chain go into one session. */
function oneAfterTheOther(steps: readonly Step[], sessions: readonly (readonly [number, number])[]): number | undefined {
  if (steps.some((s) => s.wait?.mostMin !== undefined)) return undefined;
  let time = -Infinity, ready = -Infinity;
  for (const step of steps) {
    let left = step.minutes;
    for (const [from, to] of sessions) {
      const begin = Math.max(from, time);
      const span = to - begin;
      const cut = left <= span ? left : Math.min(span, left - 10);
      if (left <= 0 || cut < Math.min(left, 10)) continue;
      left -= cut;
      time = begin + cut;
    }
    time += step.wait?.wellMin ?? 0;
    ready = Math.max(ready, time);
  }
  return ready;
}

/** Sessions of the first weeks, read anew from the text by the test. */
function sessionsOf(text: string): (readonly [number, number])[] {
  const names = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
  const week = text.split(", ").map((part) => /^(\w+) (\d+):(\d+)-(\d+):(\d+)$/.exec(part)!.slice(1)).map(([name, a, b, c, d]) => ({ day: names.indexOf(name!), from: 60 * Number(a) + Number(b), to: 60 * Number(c) + Number(d) }));
  const spans: [number, number][] = [];
  for (let day = Date.parse(`${start}T00:00Z`) / 86_400_000, n = 0; n < 1500; day++, n++) {
    const today = week.filter((w) => w.day === new Date(day * 86_400_000).getUTCDay()).toSorted((a, b) => a.from - b.from);
    for (const { from, to } of today) {
      const last = spans.at(-1);
      if (last && day * 1440 + from < last[1]) last[1] = Math.max(last[1], day * 1440 + to);
      else spans.push([day * 1440 + from, day * 1440 + to]);
    }
  }
  return spans;
}

test("whatever the plan and the week: nothing overlaps, all is done, every rest and every open time is kept", () => {
  let made = 0, refused = 0;
  fc.assert(
    fc.property(anyPlan(), anyWeek, fc.constantFrom(1, 1, 1, 2, 5), (steps, week, pairs) => {
      const { calendar, findings } = calendarOf({ steps, pairs, said: said(week) });
      expect(calendarOf({ steps, pairs, said: said(week) })).toEqual({ ...(calendar && { calendar }), findings });
      if (!calendar) {
        refused++;
        return void expect(findings.some((f) => f.code === "chain-too-long" || f.code === "chain-too-slow")).toBe(true);
      }
      made++;
      holds(steps, pairs, calendar);
      const slow = pairs === 1 ? oneAfterTheOther(steps, sessionsOf(week)) : undefined;
      if (slow !== undefined) expect(at(calendar.ready.date, calendar.ready.min)).toBeLessThanOrEqual(slow);
    }),
    { seed: 7, numRuns: 250 },
  );
  expect(made).toBeGreaterThan(120);
  expect(refused).toBeGreaterThan(10);
});

test("a chain that no session holds is told with the length it needs, and that length is enough", () => {
  fc.assert(
    fc.property(anyPlan(12), (steps) => {
      const { calendar, findings } = calendarOf({ steps, pairs: 1, said: said("daily 19:00-19:45") });
      const short = findings.find((f) => f.code === "chain-too-long");
      if (!short) return void expect(calendar !== undefined || findings.some((f) => f.code === "chain-too-slow")).toBe(true);
      expect([severityOf(short), explain(short).includes("your longest session is 45 min")]).toEqual(["look", true]);
      const { needMin } = short.data as { needMin: number };
      const clock = (min: number): string => `${Math.floor(min / 60)}:${String(min % 60).padStart(2, "0")}`;
      const again = calendarOf({ steps, pairs: 1, said: said(`daily 0:00-${clock(needMin)}`) }).findings.find((f) => f.code === "chain-too-long");
      if (again) expect((again.data as { steps: readonly string[] }).steps).not.toEqual((short.data as { steps: readonly string[] }).steps);
      const less = calendarOf({ steps, pairs: 1, said: said(`daily 0:00-${clock(needMin - 1)}`) });
      if (needMin > 20) expect(less.findings.some((f) => f.code === "chain-too-long")).toBe(true);
    }),
    { seed: 7, numRuns: 200 },
  );
});

test("a thousand pairs are told, not planned; without sessions there is nothing to plan; without a day weeks are counted", () => {
  const steps = [aStep("cut", { minutes: 60 }), aStep("cement", { minutes: 10, after: ["cut"], wait: aWait(15, 60) }), aStep("last", { minutes: 20, after: ["cement"] })];
  const many = calendarOf({ steps, pairs: 1000, said: said("Tue 19-21, Sat 9-13") });
  expect(many.calendar).toBeUndefined();
  expect(many.findings.map(explain)).toEqual(["There is no calendar: 1000 pairs take about 1500 hours at the bench, and that fills more than 400 of your sessions (200 weeks or more of them). Make fewer pairs at a time, or work in more or longer sessions."]);
  holds(steps, 600, calendarOf({ steps, pairs: 600, said: said("daily 8-18") }).calendar!);
  expect(calendarOf({ steps, pairs: 1, said: {} })).toEqual({ findings: [] });
  expect(calendarOf({ steps: [], pairs: 1, said: said("daily 9-10") })).toEqual({ findings: [] });
  const weeks = calendarOf({ steps, pairs: 1, said: { sessions: "Tue 19-20", start: "next week" } });
  expect(weeks.calendar!.sessions.map((s) => s.date)).toEqual(["week 1, Tuesday", "week 2, Tuesday"]);
  expect(weeks.findings.map(explain)).toEqual(["First day of work: “next week” cannot be read, so the calendar counts weeks. Write year, month and day, like 2026-12-02."]);
  const startTold = (text: string): string => calendarOf({ steps, pairs: 1, said: { sessions: "Tue 19-20", start: text } }).findings.map(explain).join();
  expect(startTold("2.12.2026")).toMatch(/“2\.12\.2026” cannot be read, so/u);
  expect(startTold("2026-02-30")).toMatch(/“2026-02-30” cannot be read, for there is no such day, so/u);
  expect(calendarOf({ steps, pairs: 1, said: { sessions: "Tue 19-20", start: "2026-12-02" } }).calendar!.sessions[0]!.date).toBe("2026-12-08");
});

test("what is left can be planned from a moment on, with what rests already", () => {
  const steps = [aStep("cut", { minutes: 60 }), aStep("insole", { minutes: 30, wait: aWait(1440) }), aStep("last", { minutes: 40, after: ["cut", "insole"] })];
  const left = steps.filter((s) => s.id !== "insole").map((s) => ({ ...s, after: s.after.filter((id) => id !== "insole") }));
  // Pasted on Tuesday at 20:00, and it is Wednesday 19:40 now: cutting begins at once; the last waits for the paste (20:00) and the cutting (20:40).
  const { calendar } = calendarOf({ steps: left, pairs: 1, said: { sessions: "daily 19-22", start: "2026-12-02" }, notBefore: { all: at("2026-12-02", 1180), of: new Map([["last", at("2026-12-02", 1200)]]) } });
  expect(shown(calendar!)).toEqual(["2026-12-02 cut 40-100", "2026-12-02 last 100-140"]);
  const later = calendarOf({ steps: left, pairs: 1, said: { sessions: "daily 19-22", start: "2026-12-02" }, notBefore: { all: at("2026-12-02", 1180), of: new Map([["last", at("2026-12-02", 1300)]]) } });
  expect(shown(later.calendar!)).toEqual(["2026-12-02 cut 40-100", "2026-12-02 last 160-180 1/2", "2026-12-03 last 0-20 2/2"]);
});

test("own minutes that leave no time before the cement has dried are told", () => {
  const steps = [aStep("coat the sole", { minutes: 5, wait: aWait(10, 20) }), aStep("coat the upper", { phase: "bottoming", minutes: 10, after: ["coat the sole"] }), aStep("press", { minutes: 5, after: ["coat the sole", "coat the upper"] })];
  // The first step after the coat has to begin in time; pressing may come later.
  expect(calendarOf({ steps, pairs: 1, said: said("Sat 9-12") }).calendar).toBeDefined();
  const bound = [aStep("wax", { minutes: 10, wait: aWait(5, 10) }), aStep("coat", { phase: "bottoming", minutes: 10, after: ["wax"], wait: aWait(5, 10) }), aStep("press", { minutes: 5, after: ["wax", "coat"] })];
  expect(calendarOf({ steps: bound, pairs: 1, said: said("Sat 9-12") }).calendar).toBeDefined();
  const both = [aStep("left", { minutes: 10, wait: aWait(5, 10) }), aStep("right", { minutes: 10, wait: aWait(5, 10) }), aStep("press", { minutes: 5, after: ["left", "right"] })];
  expect(calendarOf({ steps: both, pairs: 1, said: said("Sat 9-12") }).findings.map(explain)[0]).toContain("“left”, “right”, “press” cannot be done before the first of them has dried too far");
});
