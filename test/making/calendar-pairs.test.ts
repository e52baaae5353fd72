// Whole plans of invented pairs in a maker's usual week: what must be done in one go is, for each pair, whatever is stuck with what.
import { beforeAll, describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { calendarOf } from "#making/calendar/calendar-of.ts";
import type { Step } from "#making/steps/step.ts";
import { stepsOf } from "#making/steps/steps.ts";
import { has, holds, stintsOf } from "../support/calendar-holds.ts";
import { makingInput, type OwnChoices } from "../support/making-pairs.ts";

const start = "2026-12-01";
/** Evenings of two and a half hours, and four hours on Saturday. */
const usual = "Tue 19:00-21:30, Thu 19:00-21:30, Sat 9:00-13:00";
const quarters: OwnChoices = { parts: { cut: "quarters", strap: true, toeCap: true }, shell: { edge: "bound" } };

describe("whole plans", () => {
  let plans: readonly (readonly [string, readonly Step[]])[];
  beforeAll(() => {
    plans = ([["the example", {}], ["quarters", quarters]] as const).flatMap(([name, own]) => ["contact", "water-based"].map((cement) => [`${name}, ${cement}`, stepsOf(makingInput({ ...own, said: { cement } }))] as const));
  }, 120_000);

  test.each([[1, 1], [3, 1], [5, 2], [3, 3], [10, 2]] as const)("%d pairs on %d pairs of lasts keep every rest and every open time", (pairs, lasts) => {
    for (const [name, steps] of plans) {
      const { calendar, findings } = calendarOf({ steps, pairs, said: { sessions: usual, start, lasts } });
      expect(findings, name).toEqual([]);
      holds(steps, pairs, calendar!, lasts);
      expect(calendar!.rounds, name).toBe(lasts < pairs ? Math.ceil(pairs / lasts) : undefined);
      // From the paste on the stiffener to the closed heel, and from the paste on the puff to the lasted toe, nothing is left till another day (makers' notes: it sets).
      const done = stintsOf(calendar!, pairs);
      for (let pair = 1; pair <= pairs; pair++) {
        for (const chain of [["set-stiffeners", "draft-uppers", "check-drafts", "last-sides"], ["set-puffs", "last-toes"], ["coat-margins", "press-margins"], ["coat-soles", "lay-soles"]]) {
          const sessions = chain.map((id) => [...new Set(done.filter((s) => s.step === id && has(s, pair)).map((s) => s.session))]);
          expect(sessions, `${name}, ${chain.join(" ")}`).toEqual(chain.map(() => sessions[0]));
        }
      }
    }
  });

  test("an evening too short for lasting is told with what must be done in one go and how long it takes; that long is enough", () => {
    for (const [name, steps] of plans) {
      const told = calendarOf({ steps, pairs: 1, said: { sessions: "Tue 19:00-19:50", start } });
      expect(told.calendar, name).toBeUndefined();
      expect(explain(told.findings[0]!), name).toMatch(/^There is no calendar: “.+”, “.+” must be done in one go: .* your longest session is 50 min\. Make one session that long\.$/);
      const most = (function longest(min: number): number {
        const { findings: [why] } = calendarOf({ steps, pairs: 1, said: { sessions: `Tue 8:00-${Math.floor(8 + min / 60)}:${String(min % 60).padStart(2, "0")}`, start } });
        return why ? longest((why.data as { needMin: number }).needMin) : min;
      })(50);
      expect(most, name).toBeLessThanOrEqual(150);
    }
  });
});
