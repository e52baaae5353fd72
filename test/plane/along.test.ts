import { describe, expect, test } from "vitest";
import { arcLengths, directionAt, endPart, joined, nearestOn, partBetween, pointAt, resample, reversed } from "#plane/along.ts";
import { partsInside } from "#plane/clip.ts";
import { cutAtCrossing, extendEnd, extendStart, reflect } from "#plane/join.ts";

const line = { xy: Float64Array.of(0, 0, 3, 4, 3, 10) };
const arc = arcLengths(line);

describe("running length", () => {
  test("by the 3-4-5 triangle", () => {
    expect([...arc]).toEqual([0, 5, 11]);
    expect(pointAt(line, arc, 2.5)).toEqual([1.5, 2]);
    expect(pointAt(line, arc, 99)).toEqual([3, 10]);
    expect(pointAt(line, arc, -1)).toEqual([0, 0]);
    expect(directionAt(line, arc, 8)).toEqual([0, 1]);
  });

  test("nearest place", () => {
    expect(nearestOn(line, arc, 6, 7)).toEqual({ s: 8, x: 3, y: 7, distance: 3 });
    expect(nearestOn(line, arc, -3, -4)).toEqual({ s: 0, x: 0, y: 0, distance: 5 });
  });

  test("resampled evenly, ends exact", () => {
    const even = resample(line, 1);
    expect(even.xy.length).toBe(24);
    expect([...even.xy.subarray(22)]).toEqual([3, 10]);
    expect([...even.xy.subarray(10, 12)]).toEqual([3, 4]);
  });

  test("parts", () => {
    expect([...partBetween(line, arc, 2.5, 8).xy]).toEqual([1.5, 2, 3, 4, 3, 7]);
    expect([...endPart(line, 2).xy]).toEqual([3, 8, 3, 10]);
    expect([...reversed(line).xy]).toEqual([3, 10, 3, 4, 0, 0]);
    expect([...joined([line, { xy: Float64Array.of(3, 10, 4, 10) }]).xy]).toEqual([0, 0, 3, 4, 3, 10, 4, 10]);
  });
});

describe("joining", () => {
  test("lines run on until they meet", () => {
    const a = extendEnd({ xy: Float64Array.of(0, 0, 5, 0) }, 10);
    const b = extendStart({ xy: Float64Array.of(8, 3, 8, 9) }, 10);
    const cut = cutAtCrossing(a, b);
    expect(cut?.at).toEqual([8, 0]);
    expect([...cut!.before.xy]).toEqual([0, 0, 5, 0, 8, 0]);
    expect([...cut!.after.xy]).toEqual([8, 0, 8, 3, 8, 9]);
    expect(cutAtCrossing({ xy: Float64Array.of(0, 0, 1, 0) }, { xy: Float64Array.of(0, 1, 1, 1) })).toBeUndefined();
  });

  test("reflection in a line is its own inverse", () => {
    expect(reflect([3, 1], [0, 0], [1, 0])).toEqual([3, -1]);
    expect(reflect(reflect([3, 1], [1, 2], [0.6, 0.8]), [1, 2], [0.6, 0.8]).map((v) => Math.round(v * 1e9) / 1e9)).toEqual([3, 1]);
  });

  test("a straight way through a horseshoe is inside twice", () => {
    const shoe = { xy: Float64Array.of(0, 0, 10, 0, 10, 10, 8, 10, 8, 2, 2, 2, 2, 10, 0, 10) };
    expect(partsInside(shoe, [-5, 5], [15, 5])).toEqual([[[0, 5], [2, 5]], [[8, 5], [10, 5]]]);
    expect(partsInside(shoe, [4, 5], [6, 5])).toEqual([]);
    expect(partsInside(shoe, [3, 1], [6, 1])).toEqual([[[3, 1], [6, 1]]]);
  });
});
