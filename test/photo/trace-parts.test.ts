// The parts of the tracing whose answers are known in closed form.
import { beforeAll, describe, expect, test } from "vitest";
import { areaOf, loopsAt } from "#photo/contour.ts";
import { imageLibrary, readyForPhotos } from "#photo/image-library.ts";
import { cardHalves, cardPapers, cardSheet, firstId } from "#photo/card.ts";
import { filled, filledOverGaps, opened, partsOf } from "#photo/masks.ts";
import { smoothLoop } from "#photo/smooth-loop.ts";
import { fitLinear, leastSquares } from "#solve/least-squares.ts";
import { seeded } from "./support/chance.ts";

beforeAll(readyForPhotos);

describe("contours", () => {
  test("a cone is cut in a circle, to a hundredth of a cell, counter-clockwise", () => {
    const [wide, high] = [90, 70];
    const cone = Float32Array.from({ length: wide * high }, (_, k) => 25 - Math.hypot((k % wide) - 44.3, Math.floor(k / wide) - 33.8));
    const loops = loopsAt(cone, wide, high, 0);
    expect(loops.length).toBe(1);
    for (let i = 0; i < loops[0]!.length; i += 2) expect(Math.abs(Math.hypot(loops[0]![i]! - 44.3, loops[0]![i + 1]! - 33.8) - 25)).toBeLessThan(0.01);
    // Area of the circle, less what chords of one cell cut off.
    expect(Math.abs(areaOf(loops[0]!) / (Math.PI * 625) - 1)).toBeLessThan(1e-3);
  });

  test("a hole runs the other way, and what touches the rim is closed", () => {
    const ring = Float32Array.from({ length: 60 * 60 }, (_, k) => 6 - Math.abs(Math.hypot((k % 60) - 30, Math.floor(k / 60) - 30) - 18));
    const areas = [...loopsAt(ring, 60, 60, 0)].map(areaOf).sort((a, b) => a - b);
    expect(areas.length).toBe(2);
    expect(Math.abs(areas[0]! + Math.PI * 144)).toBeLessThan(2);
    expect(Math.abs(areas[1]! - Math.PI * 576)).toBeLessThan(4);
    expect(areaOf(loopsAt(new Float32Array(25).fill(1), 5, 5, 0.5)[0]!)).toBeGreaterThan(16);
  });
});

describe("smoothing", () => {
  test("keeps the corners of a shaken square and straightens its sides", () => {
    const chance = seeded(5);
    const xy: number[] = [];
    for (let side = 0; side < 4; side++) for (let k = 0; k < 400; k++) {
      const t = k / 8;
      const [x, y] = [[t, 0], [50, t], [50 - t, 50], [0, 50 - t]][side]!;
      xy.push(x! + 0.04 * chance.normal(), y! + 0.04 * chance.normal());
    }
    const out = smoothLoop(Float64Array.from(xy), { stepMm: 0.5, reachMm: 0.9 });
    for (const [x, y] of [[0, 0], [50, 0], [50, 50], [0, 50]]) {
      let best = Infinity;
      for (let i = 0; i < out.length; i += 2) best = Math.min(best, Math.hypot(out[i]! - x!, out[i + 1]! - y!));
      expect(best).toBeLessThan(0.1);
    }
    let sum = 0;
    for (let i = 0; i < out.length; i += 2) sum += Math.min(...[out[i]!, out[i + 1]!, 50 - out[i]!, 50 - out[i + 1]!].map(Math.abs)) ** 2;
    expect(Math.sqrt(sum / (out.length / 2))).toBeLessThan(0.03);
  });

  test("takes less than a hundredth off the radius of a circle of 6 mm", () => {
    const circle = Float64Array.from({ length: 720 }, (_, k) => 6 * (k % 2 === 0 ? Math.cos : Math.sin)((2 * Math.PI * Math.floor(k / 2)) / 360));
    const out = smoothLoop(circle, { stepMm: 0.5, reachMm: 0.9 });
    for (let i = 0; i < out.length; i += 2) expect(Math.abs(Math.hypot(out[i]!, out[i + 1]!) - 6)).toBeLessThan(0.01);
  });
});

describe("masks", () => {
  /** A square ring, 2 cells thick, with a gap of three cells. */
  const ring = (gap: boolean) => {
    const on = new Uint8Array(40 * 40);
    for (let j = 8; j < 32; j++) for (let i = 8; i < 32; i++) if (i < 10 || i >= 30 || j < 10 || j >= 30) on[j * 40 + i] = gap && j < 10 && i > 18 && i < 22 ? 0 : 1;
    return { width: 40, height: 40, on };
  };
  const count = (mask: { on: Uint8Array }): number => mask.on.reduce((a, b) => a + b, 0);

  test("holes are filled only where a ring is closed, and gaps are bridged", () => {
    expect(count(filled(ring(false)))).toBe(24 * 24);
    expect(count(filled(ring(true)))).toBe(count(ring(true)));
    expect(count(filledOverGaps(ring(true), 2.5))).toBeGreaterThan(24 * 24 - 12);
    expect(count(filledOverGaps(ring(true), 1))).toBeLessThan(200);
    expect(count(opened(ring(false), 1.5))).toBe(0);
  });

  test("parts are told apart with their boxes", () => {
    const on = new Uint8Array(100);
    for (const k of [11, 12, 21, 55, 66]) on[k] = 1;
    expect(partsOf({ width: 10, height: 10, on }, 4).parts.length).toBe(3);
    const { parts } = partsOf({ width: 10, height: 10, on }, 8);
    expect(parts.map(({ cells, minI, maxI, minJ, maxJ }) => [cells, minI, maxI, minJ, maxJ])).toEqual([[3, 1, 2, 1, 2], [2, 5, 6, 5, 6]]);
  });
});

describe("the card", () => {
  interface Dictionary {
    generateImageMarker(id: number, side: number, out: unknown, border: number): void;
    delete(): void;
  }
  test("its markers are those of the library's own dictionary", () => {
    const cv = imageLibrary() as unknown as { Mat: new () => { data: Uint8Array; delete(): void }; DICT_5X5_250: number; getPredefinedDictionary(kind: number): Dictionary };
    const dictionary = cv.getPredefinedDictionary(cv.DICT_5X5_250);
    const out = new cv.Mat();
    const ids = new Set<number>();
    for (const paper of cardPapers) for (const half of cardHalves) for (const { id, white } of cardSheet(paper, half).markers) {
      dictionary.generateImageMarker(id, 7, out, 1);
      const drawn = Array.from({ length: 5 }, (_, r) => Array.from({ length: 5 }, (_, c) => out.data[7 * (r + 1) + c + 1] === 255));
      expect(white, `marker ${id}`).toEqual(drawn);
      ids.add(id);
    }
    expect(ids.size).toBe(228);
    out.delete();
    dictionary.delete();
  });

  test("every corner has two black and two white squares, and no two sheets share a marker", () => {
    for (const paper of cardPapers) for (const half of cardHalves) {
      const { black, corners, markers } = cardSheet(paper, half);
      expect(markers[0]!.id).toBe(firstId(paper, half));
      expect(markers.length).toBe(black.length / 2);
      for (let i = 0; i < corners.length; i += 2) {
        const touches = (x: number, y: number): boolean => Math.abs(x + 5 - corners[i]!) < 6 && Math.abs(y + 5 - corners[i + 1]!) < 6;
        let dark = 0;
        for (let k = 0; k < black.length; k += 2) if (touches(black[k]!, black[k + 1]!)) dark++;
        expect(dark).toBe(2);
        expect(markers.filter((m) => touches(m.xMm, m.yMm)).length).toBe(2);
      }
    }
  });
});

describe("least squares", () => {
  test("a line through four points", () => {
    // (0, 1) (1, 3) (2, 4) (3, 5) by the textbook formula: slope 1.3, intercept 1.3.
    const x = fitLinear([1, 0, 1, 1, 1, 2, 1, 3], 2, [1, 3, 4, 5]);
    expect(x[0]).toBeCloseTo(1.3, 12);
    expect(x[1]).toBeCloseTo(1.3, 12);
  });

  test("Rosenbrock's valley ends at (1, 1) (Computer Journal 3 (1960) 175)", () => {
    const x = leastSquares({ start: Float64Array.of(-1.2, 1), scales: [1, 1], residuals: 2, residualsInto: (v, out) => out.set([10 * (v[1]! - v[0]! ** 2), 1 - v[0]!]) });
    expect(Math.hypot(x[0]! - 1, x[1]! - 1)).toBeLessThan(1e-7);
  });
});
