import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { betweenOnTrack, ontoNearest, stepOnTrack, trackOf } from "#app/state/on-outline.ts";
import { fitted, shifted, toFrame, toPlane, zoomed, type PhotoPlace } from "#app/state/photo-place.ts";

const box = { minX: -20, minY: 10, maxX: 380, maxY: 300 };
const frame = { width: 700, height: 500 };
const apart = (a: readonly number[], b: readonly number[]): number => Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!);

describe("how a photograph lies in its frame", () => {
  test("fitted, all four corners lie inside and one side fills the frame", () => {
    const p = fitted(box, frame);
    const corners = [[box.minX, box.minY], [box.maxX, box.maxY]].map(([x, y]) => toFrame(p, frame, x!, y!));
    for (const [x, y] of corners) expect(x >= 0 && x <= frame.width && y >= 0 && y <= frame.height).toBe(true);
    // 290 mm in 500 px less the rim above and below; 400 mm would have more room.
    expect(p.pxPerMm).toBeCloseTo(448 / 290, 9);
  });

  test("y goes up on the plane and down on the screen; there and back is the same place", () => {
    const p: PhotoPlace = { pxPerMm: 3, midX: 100, midY: 100 };
    expect(toFrame(p, frame, 100, 110)[1]).toBeLessThan(toFrame(p, frame, 100, 100)[1]);
    fc.assert(fc.property(fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: -500, max: 500, noNaN: true }), (x, y) => {
      expect(apart(toPlane(p, frame, ...toFrame(p, frame, x, y)), [x, y])).toBeLessThan(1e-9);
    }), { seed: 7, numRuns: 50 });
  });

  test("coming nearer keeps the place under the finger, as long as the picture fills the frame there", () => {
    const near = zoomed(fitted(box, frame), 4, frame, [350, 250], box);
    const at = [300, 200] as const;
    const under = toPlane(near, frame, ...at);
    expect(apart(toFrame(zoomed(near, 1.5, frame, at, box), frame, ...under), at)).toBeLessThan(1e-6);
  });

  test("never farther than the whole picture, never away from it, however it is pushed", () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.double({ min: 0.2, max: 5, noNaN: true }), fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 })), { maxLength: 12 }), (moves) => {
      let p = fitted(box, frame);
      for (const [by, dx, dy] of moves) p = shifted(zoomed(p, by, frame, [200, 300], box), dx, dy, frame, box);
      const [left, top] = toFrame(p, frame, box.minX, box.maxY);
      const [right, bottom] = toFrame(p, frame, box.maxX, box.minY);
      expect(p.pxPerMm).toBeGreaterThanOrEqual(fitted(box, frame).pxPerMm - 1e-9);
      // Some of the picture shows on every side of the middle.
      expect(left).toBeLessThan(frame.width / 2);
      expect(right).toBeGreaterThan(frame.width / 2);
      expect(top).toBeLessThan(frame.height / 2);
      expect(bottom).toBeGreaterThan(frame.height / 2);
    }), { seed: 11, numRuns: 100 });
  });
});

describe("marks on a traced outline", () => {
  // A square of 100 mm, counter-clockwise from its lower left corner.
  const square = trackOf({ xy: Float64Array.of(0, 0, 100, 0, 100, 100, 0, 100) });

  test("come to lie on it where it is nearest", () => {
    const far = trackOf({ xy: Float64Array.of(300, 0, 400, 0, 400, 100) });
    expect(ontoNearest([square, far], [50, 7])).toEqual({ track: square, at: [50, 0], distance: 7 });
    expect(ontoNearest([square, far], [340, -4])).toEqual({ track: far, at: [340, 0], distance: 4 });
    expect(ontoNearest([], [0, 0])).toBeUndefined();
  });

  test("are as far apart as a tape laid along it, the shorter way round", () => {
    expect(betweenOnTrack(square, [50, 0], [100, 30])).toBeCloseTo(80, 9);
    expect(betweenOnTrack(square, [10, 0], [0, 10])).toBeCloseTo(20, 9);
  });

  test("go along it the way the arrow points, also over the corner where the outline begins", () => {
    expect(apart(stepOnTrack(square, [50, 0], "ArrowRight", 5), [55, 0])).toBeLessThan(1e-9);
    expect(apart(stepOnTrack(square, [50, 0], "ArrowLeft", 5), [45, 0])).toBeLessThan(1e-9);
    expect(apart(stepOnTrack(square, [50, 100], "ArrowRight", 5), [55, 100])).toBeLessThan(1e-9);
    expect(apart(stepOnTrack(square, [0, 50], "ArrowDown", 5), [0, 45])).toBeLessThan(1e-9);
    expect(apart(stepOnTrack(square, [0, 2], "ArrowDown", 5), [3, 0])).toBeLessThan(1e-9);
  });
});
