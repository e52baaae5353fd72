import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pushArcs } from "#plane/biarc.ts";
import { fitCurves } from "#plane/curve-fit.ts";
import { traceCurves, type CurvePath } from "#plane/curve-path.ts";
import { pushArc, pushCubic } from "#plane/flatten-curve.ts";
import { mirrorOutline, mirrorPolyline } from "#plane/mirror.ts";
import { AreaPen, trace } from "#plane/pen.ts";

const points = (count: number, at: (t: number) => readonly [number, number], closed: boolean): Float64Array =>
  Float64Array.from(Array.from({ length: count }, (_, i) => at(i / (closed ? count : count - 1))).flat());

/** A path as fine points, its curves as they are or as arcs. */
function flat({ xy, straight }: CurvePath, as: "curves" | "arcs" = "curves", withinMm = 1e-4): Float64Array {
  const out = [xy[0]!, xy[1]!];
  straight.forEach((line, k) => {
    const [x, y, ...c] = [...xy.subarray(6 * k, 6 * k + 8)] as [number, number, number, number, number, number, number, number];
    if (line) out.push(c[4], c[5]);
    else if (as === "curves") pushCubic(out, x, y, ...c, withinMm);
    else {
      const arcs: number[] = [];
      pushArcs(arcs, x, y, ...c, 0.001);
      let [px, py] = [x, y];
      for (let i = 0; i < arcs.length; i += 3) {
        pushArc(out, px, py, arcs[i]!, arcs[i + 1]!, arcs[i + 2]!, withinMm);
        [px, py] = [arcs[i]!, arcs[i + 1]!];
      }
    }
  });
  return Float64Array.from(out);
}

/** The farthest that any point of `from` lies off the line `to`. */
function farthest(from: Float64Array, to: Float64Array, closed: boolean): number {
  const n = to.length / 2;
  const pieces = closed ? n : n - 1;
  let worst = 0, near = 0;
  for (let i = 0; i < from.length; i += 2) {
    let best = Infinity, nearest = near;
    // From where the point before lay, since both run the same way; the whole line only where nothing near is found.
    for (let step = 0; step < pieces && (step < 80 || best > 0.02); step++) {
      const j = (near + (step % 2 === 0 ? step / 2 : pieces - (step + 1) / 2)) % pieces, k = (j + 1) % n;
      const [x, y, dx, dy] = [to[2 * j]!, to[2 * j + 1]!, to[2 * k]! - to[2 * j]!, to[2 * k + 1]! - to[2 * j + 1]!];
      const square = dx * dx + dy * dy;
      const t = square > 0 ? Math.min(1, Math.max(0, ((from[i]! - x) * dx + (from[i + 1]! - y) * dy) / square)) : 0;
      const off = Math.hypot(from[i]! - x - t * dx, from[i + 1]! - y - t * dy);
      if (off < best) [best, nearest] = [off, j];
    }
    near = nearest;
    worst = Math.max(worst, best);
  }
  return worst;
}

/** Angles between the directions in which a path arrives at and leaves each of its joints, degrees. */
function kinks({ xy, straight, closed }: CurvePath): readonly number[] {
  const n = straight.length;
  const angle = (a: number, b: number): number => (Math.atan2(xy[b + 1]! - xy[a + 1]!, xy[b]! - xy[a]!) * 180) / Math.PI;
  return Array.from({ length: closed ? n : n - 1 }, (_, k) => {
    const end = 6 * (k + 1), next = (k + 1) % n;
    const turn = angle(6 * next, 6 * next + 2) - angle(end - 2, end);
    return Math.abs(turn - 360 * Math.round(turn / 360));
  });
}

/** A fair closed line by formula: a round with three slow waves. Points `step` apart or less. */
const fairLoop = (radius: number, waves: readonly (readonly [number, number])[], count: number): Float64Array =>
  points(count, (t) => {
    const a = 2 * Math.PI * t;
    const r = radius * (1 + waves.reduce((sum, [size, phase], i) => sum + size * Math.cos((i + 1) * a + phase), 0));
    return [r * Math.cos(a), 1.6 * r * Math.sin(a)];
  }, true);

/** A path whose direction turns evenly faster, from straight to a radius of 60 mm over 120 mm (a clothoid), by small steps. */
function clothoid(): Float64Array {
  const out = [0, 0];
  let [x, y] = [0, 0];
  const h = 0.001;
  for (let i = 0; i < 120_000; i++) {
    const s = (i + 0.5) * h, a = (s * s) / (2 * 120 * 60);
    x += h * Math.cos(a);
    y += h * Math.sin(a);
    if ((i + 1) % 500 === 0) out.push(x, y);
  }
  return Float64Array.from(out);
}

describe("fitCurves", () => {
  test("points of a circle give arcs of that circle within 1e-9 mm, few of them", () => {
    const xy = points(241, (t) => [12 + 40 * Math.cos(2.6 * t), -7 + 40 * Math.sin(2.6 * t)], false);
    const path = fitCurves(xy, false);
    expect(path.straight.length).toBeLessThanOrEqual(6);
    let [x, y] = [path.xy[0]!, path.xy[1]!];
    path.straight.forEach((_, k) => {
      const [, , ...c] = [...path.xy.subarray(6 * k, 6 * k + 8)] as [number, number, number, number, number, number, number, number];
      const arcs: number[] = [];
      pushArcs(arcs, x, y, ...c, 0.001);
      expect(arcs).toHaveLength(3);
      const [ex, ey, bulge] = arcs as [number, number, number];
      // DXF reference: bulge = tan(angle / 4); chord = 2 R sin(angle / 2).
      const angle = 4 * Math.atan(bulge);
      expect(Math.abs(Math.hypot(ex - x, ey - y) / (2 * Math.sin(angle / 2)) - 40)).toBeLessThan(1e-9);
      expect(Math.abs(Math.hypot(ex - 12, ey + 7) - 40)).toBeLessThan(1e-9);
      [x, y] = [ex, ey];
    });
  });

  test("an ellipse and a clothoid by formula are met within 0.003 mm by curves and 0.004 mm by arcs", () => {
    const ellipse = (count: number) => points(count, (t) => [130 * Math.cos(2 * Math.PI * t), 45 * Math.sin(2 * Math.PI * t)], true);
    const round = fitCurves(ellipse(900), true);
    for (const [as, mm] of [["curves", 0.003], ["arcs", 0.004]] as const) expect(farthest(flat(round, as), ellipse(3000), true)).toBeLessThan(mm);
    expect(round.straight.length).toBeLessThan(30);
    const spiral = fitCurves(clothoid(), false);
    for (const [as, mm] of [["curves", 0.003], ["arcs", 0.004]] as const) expect(farthest(clothoid(), flat(spiral, as), false)).toBeLessThan(mm);
    expect(spiral.straight.length).toBeLessThan(8);
  });

  // Radius, waves and step such that chords stand off by less than 2 µm, as those of the pattern do.
  const loops = fc.record({
    radius: fc.double({ min: 30, max: 60, noNaN: true }),
    waves: fc.array(fc.tuple(fc.double({ min: 0, max: 0.06, noNaN: true }), fc.double({ min: 0, max: 6.3, noNaN: true })), { minLength: 3, maxLength: 3 }),
  });

  test("random fair outlines: within 0.005 mm both ways, no kink, area within 1e-4", () => {
    fc.assert(
      fc.property(loops, ({ radius, waves }) => {
        const xy = fairLoop(radius, waves, 900);
        const path = fitCurves(xy, true);
        for (const as of ["curves", "arcs"] as const) {
          expect(farthest(flat(path, as), xy, true)).toBeLessThan(0.005);
          expect(farthest(xy, flat(path, as), true)).toBeLessThan(0.005);
        }
        expect(Math.max(...kinks(path))).toBeLessThan(1e-6);
        const [ours, line] = [new AreaPen(), new AreaPen()];
        traceCurves(path, ours as never);
        trace({ xy }, line);
        expect(Math.abs(ours.total / line.total - 1)).toBeLessThan(1e-4);
        expect(path.straight.length).toBeLessThan(90);
      }),
      { numRuns: 6 },
    );
  });

  test("the mirror image of a line gives the mirror image of its curves, bit for bit", () => {
    const mirrored = ({ xy }: CurvePath) => Float64Array.from(xy, (v, i) => (i % 2 === 1 ? -v : v));
    fc.assert(
      fc.property(loops, ({ radius, waves }) => {
        const xy = fairLoop(radius, waves, 600);
        const [right, left] = [fitCurves(xy, true), fitCurves(mirrorOutline({ xy }).xy, true)];
        // A mirrored outline runs the other way round.
        const back = Float64Array.from(Array.from({ length: left.xy.length / 2 }, (_, i) => [...left.xy.subarray(left.xy.length - 2 * i - 2, left.xy.length - 2 * i)]).flat());
        expect(mirrored({ ...left, xy: back })).toEqual(right.xy);
        const open = xy.subarray(0, 700);
        expect(mirrored(fitCurves(mirrorPolyline({ xy: open }).xy, false))).toEqual(fitCurves(open, false).xy);
      }),
      { numRuns: 25 },
    );
  });

  test("corners are kept to the bit, straight edges stay straight, and a round runs into them without a kink", () => {
    // A plate of 60 × 40 with one corner rounded at 12 mm and one cut off; the round in steps of 0.5 mm.
    const round = points(39, (t) => [48 + 12 * Math.sin((Math.PI / 2) * t), 12 - 12 * Math.cos((Math.PI / 2) * t)], false);
    const xy = Float64Array.of(0, 0, ...round, 60, 40, 5, 40, 0, 36);
    const path = fitCurves(xy, true);
    const ends = Array.from({ length: path.straight.length }, (_, k) => `${path.xy[6 * k + 6]} ${path.xy[6 * k + 7]}`);
    for (const corner of ["0 0", "60 40", "5 40", "0 36"]) expect(ends).toContain(corner);
    expect(path.straight.reduce((sum, v) => sum + v, 0)).toBe(5);
    const turns = [...kinks(path)].sort((a, b) => b - a);
    expect(turns.slice(0, 4).map(Math.round)).toEqual([90, 90, 51, 39]);
    // The round's own first chord turns by half of its step; what the curve takes over is the edge's direction.
    expect(turns[4]).toBeLessThan(1e-6);
    expect(farthest(flat(path), xy, true)).toBeLessThan(0.005);
  });

  test("a notch smaller than the points' distance stays as sharp as it is", () => {
    const xy = Float64Array.from([...points(60, (t) => [30 * t, 0], false), 31, 1.5, 32, 0, ...points(60, (t) => [32.5 + 30 * t, 0], false)]);
    const path = fitCurves(xy, false);
    expect([...path.straight]).toEqual([1, 1, 1, 1]);
    expect([...path.xy]).toEqual(expect.arrayContaining([30, 31, 1.5, 32]));
  });

  // A walk that turns at random: smooth for a while, then sharp, now and then right back, its steps from 0.01 to 4 mm.
  const rough = fc.record({
    closed: fc.boolean(),
    steps: fc.array(fc.record({ mm: fc.oneof(fc.double({ min: 0.01, max: 1, noNaN: true }), fc.double({ min: 1, max: 4, noNaN: true })), turn: fc.oneof({ weight: 5, arbitrary: fc.double({ min: -0.15, max: 0.15, noNaN: true }) }, fc.double({ min: -3.2, max: 3.2, noNaN: true }), fc.constant(Math.PI)) }), { minLength: 3, maxLength: 60 }),
  });

  test("any line at all is followed within 0.009 mm both ways, by arcs too", () => {
    fc.assert(
      fc.property(rough, ({ closed, steps }) => {
        let [x, y, way] = [0, 0, 0];
        const xy = Float64Array.from(steps.flatMap(({ mm, turn }) => {
          way += turn;
          x += mm * Math.cos(way);
          y += mm * Math.sin(way);
          return [x, y];
        }));
        const path = fitCurves(xy, closed);
        for (const as of ["curves", "arcs"] as const) {
          const points = flat(path, as);
          expect(farthest(points, xy, closed)).toBeLessThan(0.009);
          expect(farthest(xy, points, closed)).toBeLessThan(0.009);
        }
      }),
      { numRuns: 120 },
    );
  });

  test("two points give one straight piece, and a point given twice counts once", () => {
    expect(fitCurves(Float64Array.of(0, 0, 9, 3), false)).toEqual({ xy: Float64Array.of(0, 0, 3, 1, 6, 2, 9, 3), straight: Uint8Array.of(1), closed: false });
    expect(fitCurves(Float64Array.of(0, 0, 0, 0, 40, 0, 40, 30, 0, 30, 0, 0), true).straight).toEqual(Uint8Array.of(1, 1, 1, 1));
  });
});

describe("pushArc and pushCubic", () => {
  test("a bulge of 1 is a half circle to the right of its chord where it bends left (DXF reference)", () => {
    const out = [0, 0];
    pushArc(out, 0, 0, 10, 0, 1, 1e-4);
    for (let i = 0; i < out.length; i += 2) expect(Math.hypot(out[i]! - 5, out[i + 1]!)).toBeCloseTo(5, 9);
    expect(Math.min(...out)).toBeCloseTo(-5, 3);
  });

  test("a cubic's points lie on it, close enough that no chord is off by more than asked", () => {
    const out = [0, 0];
    pushCubic(out, 0, 0, 0, 27.614, 22.386, 50, 50, 50, 0.001);
    // A quarter circle of radius 50 by the known handle 0.5523 is off by 2.7e-4 of the radius at most.
    for (let i = 0; i < out.length; i += 2) expect(Math.abs(Math.hypot(out[i]! - 50, out[i + 1]!) - 50)).toBeLessThan(0.0145);
    expect(out.length / 2).toBeGreaterThan(40);
  });
});
