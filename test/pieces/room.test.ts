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

test("holds what lies in the outline and meets what lines cross, as trying every segment tells", () => {
  const count = { held: 0, met: 0 };
  fc.assert(
    fc.property(fc.array(place, { minLength: 3, maxLength: 12 }), fc.array(place, { minLength: 2, maxLength: 4 }), place, fc.constantFrom(0, -90, 30), (outline, line, at, angle) => {
      const room = new Room(lineOf(outline), [lineOf(line)]);
      const held = contains(lineOf(outline), at[0], at[1]);
      expect(room.holds(at[0], at[1])).toBe(held);
      const box = boxCorners(at, 2, 1, angle);
      const met = [...segments(outline, true), ...segments(line, false)].some(([c, d]) => segments(box, true).some(([a, b]) => segmentsMeet(...a, ...b, ...c, ...d)));
      expect(room.meets(box)).toBe(met);
      count.held += Number(held);
      count.met += Number(met);
    }),
    { seed: 12, numRuns: 2000 },
  );
  for (const times of Object.values(count)) expect(Math.min(times, 2000 - times)).toBeGreaterThan(200);
});
