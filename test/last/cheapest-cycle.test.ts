import fc from "fast-check";
import { expect, test } from "vitest";
import { cheapestCycle } from "#last/cheapest-cycle.ts";

const worth = (reward: Float64Array, states: number, bend: number, path: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < path.length; i++) sum += reward[i * states + path[i]!]! - bend * (path[(i + 1) % path.length]! - path[i]!) ** 2;
  return sum;
};

test("no closed path through the held state is worth more (all of them tried)", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 15, maxLength: 15 }), fc.double({ min: 0, max: 0.5, noNaN: true }), fc.nat(4), fc.nat(2), (values, bend, start, held) => {
      const [stations, states] = [5, 3];
      const reward = Float64Array.from(values);
      const path = cheapestCycle(reward, states, bend, 1, start, held);
      expect(path[start]).toBe(held);
      let best = -Infinity;
      for (let code = 0; code < states ** stations; code++) {
        const other = Array.from({ length: stations }, (_, i) => Math.floor(code / states ** i) % states);
        if (other[start] !== held || other.some((s, i) => Math.abs(other[(i + 1) % stations]! - s) > 1)) continue;
        best = Math.max(best, worth(reward, states, bend, other));
      }
      expect(worth(reward, states, bend, path)).toBeCloseTo(best, 9);
    }),
    { seed: 4, numRuns: 200 },
  );
});

test("a gap in the ridge is crossed along the neighbours, not along a stronger stray", () => {
  const [stations, states] = [60, 21];
  const reward = new Float64Array(stations * states);
  for (let i = 0; i < stations; i++) if (i < 20 || i > 26) reward[i * states + 10] = 0.4;
  reward[23 * states + 20] = 0.5; // a scratch on the wall
  const path = cheapestCycle(reward, states, 0.06, 6, 40, 10);
  expect(Math.max(...path)).toBe(10);
  expect(Math.min(...path)).toBe(10);
});
