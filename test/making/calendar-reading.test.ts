import fc from "fast-check";
import { expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { weekdayNames } from "#making/calendar/dates.ts";
import { readSessions } from "#making/calendar/read-sessions.ts";
import { readMinutes, stepMinutes } from "#making/calendar/step-minutes.ts";
import { aStep } from "../support/invented-steps.ts";

const week = (text: string): string[] => {
  const { week: times, findings } = readSessions(text);
  expect(findings).toEqual([]);
  return times.map(({ weekday, fromMin, toMin }) => `${weekdayNames[weekday]!.slice(0, 2)} ${fromMin / 60}-${toMin / 60}`);
};
const told = (text: string): string[] => readSessions(text).findings.map(explain);

test("times are read the ways makers write them", () => {
  expect(week("Tue 19:00-21:30, Sat 9:00–13:00")).toEqual(["Tu 19-21.5", "Sa 9-13"]);
  expect(week("tuesday 19-21.30; SATURDAYS 9 to 13")).toEqual(["Tu 19-21.5", "Sa 9-13"]);
  expect(week("Mon, Thu 19h-21h30")).toEqual(["Mo 19-21.5", "Th 19-21.5"]);
  expect(week("Sat 9-12, 14-17\nSun from 10 until 12")).toEqual(["Sa 9-12", "Sa 14-17", "Su 10-12"]);
  expect(week("weekends 10-12")).toEqual(["Sa 10-12", "Su 10-12"]);
  expect(week("Fri-Mon 8-9")).toEqual(["Mo 8-9", "Fr 8-9", "Sa 8-9", "Su 8-9"]);
  expect(week("Tues and Thurs 7-9:30 pm, Sat 11-1pm, Sun 7 p.m. – 9 p.m.")).toEqual(["Tu 19-21.5", "Th 19-21.5", "Sa 11-13", "Su 19-21"]);
  expect(week("daily 20:00—22:00")).toHaveLength(7);
  expect(week("every day 20-24")[6]).toBe("Su 20-24");
  expect(week("weekdays 6:30-7:15")).toHaveLength(5);
  expect(week("Wed 12am-2am, Fri 12-1pm")).toEqual(["We 0-2", "Fr 12-13"]);
  expect(week("")).toEqual([]);
  expect(week("Mon 9-12, Mon 12-14")).toEqual(["Mo 9-12", "Mo 12-14"]);
});

test("several times stand in one breath", () => {
  expect(week("Tue 19:00 - 21:30 and Sat 9-13")).toEqual(["Tu 19-21.5", "Sa 9-13"]);
  expect(week("Tue 19-21 Sat 9 to 13 & Sun 10-12.")).toEqual(["Tu 19-21", "Sa 9-13", "Su 10-12"]);
  expect(week("Tue 7-9 pm and Thu 7 pm - 9 pm")).toEqual(["Tu 19-21", "Th 19-21"]);
  expect(week("Tue 19-21 and Sat, Sun 9-12 and 14-17")).toEqual(["Tu 19-21", "Sa 9-12", "Sa 14-17", "Su 9-12", "Su 14-17"]);
  expect(week("Tue 19-21 / Sat 9to13.")).toEqual(["Tu 19-21", "Sa 9-13"]);
});

test("half of the day is taken from the other time only where that has a meaning", () => {
  expect(week("Wed 12-12:30 pm, Thu 9-9 pm, Fri 19-9 pm, Sat 0-2 pm, Sun 11:30-12 pm")).toEqual(["We 12-12.5", "Th 9-21", "Fr 19-21", "Sa 0-14", "Su 11.5-12"]);
  expect(told("Wed 12-12 pm, Thu 8-9")).toEqual(["When you work: “Wed 12-12 pm” ends when it begins, at 12:00, and is left out. Let it end by 24:00 and write what lies after midnight for the next day."]);
  expect(told("Wed 12:30-12 pm, Thu 8-9")[0]).toContain("ends at 12:00, before it begins at 12:30");
});

test("what cannot be read is told at the field, and the rest counts", () => {
  expect(readSessions("Tue 19-21, Doomsday 9-13").week).toEqual([{ weekday: 1, fromMin: 1140, toMin: 1260 }]);
  expect(told("Tue 19-21, Doomsday 9-13")).toEqual(["When you work: “Doomsday 9-13” is left out, for “doomsday” is no day of the week. Write days and times like “Tue 19:00-21:30, Sat 9:00-13:00”."]);
  expect(told("Tue 21:30-19:00, Wed 8-9")[0]).toContain("“Tue 21:30-19:00” ends at 19:00, before it begins at 21:30");
  expect(told("Tue 22-22, Wed 8-9")[0]).toContain("ends when it begins, at 22:00");
  expect(told("Sat 9:00-9:10, Wed 8-9")[0]).toContain("needs 20 min at least");
  expect(told("19-21, Wed 8-9")[0]).toContain("it says no day");
  expect(told("Wed 8-9, Fri")[0]).toContain("“Fri” is left out, for it says no time");
  expect(told("Wed 8-9, Fri 25-26")[0]).toContain("“25” is no time of day");
  expect(told("Wed 8-9, Fri 9:75-11")[0]).toContain("“9:75” is no time of day");
  expect(told("Wed 8-9, Fri 20-24:30")[0]).toContain("“24:30” is no time of day");
  expect(told("Tue 19-21 and Sat 25-26")).toEqual(["When you work: “and Sat 25-26” is left out, for “25” is no time of day. Write days and times like “Tue 19:00-21:30, Sat 9:00-13:00”."]);
  expect(told("Tue 19-21 most weeks")[0]).toContain("“most weeks” is left out, for “most” is no day");
  expect(told("19-21 on Tue, Sat 9-13")).toEqual(["When you work: “19-21 on Tue” is left out, for its day stands behind its time. Write days and times like “Tue 19:00-21:30, Sat 9:00-13:00”."]);
  expect(readSessions("19-21 on Tue, Sat 9-13").week).toEqual([{ weekday: 5, fromMin: 540, toMin: 780 }]);
  expect(told("Sat 9-12, 14-17 Sun")[0]).toContain("“Sun” is left out, for it says no time");
  expect(told("2026-12-01 19-21, Wed 8-9")[0]).toContain("“2026-12-01” is no time of day");
  expect(told("Mon 8-9-10, Wed 8-9")[0]).toContain("“8-9-10” is no time of day");
  expect(told("Fri 9-1300, Wed 8-9")[0]).toContain("“1300” is no time of day");
  expect(told("Sat 9-12, Sat 11-13")).toEqual(["When you work: two times on Saturday overlap. They are taken as one, 09:00 to 13:00."]);
  // One mistake, one complaint.
  expect(told("Mi 19-21")).toEqual(["When you work: “Mi 19-21” cannot be read, for “mi” is no day of the week; so there is no calendar. Write days and times like “Tue 19:00-21:30, Sat 9:00-13:00”."]);
  expect(told("whenever I like")).toHaveLength(1);
  expect(told("Mi 19-21, Do 19-21").at(-1)).toBe("When you work: no time could be read, so there is no calendar. Write days and times like “Tue 19:00-21:30, Sat 9:00-13:00”.");
  expect(readSessions("T 9-12").week).toEqual([]);
});

test("any text gives a week without overlaps, and nothing is taken silently", () => {
  const word = fc.constantFrom("Mon", "tue", "sat", "daily", "9-12", "19:00-21:30", "21-19", "x", "-", ",", ";", "11", "to", "3pm", "–", "\n", "9:99", "and", "12-12 pm", "7 p.m.");
  fc.assert(
    fc.property(fc.array(word, { maxLength: 14 }).map((words) => words.join(" ")), fc.string(), (made, wild) => {
      for (const text of [made, wild]) {
        const { week: times, findings } = readSessions(text);
        times.forEach((time, k) => {
          expect(time.toMin - time.fromMin).toBeGreaterThanOrEqual(20);
          expect(time.toMin).toBeLessThanOrEqual(1440);
          const next = times[k + 1];
          if (next) expect(next.weekday > time.weekday || next.fromMin >= time.toMin).toBe(true);
        });
        if (times.length === 0 && /[^\s,;]/.test(text)) expect(findings.length).toBeGreaterThan(0);
        for (const f of findings) expect([severityOf(f), /undefined|NaN/.test(explain(f))]).toEqual(["look", false]);
      }
    }),
    { seed: 7, numRuns: 500 },
  );
});

test("the maker's own minutes stretch the steps of a phase alike", () => {
  const steps = [aStep("a", { phase: "closing", minutes: 20 }), aStep("b", { phase: "closing", minutes: 40 }), aStep("c", { phase: "lasting", minutes: 30 })];
  const own = stepMinutes(steps, { closing: "1,5 h", lasting: " " });
  expect([...own.of]).toEqual([["a", 30], ["b", 60], ["c", 30]]);
  expect(own.byPhase).toEqual([{ phase: "closing", minutes: 90 }, { phase: "lasting", minutes: 30 }]);
  expect(own.findings).toEqual([]);
  expect([...stepMinutes(steps, {}).of.values()]).toEqual([20, 40, 30]);
  const wrong = stepMinutes(steps, { closing: "-5", lasting: "soon", heel: "0", sewing: "30" });
  expect([...wrong.of.values()]).toEqual([20, 40, 30]);
  expect(wrong.findings.map((f) => [severityOf(f), explain(f).slice(0, 45)])).toEqual([
    ["look", "Your minutes for closing: “-5” is no time bet"], ["look", "Your minutes for lasting: “soon” is no time b"], ["look", "Your minutes for heel: “0” is no time between"], ["look", "Your minutes are given for “sewing”, which is"],
  ]);
  for (const text of ["90", 90, "90 min", "1.5 h", "1,5 hours", "1:30", "1 h 30", "1h30min", "1½ h", "1 1/2 hours", "3/2 h"]) expect(readMinutes(text), String(text)).toBe(90);
  expect(["½ h", "1 500 min", "1,234.5", 0.5].map(readMinutes)).toEqual([30, 1500, 1234.5, 0.5]);
  expect(["", "1:75", "1..5", "-3", "1e3", Infinity, "h", "1/0 h", "90 h 5 h", "½ ½", -90, "1;30"].map(readMinutes)).toEqual(new Array(12).fill(undefined));
});

test("a comma before three figures is never taken for one thing silently", () => {
  const steps = [aStep("a", { phase: "cutting", minutes: 20 })];
  for (const text of ["1,500", "1.500", "1,500 h"]) {
    const { of, findings } = stepMinutes(steps, { cutting: text });
    expect(of.get("a")).toBe(20);
    expect(findings.map(explain)).toEqual([`Your minutes for cutting: “${text}” may be a thousand and more, or one and a bit. Write it like 1500 or 1.5; until then the usual time is used.`]);
  }
  // Of a time in hours and minutes, and of a number that stands as one, there is no doubt.
  expect([...stepMinutes(steps, { cutting: 1.5 }).of.values(), ...stepMinutes(steps, { cutting: "1:30" }).of.values()]).toEqual([1.5, 90]);
});
