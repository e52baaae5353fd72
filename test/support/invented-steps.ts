import fc from "fast-check";
import type { Step, Wait } from "#making/steps/step.ts";

/** A step that is invented for a test. */
export const aStep = (id: string, said: Partial<Step> = {}): Step => ({
  id, phase: "closing", title: id, todo: [], needs: { goods: [], tools: [] }, right: [], fails: [], minutes: 30, after: [], shoes: "together", hazards: [], ...said,
});
export const aWait = (wellMin: number, mostMin?: number): Wait => ({ leastMin: Math.floor(wellMin / 2), wellMin, what: "it dries", source: "invented", ...(mostMin !== undefined && { mostMin }) });

const short = fc.integer({ min: 5, max: 45 });
const wait = fc.oneof(
  { weight: 6, arbitrary: fc.constant(undefined) },
  { weight: 2, arbitrary: short.map((min) => aWait(min)) },
  { weight: 2, arbitrary: fc.tuple(short, fc.integer({ min: 0, max: 60 })).map(([min, more]) => aWait(min, min + more)) },
  { weight: 1, arbitrary: fc.integer({ min: 300, max: 4000 }).map((min) => aWait(min)) },
);

/** Steps of invented plans; each may come after some of the six before it. */
export const anyPlan = (most = 24): fc.Arbitrary<readonly Step[]> =>
  fc.array(fc.record({ minutes: fc.integer({ min: 1, max: 100 }), wait, back: fc.array(fc.integer({ min: 1, max: 6 }), { maxLength: 3 }) }), { minLength: 1, maxLength: most }).map((rows) =>
    rows.map(({ minutes, wait: waits, back }, k) =>
      aStep(`s${k}`, { minutes, shoes: minutes % 3 === 0 ? "one after the other" : "together", after: [...new Set(back)].flatMap((b) => (k - b >= 0 ? [`s${k - b}`] : [])), ...(waits && { wait: waits }) })),
  );

const time = fc.record({ weekday: fc.integer({ min: 0, max: 6 }), from: fc.integer({ min: 0, max: 80 }), length: fc.integer({ min: 2, max: 20 }) });
const names = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const clock = (min: number): string => `${Math.floor(min / 60)}:${String(min % 60).padStart(2, "0")}`;

/** Weeks as a maker writes them; times may overlap. */
export const anyWeek: fc.Arbitrary<string> = fc.array(time, { minLength: 1, maxLength: 5 }).map((times) =>
  times.map(({ weekday, from, length }) => `${names[weekday]} ${clock(15 * from)}-${clock(Math.min(15 * from + 15 * length, 1440))}`).join(", "));
