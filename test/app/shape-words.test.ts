import { expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { describeLast } from "#last/describe.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { faired } from "#app/picture/apart-map.ts";
import { shapeWords } from "#app/state/shape-words.ts";

test("the shape of a last is one sentence with its own numbers", () => {
  const d = describeLast(lastFromMeasures(demoMeasurements, "demo", unwatched));
  // Numbers and their units are held together by spaces that do not break.
  const plain = (words: string): string => words.replaceAll(/\s/g, " ");
  const said = plain(shapeWords(d));
  expect(said).toMatch(/^The seat stands .+\.$/);
  expect(said).not.toMatch(/NaN|undefined|Infinity/);
  expect(said).toContain(`${Number(d.heelPitchMm.toFixed(1))} mm above the tread`);
  expect(said).toContain(`${Math.round(100 * d.jointMedialShare)} % of the length`);
  expect(plain(shapeWords({ ...d, heelPitchMm: 0.2, toeHeights: [] }))).toMatch(/^Seat and tread are level, and the joints lie at .* on the outer\.$/);
});

test("a level line is made fair for the eye: even and straight it stays, zigzag goes, ends stay and a ring closes", () => {
  const line = (n: number, of: (i: number) => readonly [number, number, number]): Float64Array => Float64Array.from(Array.from({ length: n }, (_, i) => of(i)).flat());
  const straight = line(30, (i) => [i, 2 * i, 5]);
  faired(straight).forEach((v, k) => expect(v).toBeCloseTo(straight[k]!, 9));
  const zigzag = faired(line(40, (i) => [i, i % 2 === 0 ? 0.5 : -0.5, 0]));
  expect(Math.abs(zigzag[3 * 20 + 1]!)).toBeLessThan(1e-6);
  expect([zigzag[0], zigzag[1], zigzag[3 * 39]]).toEqual([0, 0.5, 39]);
  // A ring of 20 mm across in steps of 1.5 mm moves inward by little over a third of a millimetre.
  const turn = (i: number) => (2 * Math.PI * (i % 42)) / 42;
  const ring = faired(line(43, (i) => [10 * Math.cos(turn(i)), 10 * Math.sin(turn(i)), 0]));
  for (let i = 0; i < 43; i++) expect(10 - Math.hypot(ring[3 * i]!, ring[3 * i + 1]!)).toBeLessThan(0.5);
  expect([...ring.subarray(0, 3)]).toEqual([...ring.subarray(ring.length - 3)]);
});
