import { expect } from "vitest";
import type { Calendar } from "#making/calendar/calendar.ts";
import type { Step } from "#making/steps/step.ts";

/** Minutes since 1970, by the platform's own calendar. */
export const at = (date: string, min: number): number => Date.parse(`${date}T00:00Z`) / 60_000 + min;

/** A stretch of work on so many pairs from the first one on, counted from 1. */
export interface Done {
  readonly step: string;
  readonly from: number;
  readonly to: number;
  readonly session: number;
  readonly first: number;
  readonly pairs: number;
}

export const stintsOf = (calendar: Calendar, pairs = 1): readonly Done[] =>
  calendar.sessions.flatMap(({ date, fromMin, stints }, session) =>
    stints.map((s) => ({ step: s.step, from: at(date, fromMin + s.fromMin), to: at(date, fromMin + s.toMin), session, first: s.first ?? 1, pairs: s.pairs ?? pairs })));

export const has = ({ first, pairs }: Pick<Done, "first" | "pairs">, pair: number): boolean => first <= pair && pair < first + pairs;
const planned = ({ wait }: Step): number => (wait ? Math.min(wait.wellMin, wait.mostMin ?? Infinity) : 0);

/** Whatever is planned has to keep these, for every single pair; said with nothing of the planner but its result. Lasts are marked once, a pattern is made once. */
export function holds(steps: readonly Step[], pairs: number, calendar: Calendar, lasts = pairs): void {
  const done = stintsOf(calendar, pairs);
  const all = Array.from({ length: pairs }, (_, k) => k + 1);
  // All pairs do not have to be asked one by one where they go together.
  const some = all.filter((pair) => pair === 1 || pair === pairs || done.some(({ first, pairs: n }) => first === pair || first + n - 1 === pair));
  const of = (id: string, pair?: number): readonly Done[] => done.filter((s) => s.step === id && (pair === undefined || has(s, pair)));
  done.forEach((s, k) => {
    expect(s.to).toBeGreaterThan(s.from);
    expect(s.first >= 1 && s.first + s.pairs - 1 <= pairs).toBe(true);
    if (k > 0) expect(s.from).toBeGreaterThanOrEqual(done[k - 1]!.to);
  });
  for (const { fromMin, toMin, stints } of calendar.sessions) expect(stints[0]!.fromMin >= 0 && stints.at(-1)!.toMin <= toMin - fromMin).toBe(true);
  for (const step of steps) {
    expect(of(step.id).reduce((sum, s) => sum + s.to - s.from, 0)).toBe(Math.max(1, Math.ceil(step.minutes * (step.id === "mark-lasts" ? lasts : step.phase === "pattern" ? 1 : pairs))));
    for (const pair of some) keptFor(step, pair, steps, of);
    for (const first of new Set(of(step.id).map((s) => s.first))) {
      const parts = calendar.sessions.flatMap((session) => session.stints.filter((s) => s.step === step.id && (s.first ?? 1) === first));
      expect(parts.map((s) => [s.part, s.parts])).toEqual(parts.map((_, k) => [k + 1, parts.length]));
      if (parts.length > 1) for (const s of parts) expect(s.toMin - s.fromMin).toBeGreaterThanOrEqual(10);
    }
  }
  restsHold(steps, calendar, done);
}

/** Rests and open times of one step on one pair. */
function keptFor(step: Step, pair: number, steps: readonly Step[], of: (id: string, pair: number) => readonly Done[]): void {
  const mine = of(step.id, pair);
  expect(mine.length, step.id).toBeGreaterThan(0);
  for (const id of step.after) expect(mine[0]!.from).toBeGreaterThanOrEqual(of(id, pair).at(-1)!.to + planned(steps.find((s) => s.id === id)!));
  const next = steps.filter((s) => s.after.includes(step.id));
  if (step.wait?.mostMin === undefined || next.length === 0) return;
  expect(mine).toHaveLength(1);
  const [own] = mine as [Done];
  expect(next.some((s) => {
    const [then] = of(s.id, pair) as [Done];
    if (then.first !== own.first || then.pairs !== own.pairs || then.session !== own.session) return false;
    // Every pair, or every shoe, from its own coat to its own turn.
    const each = s.shoes === "together" ? 1 : 2;
    const open = Array.from({ length: each * own.pairs }, (_, i) => then.from + (i * s.minutes) / each - (own.from + ((i + 1) * step.minutes) / each));
    return Math.min(...open) >= planned(step) - 1e-9 && Math.max(...open) <= step.wait!.mostMin! + 1e-9;
  })).toBe(true);
}

/** What is told to rest at a session's end, and when all is ready. */
function restsHold(steps: readonly Step[], calendar: Calendar, done: readonly Done[]): void {
  const lastOf = done.filter((s, k) => !done.some((t, j) => j > k && t.step === s.step && t.first === s.first));
  const over = lastOf.map((s) => ({ ...s, over: s.to + planned(steps.find(({ id }) => id === s.step)!) }));
  expect(at(calendar.ready.date, calendar.ready.min)).toBe(Math.max(...over.map((s) => s.over)));
  calendar.sessions.forEach(({ date, toMin, waits }) => {
    const end = at(date, toMin);
    const resting = over.filter((s) => s.to <= end && s.over > end);
    expect(waits.map((w) => `${w.step} ${w.first ?? 1} ${at(w.untilDate, w.untilMin)}`).toSorted()).toEqual(resting.map((s) => `${s.step} ${s.first} ${s.over}`).toSorted());
  });
}
