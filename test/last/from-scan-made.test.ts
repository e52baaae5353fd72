// A lofted last (invented numbers) as a scan with no file beside it: its feather line and measures are known from how it was made.
import { expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { featherError, girthsMm, laid, lengthsMm, rotations, type FileRule } from "../support/against-truth.ts";
import { exampleLast } from "../support/scans.ts";

const made = exampleLast();
const feather = Array.from({ length: made.feather.points.length / 3 }, (_, i) => [...made.feather.points.subarray(3 * i, 3 * i + 3)]);
const turned = rotations(5);

test.each([
  ["m", 0.001, false],
  ["in", 1 / 25.4, true],
  ["mm", 1, true],
] as const)("a made last laid into a file in %s is found again", (unit, unitPerMm, mirrored) => {
  const rule: FileRule = { unitPerMm, rotation: turned.next().value as number[][], translationMm: [-120, 45, 300] };
  const last = lastFromScan(laid(made.mesh, rule, mirrored), { name: "found" }, unwatched);
  expect(last.side).toBe(mirrored === (made.side === "right") ? "left" : "right");
  expect(last.placement.unit).toBe(unit);
  for (const k of lengthsMm) expect(Math.abs(last.measures[k] - made.measures[k]), k).toBeLessThan(0.7);
  for (const k of girthsMm) expect(Math.abs(last.measures[k] - made.measures[k]), k).toBeLessThan(1.5);
  const { rms, max } = featherError(last, rule, mirrored ? feather.map(([x, y, z]) => [x!, -y!, z!]) : feather);
  expect(rms).toBeLessThan(0.6);
  expect(max).toBeLessThan(2);
});
