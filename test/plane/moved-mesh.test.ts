import { expect, test } from "vitest";
import { fillOutline } from "#plane/fill.ts";
import { movedLike } from "#plane/moved-mesh.ts";

/** A square of 40 mm with its right side bowed outward by `bow` mm. */
function square(bow: number): Float64Array {
  const xy: number[] = [];
  for (let i = 0; i < 20; i++) xy.push(2 * i, 0);
  for (let i = 0; i < 20; i++) xy.push(40 + bow * 4 * (i / 20) * (1 - i / 20), 2 * i);
  for (let i = 0; i < 20; i++) xy.push(40 - 2 * i, 40);
  for (let i = 0; i < 20; i++) xy.push(0, 40 - 2 * i);
  return Float64Array.from(xy);
}

const area = ({ xy, triangles }: { readonly xy: Float64Array; readonly triangles: Uint32Array }): number => {
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [2 * triangles[t]!, 2 * triangles[t + 1]!, 2 * triangles[t + 2]!];
    sum += 0.5 * ((xy[b]! - xy[a]!) * (xy[c + 1]! - xy[a + 1]!) - (xy[b + 1]! - xy[a + 1]!) * (xy[c]! - xy[a]!));
  }
  return sum;
};

test("a mesh follows its outline with the same triangles, none turned over, and covers the new outline", () => {
  const filled = fillOutline({ outline: square(0), lines: [], spacing: 2 });
  const moved = movedLike(filled, square(3))!;
  expect(moved.triangles).toBe(filled.triangles);
  expect([...moved.xy.subarray(0, 160)]).toEqual([...square(3)]);
  // Under the chords of the parabola with 20 parts: 2/3 · bow · side, less 1/400 of it.
  expect(area(moved)).toBeCloseTo(1600 + (2 / 3) * 3 * 40 * (1 - 1 / 400), 6);
});

test("an outline moved as a whole takes all along", () => {
  const filled = fillOutline({ outline: square(2), lines: [], spacing: 2 });
  const moved = movedLike(filled, square(2).map((x, i) => x + (i % 2 === 0 ? 5 : -3)))!;
  // Relaxed in rounds, the middle lags behind; what counts is that nothing is turned over.
  expect(area(moved)).toBeCloseTo(area(filled), 6);
});

test("a move that crushes triangles is refused, so that the outline is filled anew", () => {
  const filled = fillOutline({ outline: square(0), lines: [], spacing: 2 });
  expect(movedLike(filled, square(-38))).toBeUndefined();
});
