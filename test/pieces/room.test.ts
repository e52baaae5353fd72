import fc from "fast-check";
import { expect, test } from "vitest";
import { boxCorners } from "#pieces/labels.ts";
import type { Xy } from "#pieces/piece.ts";
import { Room } from "#pieces/room.ts";
import { segmentsMeet } from "#plane/crossing.ts";
import { contains } from "#plane/inside.ts";

// The plain way, one segment after the other, is the truth. Whole numbers make points on lines and corners on corners common.
const place = fc.tuple(fc.integer({ min: -8, max: 8 }), fc.integer({ min: -8, max: 8 }));
const lineOf = (points: readonly Xy[]) => ({ xy: Float64Array.from(points.flat()) });
const segments = (points: readonly Xy[], closed: boolean): readonly (readonly [Xy, Xy])[] => points.flatMap((b, i) => (i > 0 ? [[points[i - 1]!, b] as const] : closed ? [[points[points.length - 1]!, b] as const] : []));

test("holds what lies in the outline and meets what lines cross or lie in, as trying every segment tells", () => {
  const count = { held: 0, met: 0 };
  fc.assert(
    fc.property(fc.array(place, { minLength: 3, maxLength: 12 }), fc.array(place, { minLength: 2, maxLength: 4 }), place, fc.constantFrom(0, -90, 30), (outline, line, at, angle) => {
      const room = new Room(lineOf(outline), [lineOf(line)]);
      const held = contains(lineOf(outline), at[0], at[1]);
      expect(room.holds(at[0], at[1])).toBe(held);
      const box = boxCorners(at, 2, 1, angle);
      const filled = lineOf(box);
      const met = [...segments(outline, true), ...segments(line, false)].some(([c, d]) => contains(filled, ...c) || contains(filled, ...d) || segments(box, true).some(([a, b]) => segmentsMeet(...a, ...b, ...c, ...d)));
      expect(room.meets(box)).toBe(met);
      count.held += Number(held);
      count.met += Number(met);
    }),
    { seed: 12, numRuns: 2000 },
  );
  for (const times of Object.values(count)) expect(Math.min(times, 2000 - times)).toBeGreaterThan(200);
});

test("the clearance of a place is never less than its true distance, and on a smooth outline hardly more", () => {
  const outline: Xy[] = Array.from({ length: 200 }, (_, i): Xy => [60 * Math.cos((i * Math.PI) / 100), 35 * Math.sin((i * Math.PI) / 100)]);
  const line: Xy[] = [[-40, 3], [38, -11]];
  const room = new Room(lineOf(outline), [lineOf(line)]);
  const all = [...segments(outline, true), ...segments(line, false)];
  const { across, mm } = room.clearance([5, -2], 3, 20);
  let most = 0;
  for (const [cell, found] of mm.entries()) {
    const [x, y] = [5 + 3 * ((cell % across) - 20), -2 + 3 * (Math.floor(cell / across) - 20)];
    const truth = Math.min(...all.map(([a, b]) => distance(a, b, x, y)));
    expect(found).toBeGreaterThanOrEqual(truth - 1e-9);
    most = Math.max(most, found - truth);
  }
  expect(most).toBeLessThan(1);
});

function distance(a: Xy, b: Xy, x: number, y: number): number {
  const t = Math.min(1, Math.max(0, ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / ((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2)));
  return Math.hypot(x - a[0] - t * (b[0] - a[0]), y - a[1] - t * (b[1] - a[1]));
}
