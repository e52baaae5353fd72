// The drawing of where the money goes: parts as long as they cost, and words that stand in nobody's way.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { layTape, tapeMarks } from "#app/state/money-tape.ts";

const anyTape = fc.record({
  costs: fc.array(fc.double({ min: 0.001, max: 100, noNaN: true }), { minLength: 1, maxLength: 9 }),
  length: fc.double({ min: 60, max: 1400, noNaN: true }),
  widths: fc.array(fc.double({ min: 40, max: 300, noNaN: true }), { minLength: 9, maxLength: 9 }),
});

describe("the tape of money", () => {
  test("parts lie end to end, each as long as its share, and together as long as the tape", () => {
    fc.assert(fc.property(anyTape, ({ costs, length, widths }) => {
      const whole = costs.reduce((a, b) => a + b, 0);
      const parts = layTape(costs.map((c) => c / whole), length, widths);
      parts.forEach((p, i) => {
        expect(p.from).toBeCloseTo(i === 0 ? 0 : parts[i - 1]!.to, 9);
        expect(p.to - p.from).toBeCloseTo((costs[i]! / whole) * length, 6);
        if (p.inside) expect(p.to - p.from).toBeGreaterThan(widths[i]!);
      });
      expect(parts.at(-1)!.to).toBeCloseTo(length, 6);
    }));
  });

  test("words in one row do not overlap, and none begins left of the tape", () => {
    fc.assert(fc.property(anyTape, ({ costs, length, widths }) => {
      const whole = costs.reduce((a, b) => a + b, 0);
      const below = layTape(costs.map((c) => c / whole), length, widths).map((p, i) => ({ ...p, wide: widths[i]! })).filter((p) => !p.inside);
      for (const [i, p] of below.entries()) {
        expect(p.wordsTo - p.wide).toBeGreaterThanOrEqual(0);
        for (const q of below.slice(0, i)) if (q.row === p.row) expect(p.wordsTo - p.wide).toBeGreaterThanOrEqual(q.wordsTo);
      }
    }));
  });

  test("a row of words is no lower than it has to be", () => {
    const parts = layTape([0.5, 0.1, 0.3, 0.1], 1000, [100, 150, 100, 150]);
    expect(parts.map((p) => [p.inside, p.row])).toEqual([[true, 0], [false, 0], [true, 0], [false, 0]]);
  });

  test("its figures are round, begin at nothing and do not go past the end", () => {
    expect(tapeMarks(420, 8)).toEqual([0, 100, 200, 300, 400]);
    expect(tapeMarks(0.7, 7)).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7]);
    expect(tapeMarks(0, 5)).toEqual([]);
    fc.assert(fc.property(fc.double({ min: 0.01, max: 1e7, noNaN: true }), fc.integer({ min: 1, max: 15 }), (most, count) => {
      const marks = tapeMarks(most, count);
      expect(marks[0]).toBe(0);
      expect(marks.length).toBeLessThanOrEqual(count + 1);
      for (const m of marks) expect(m).toBeLessThanOrEqual(most * (1 + 1e-6));
    }));
  });
});
