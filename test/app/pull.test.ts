import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pullOne, pullTwo } from "#app/state/pull.ts";

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
