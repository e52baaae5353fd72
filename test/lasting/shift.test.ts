import { describe, expect, test } from "vitest";
import { lowestShares, shiftedTopline, type ToplineShift } from "#lasting/shift.ts";
import type { Shell } from "#shell/shell.ts";
import { defaultJob } from "#job/default-job.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";

const { flat, lines } = new Pipeline().run(defaultJob(), new Map(), { withoutPieces: true, triangles: 3000 }) as LastPair;
const lowest = lowestShares(lines);
const none: ToplineShift = { throatShiftMm: 0, backShiftMm: 0, innerShiftMm: 0, outerShiftMm: 0 };
const shifted = (shift: Partial<ToplineShift>, shell: Shell = flat.shell, uv = flat.uv) => shiftedTopline(shell, uv, lowest, { ...none, ...shift });
const way = (from: Float64Array, to: Float64Array, v: number): readonly [number, number] => [to[2 * v]! - from[2 * v]!, to[2 * v + 1]! - from[2 * v + 1]!];
const size = ([x, y]: readonly [number, number]): number => Math.hypot(x, y);
const end = (ids: Uint32Array): number => ids[ids.length - 1]!;

/** Twice the signed area of each triangle. */
const areas = (uv: Float64Array): number[] =>
  Array.from({ length: flat.shell.mesh.triangles.length / 3 }, (_, t) => {
    const [a, b, c] = [0, 1, 2].map((k) => 2 * flat.shell.mesh.triangles[3 * t + k]!) as [number, number, number];
    return (uv[b]! - uv[a]!) * (uv[c + 1]! - uv[a + 1]!) - (uv[b + 1]! - uv[a + 1]!) * (uv[c]! - uv[a]!);
  });

describe("a topline cut farther out", () => {
  const { edges } = flat.shell;

  test("moves the throat along the centre line and nothing behind the lowest places", () => {
    const to = shifted({ throatShiftMm: 3 });
    const [dx, dy] = way(flat.uv, to, end(edges.centre));
    // The toe lies at the origin and the throat on −x: farther from the toe is toward −x.
    expect(dx).toBeCloseTo(-3, 2);
    expect(Math.abs(dy)).toBeLessThan(0.05);
    expect(size(way(flat.uv, to, edges.toplineMedial[0]!))).toBe(0);
  });

  test("moves both ends of the back seam along it, alike", () => {
    const to = shifted({ backShiftMm: 2 });
    for (const bank of [edges.backMedial, edges.backLateral]) {
      const [v, w] = [end(bank), bank[bank.length - 2]!];
      expect(size(way(flat.uv, to, v))).toBeCloseTo(2, 6);
      const along = [flat.uv[2 * v]! - flat.uv[2 * w]!, flat.uv[2 * v + 1]! - flat.uv[2 * w + 1]!] as const;
      const [dx, dy] = way(flat.uv, to, v);
      expect((dx * along[0] + dy * along[1]) / (2 * size(along))).toBeGreaterThan(0.99);
    }
    expect(size(way(flat.uv, to, end(edges.centre)))).toBe(0);
  });

  test("raises one side alone, outward, the feather line left as it is and no triangle folded over", () => {
    const before = areas(flat.uv), sense = Math.sign(before[0]!);
    for (const key of ["innerShiftMm", "outerShiftMm"] as const)
      for (const mm of [-8, 8]) {
        const to = shifted({ [key]: mm });
        const whole = (list: readonly number[]): number => list.reduce((sum, a) => sum + a * sense, 0);
        expect(Math.sign(whole(areas(to)) - whole(before))).toBe(Math.sign(mm));
        for (const area of areas(to)) expect(area * sense).toBeGreaterThan(0);
        for (const v of [...edges.featherMedial, ...edges.featherLateral]) expect(size(way(flat.uv, to, v))).toBe(0);
        const other = key === "innerShiftMm" ? edges.toplineLateral : edges.toplineMedial;
        for (const v of other) expect(size(way(flat.uv, to, v))).toBe(0);
      }
  });

  test("bends no more sharply than the shift asks: neighbours on the topline move nearly alike", () => {
    const to = shifted({ throatShiftMm: 4, backShiftMm: -3, innerShiftMm: 2, outerShiftMm: -2 });
    for (const ids of [edges.toplineMedial, edges.toplineLateral])
      for (let k = 0; k + 1 < ids.length; k++) {
        const [a, b] = [way(flat.uv, to, ids[k]!), way(flat.uv, to, ids[k + 1]!)];
        const apart = Math.hypot(flat.uv[2 * ids[k]!]! - flat.uv[2 * ids[k + 1]!]!, flat.uv[2 * ids[k]! + 1]! - flat.uv[2 * ids[k + 1]! + 1]!);
        expect(size([a[0] - b[0], a[1] - b[1]])).toBeLessThan(0.2 * apart);
      }
  });

  test("of nothing leaves every place to the bit", () => {
    expect(shifted({})).toEqual(flat.uv);
  });
});
