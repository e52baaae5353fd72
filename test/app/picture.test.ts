import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clearPlace, ringHalf } from "#app/picture/clear-place.ts";
import { inMargins, spread } from "#app/picture/margin-labels.ts";
import { mapColour } from "#app/picture/map-scale.ts";
import { levelLines, scaleEnd } from "#app/picture/strain.ts";
import { insidePoint } from "#app/state/inside-point.ts";
import { inRows } from "#app/state/rows.ts";

type Xy = readonly [number, number];

/** Flat n × n grid of squares of side 1, each cut in two. */
function grid(n: number) {
  const triangles: number[] = [];
  const at = (i: number, j: number): number => i * (n + 1) + j;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) triangles.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j), at(i + 1, j + 1), at(i, j + 1));
  const x = Float64Array.from({ length: (n + 1) ** 2 }, (_, v) => Math.floor(v / (n + 1)));
  const y = Float64Array.from({ length: (n + 1) ** 2 }, (_, v) => v % (n + 1));
  return { triangles: Uint32Array.from(triangles), x, y };
}

describe("lines of equal stretch", () => {
  test("of a plane slope are one straight line at the very place", () => {
    const { triangles, x, y } = grid(6);
    const lines = levelLines(triangles, x, [2.3]);
    expect(lines).toHaveLength(1);
    for (const { a, b, t } of lines[0]!.points) expect(x[a]! + t * (x[b]! - x[a]!)).toBeCloseTo(2.3, 12);
    const ys = lines[0]!.points.map(({ a, b, t }) => y[a]! + t * (y[b]! - y[a]!));
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([0, 6]);
  });

  test("round a hill are closed, one for each level", () => {
    const { triangles, x, y } = grid(20);
    const hill = x.map((v, i) => -Math.hypot(v - 10, y[i]! - 10));
    for (const level of [-7.5, -4.5]) {
      const lines = levelLines(triangles, hill, [level]);
      expect(lines).toHaveLength(1);
      const points = lines[0]!.points;
      expect(points[0]).toEqual(points.at(-1));
    }
    expect(levelLines(triangles, hill, [3])).toEqual([]);
  });

  test("the end of the scale is round and takes in nearly all", () => {
    expect(scaleEnd(Float64Array.from({ length: 1000 }, (_, i) => (i / 1000) * 0.05))).toBe(0.06);
    expect(scaleEnd(Float64Array.from([0.001, -0.002]))).toBe(0.02);
    expect(scaleEnd(Float64Array.from([3]))).toBe(0.4);
  });
});

describe("the scale of colours", () => {
  // Relative luminance of sRGB, IEC 61966-2-1 and the Web Content Accessibility Guidelines 2.2.
  const luminance = (share: number): number => {
    const [r, g, b] = mapColour(share).map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
  };
  test("is lightest at zero and darkens evenly to both ends, so that it reads without colour", () => {
    for (const sign of [-1, 1]) for (let k = 1; k <= 10; k++) expect(luminance((sign * k) / 10)).toBeLessThan(luminance((sign * (k - 1)) / 10));
    expect(Math.abs(luminance(1) - luminance(-1))).toBeLessThan(0.08);
  });
  test("stays at its ends beyond them", () => expect([mapColour(9), mapColour(-9)]).toEqual([mapColour(1), mapColour(-1)]));
});

describe("words in the margins", () => {
  test("never overlap, keep the order of their places, and stay inside while there is room", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 600, noNaN: true }), { maxLength: 20 }), (places) => {
        const rising = [...places].sort((a, b) => a - b);
        const out = spread(rising, 24, 12, 588);
        for (let i = 1; i < out.length; i++) expect(out[i]! - out[i - 1]!).toBeGreaterThanOrEqual(24 - 1e-9);
        for (const y of out) expect(y >= 12 - 1e-9 && y <= 588 + 1e-9).toBe(true);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
  test("go over to the other side, and nearer together, where one side is full", () => {
    const many = Array.from({ length: 18 }, (_, i) => ({ key: `${i}`, x: 300 + i, y: 10 + 11 * i, text: "height at 1/4" }));
    const placed = inMargins([{ key: "seat", x: 40, y: 90, text: "seat" }, ...many], 700, 240);
    for (const side of ["left", "right"] as const) {
      const ys = placed.filter((p) => p.side === side).map((p) => p.labelY);
      for (const [i, y] of ys.entries()) {
        expect(y >= 10 && y <= 230).toBe(true);
        if (i > 0) expect(y - ys[i - 1]!).toBeGreaterThanOrEqual(16 - 1e-9);
      }
    }
    expect(placed).toHaveLength(19);
  });
  test("stand clear of what they speak of", () => {
    const [word] = inMargins([{ key: "a", x: 320, y: 50, text: "a rather long name of a mark" }], 900, 240, { left: 300, right: 620 });
    expect(word!.side).toBe("left");
    expect(word!.labelX).toBeLessThanOrEqual(300);
    expect(word!.labelX - 7.3 * word!.text.length).toBeGreaterThanOrEqual(0);
  });
  test("have leader lines that neither cross nor run through words, wherever their places lie", () => {
    const place = fc.record({ x: fc.integer({ min: 200, max: 600 }), y: fc.integer({ min: 0, max: 400 }) });
    fc.assert(fc.property(fc.uniqueArray(place, { minLength: 2, maxLength: 14, selector: ({ x, y }) => `${x} ${y}` }), (places) => {
      const placed = inMargins(places.map(({ x, y }, i) => ({ key: String(i), x, y, text: "a mark".repeat(1 + (i % 3)) })), 800, 400, { left: 200, right: 600 });
      const turn = (p: Xy, q: Xy, r: Xy): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
      for (const a of placed) for (const b of placed) {
        if (a === b || a.side !== b.side) continue;
        // The words of a side end at one upright line, and all places lie on the other side of it.
        expect(a.labelX).toBe(b.labelX);
        const [p, q, r, s]: Xy[] = [[a.labelX, a.labelY], [a.x, a.y], [b.labelX, b.labelY], [b.x, b.y]] as const;
        expect(turn(p!, q!, r!) * turn(p!, q!, s!) < -1e-6 && turn(r!, s!, p!) * turn(r!, s!, q!) < -1e-6).toBe(false);
      }
    }), { seed: 29, numRuns: 300 });
  });
  test("stand on the side their place is nearer to", () => {
    const placed = inMargins([{ key: "a", x: 10, y: 5, text: "toe" }, { key: "b", x: 390, y: 5, text: "seat" }], 400, 300);
    expect(placed.map((p) => [p.key, p.side])).toEqual([["a", "left"], ["b", "right"]]);
  });
});

describe("words at a place", () => {
  const words = { width: 120, height: 20 };
  const around = { width: 400, height: 300, room: 6, reach: [26, 44, 66, 92] };
  const covers = (p: { readonly x: number; readonly y: number }, q: { readonly x: number; readonly y: number }): boolean => Math.abs(p.x - q.x) < 66 && Math.abs(p.y - q.y) < 16;

  test("stay inside the frame and off the place itself, also in a corner", () => {
    const place = fc.record({ x: fc.double({ min: 0, max: 400, noNaN: true }), y: fc.double({ min: 0, max: 300, noNaN: true }) });
    fc.assert(
      fc.property(place, fc.array(place, { maxLength: 6 }), (at, clearOf) => {
        const p = clearPlace(at, words, { ...around, clearOf });
        expect(p.x >= 60 && p.x <= 340 && p.y >= 10 && p.y <= 290).toBe(true);
        expect(covers(p, at)).toBe(false);
      }),
      { seed: 17, numRuns: 300 },
    );
  });

  test("go elsewhere when another handle stands where they would", () => {
    const at = { x: 200, y: 150 };
    const usual = clearPlace(at, words, { ...around, clearOf: [] });
    const other = { x: usual.x + 30, y: usual.y };
    expect(covers(clearPlace(at, words, { ...around, clearOf: [other] }), other)).toBe(false);
  });

  test("keep their room from the whole ring of a handle, and lie on lines rather than on a handle", () => {
    const at = { x: 200, y: 150 };
    // So far from the first place that only the ring is in the way, not its middle.
    const usual = clearPlace(at, words, { ...around, clearOf: [] });
    const ring = { x: usual.x + words.width / 2 + around.room + 5, y: usual.y, half: ringHalf };
    const moved = clearPlace(at, words, { ...around, clearOf: [ring] });
    expect(Math.abs(moved.x - ring.x) >= words.width / 2 + around.room + ringHalf || Math.abs(moved.y - ring.y) >= words.height / 2 + around.room + ringHalf).toBe(true);
    // Lines everywhere, but for a few places that a handle stands at: only those are free of lines.
    const everywhere = Array.from({ length: 41 * 31 }, (_, i) => ({ x: (i % 41) * 10, y: Math.floor(i / 41) * 10 })).filter((p) => !covers(usual, p));
    expect(clearPlace(at, words, { ...around, clearOf: everywhere })).toEqual(usual);
    const kept = clearPlace(at, words, { ...around, clearOf: [...everywhere, { ...usual, half: ringHalf }] });
    expect(covers(kept, usual)).toBe(false);
  });
});

describe("pieces on the screen", () => {
  const room = { width: 800, height: 600, gap: 10, below: 40, leastWide: 90 };
  const size = fc.record({ wide: fc.double({ min: 20, max: 300, noNaN: true }), high: fc.double({ min: 20, max: 300, noNaN: true }) });
  test("stand inside the frame and never on one another", () => {
    fc.assert(
      fc.property(fc.array(size, { minLength: 1, maxLength: 12 }), (sizes) => {
        const { scale, places } = inRows(sizes, room);
        expect(scale).toBeGreaterThan(0);
        const boxes = sizes.map((s, i) => ({ x0: places[i]!.x, y0: places[i]!.y, x1: places[i]!.x + Math.max(90, s.wide * scale), y1: places[i]!.y + s.high * scale + 40 }));
        boxes.forEach((a, i) => {
          expect(a.x0 >= 0 && a.y0 >= 0 && a.x1 <= 800.01 && a.y1 <= 600.01).toBe(true);
          for (const b of boxes.slice(i + 1)) expect(a.x1 <= b.x0 + 0.01 || b.x1 <= a.x0 + 0.01 || a.y1 <= b.y0 + 0.01 || b.y1 <= a.y0 + 0.01).toBe(true);
        });
      }),
      { seed: 9, numRuns: 100 },
    );
  });

  test("a name finds the middle of the broad part, also of a horseshoe", () => {
    const square = insidePoint(Float64Array.from([0, 0, 10, 0, 10, 10, 0, 10]));
    expect([square.x, square.y, square.room]).toEqual([5, 5, 5]);
    // A U: two arms 2 wide, a bridge 4 high.
    const u = insidePoint(Float64Array.from([0, 0, 10, 0, 10, 12, 8, 12, 8, 4, 2, 4, 2, 12, 0, 12]));
    expect(u.y).toBeLessThan(4);
    expect(u.room).toBeGreaterThan(1.9);
  });
});
