import { expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { describeLast } from "#last/describe.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { calmed } from "#app/picture/apart-map.ts";
import { shapeWords } from "#app/state/shape-words.ts";

test("the shape of a last is one sentence with its own numbers", () => {
  const d = describeLast(lastFromMeasures(demoMeasurements, "demo", unwatched));
  // Numbers and their units are held together by spaces that do not break.
  const plain = (words: string): string => words.replaceAll(/\s/g, " ");
  const said = plain(shapeWords(d));
  expect(said).toMatch(/^Its shape: .+\.$/);
  expect(said).not.toMatch(/NaN|undefined|Infinity/);
  for (const value of [d.heelPitchMm, d.heelCurve.bulgeMm]) expect(said).toContain(`${Number(value.toFixed(1))} mm`);
  expect(said).toContain(`${Math.round(100 * d.jointMedialShare)} % of the length`);
  expect(plain(shapeWords({ ...d, heelPitchMm: 0.2, toeHeights: [] }))).toMatch(/seat and tread are level; .*; and the back stands out/);
});

test("a map is calmed for the eye: what is the same everywhere or rises evenly stays, grain goes", () => {
  // A flat net of 1 mm, 40 by 40.
  const n = 40;
  const at = (i: number, j: number): number => j * n + i;
  const triangles: number[] = [];
  for (let j = 0; j + 1 < n; j++) for (let i = 0; i + 1 < n; i++) triangles.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j), at(i + 1, j + 1), at(i, j + 1));
  const net = Uint32Array.from(triangles);
  const values = (of: (i: number, j: number) => number): Float64Array => Float64Array.from({ length: n * n }, (_, k) => of(k % n, Math.floor(k / n)));
  expect(Math.max(...calmed(net, values(() => 3)).map((v) => Math.abs(v - 3)))).toBeLessThan(1e-12);
  const slope = calmed(net, values((i) => i));
  expect(slope[at(20, 20)]).toBeCloseTo(20, 9);
  // Grain up and down by 1 mm from vertex to vertex is less than a twentieth of that; a hill of 20 mm across keeps nearly all of its height.
  const grain = calmed(net, values((i, j) => ((i + j) % 2 === 0 ? 1 : -1)));
  expect(Math.abs(grain[at(20, 20)]!)).toBeLessThan(0.05);
  const hill = calmed(net, values((i, j) => Math.exp(-((i - 20) ** 2 + (j - 20) ** 2) / (2 * 10 ** 2))));
  expect(hill[at(20, 20)]).toBeGreaterThan(0.9);
});
