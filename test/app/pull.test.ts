import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arrowSteps, pullOne, pullTwo, type ArrowKey } from "#app/state/pull.ts";

// The method is least squares: an ordinary fact of linear algebra. Damping shifts the answer by less than the tolerance used.
describe("from a finger to settings", () => {
  test("a handle that moves 2 px a millimetre follows 20 px with 10 mm, and ignores what is square to it", () => {
    expect(pullOne(20, 0, { x: 2, y: 0 })).toBeCloseTo(10, 0);
    expect(pullOne(0, 50, { x: 2, y: 0 })).toBeCloseTo(0, 9);
  });

  test("two settings bring the handle under the finger, however slanted their directions", () => {
    const angle = fc.double({ min: 0, max: Math.PI, noNaN: true });
    fc.assert(
      fc.property(angle, fc.double({ min: 0.5, max: 2.6, noNaN: true }), fc.double({ min: -80, max: 80, noNaN: true }), fc.double({ min: -80, max: 80, noNaN: true }), (turn, between, dx, dy) => {
        const a = { x: 2 * Math.cos(turn), y: 2 * Math.sin(turn) };
        const b = { x: 300 * Math.cos(turn + between), y: 300 * Math.sin(turn + between) };
        const [p, q] = pullTwo(dx, dy, a, b);
        expect(Math.hypot(p * a.x + q * b.x - dx, p * a.y + q * b.y - dy)).toBeLessThan(0.06 * Math.hypot(dx, dy) + 1e-9);
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  test("a direction that points at the viewer changes next to nothing", () => {
    expect(Math.abs(pullOne(30, 30, { x: 0.001, y: 0 }))).toBeLessThan(2);
    const [, blind] = pullTwo(30, 0, { x: 2, y: 0 }, { x: 0, y: 0.001 });
    expect(Math.abs(blind)).toBeLessThan(1e-6);
  });
});

describe("arrow keys at a handle", () => {
  const arrows: readonly (readonly [ArrowKey, number, number])[] = [["ArrowUp", 0, -1], ["ArrowDown", 0, 1], ["ArrowLeft", -1, 0], ["ArrowRight", 1, 0]];
  test("move it the way they point on the screen, never the other way", () => {
    const direction = fc.record({ x: fc.double({ min: -3, max: 3, noNaN: true }), y: fc.double({ min: -3, max: 3, noNaN: true }) }).filter((d) => Math.hypot(d.x, d.y) > 0.5);
    fc.assert(
      fc.property(fc.array(direction, { minLength: 1, maxLength: 2 }), (directions) => {
        for (const [key, x, y] of arrows) {
          const steps = arrowSteps(key, directions);
          expect(steps.filter((s) => s !== 0)).toHaveLength(1);
          const along = directions.reduce((sum, d, i) => sum + steps[i]! * (d.x * x + d.y * y), 0);
          const size = Math.max(...directions.map((d) => Math.hypot(d.x, d.y)));
          expect(along).toBeGreaterThan(-0.2 * size - 1e-9);
        }
      }),
      { seed: 13, numRuns: 300 },
    );
  });

  test("a throat that deepens downward on the card goes up, to the toe, with the arrow up", () => {
    expect(arrowSteps("ArrowUp", [{ x: 0, y: 2 }])).toEqual([-1]);
    expect(arrowSteps("ArrowDown", [{ x: 0, y: 2 }])).toEqual([1]);
  });

  test("of two settings each keeps a pair of arrows of its own, also where both go nearly the same way", () => {
    // On the card a side's height goes sideways and its place toward the toe.
    expect(arrowSteps("ArrowUp", [{ x: 2, y: 0.1 }, { x: 0.2, y: -3 }])).toEqual([0, 1]);
    expect(arrowSteps("ArrowRight", [{ x: -2, y: 0.1 }, { x: 0.2, y: -3 }])).toEqual([-1, 0]);
    const near = [{ x: 1, y: 2 }, { x: 1.1, y: 2 }];
    expect(arrowSteps("ArrowUp", near)).toEqual([-1, 0]);
    expect(arrowSteps("ArrowRight", near)).toEqual([0, 1]);
  });
});
