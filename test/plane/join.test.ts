import { describe, expect, test } from "vitest";
import { cutAtCrossing, cutAtFirstCrossing } from "#plane/join.ts";

// A line from a corner at (0, 0) upward that runs on into the far arm of a horseshoe: the near arm is crossed at (0, 4), the far one at (0, 40).
const up = { xy: Float64Array.of(0, 0, 0, 20, 0, 50) };
const horseshoe = { xy: Float64Array.of(-10, 4, 60, 4, 60, 40, -10, 40) };

describe("two lines cut at a crossing", () => {
  test("the one nearest to the end of the first line, or to its start", () => {
    expect(cutAtCrossing(up, horseshoe)!.at).toEqual([0, 40]);
    const first = cutAtFirstCrossing(up, horseshoe)!;
    expect(first.at).toEqual([0, 4]);
    expect([...first.before.xy]).toEqual([0, 0, 0, 4]);
    expect([...first.after.xy]).toEqual([0, 4, 60, 4, 60, 40, -10, 40]);
  });

  test("lines that do not meet", () => {
    expect(cutAtFirstCrossing(up, { xy: Float64Array.of(5, 0, 5, 50) })).toBeUndefined();
  });
});
