import { expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { Cancelled } from "#base/watch.ts";
import { compensate, worstOf } from "#lasting/compensate.ts";
import { Secant } from "#lasting/secant.ts";
import { SheetMoves } from "#lasting/sheet-moves.ts";
import { standIn, standInCase } from "./stand-in.ts";

test("an upper that lies off comes within 0.3 mm in a few trials, each nearer than the one before", () => {
  const { rounds, reached, uncorrected, findings, shift, aimed, lasted } = compensate(standInCase, { mechanics: standIn() });
  expect(worstOf(uncorrected)).toBeGreaterThan(2);
  expect(reached).toBe(true);
  expect(rounds.length).toBeGreaterThan(1);
  expect(rounds.length).toBeLessThanOrEqual(5);
  for (let k = 1; k < rounds.length; k++) expect(worstOf(rounds[k]!.miss)).toBeLessThan(0.5 * worstOf(rounds[k - 1]!.miss));
  expect(Math.abs(lasted.ends.throatDepthMm - aimed.throatDepthMm)).toBeLessThanOrEqual(0.3);
  // The throat came 4 mm too near to the toe: it is cut farther from it.
  expect(shift.throatShiftMm).toBeGreaterThan(3);
  expect(findings.map(explain)[0]).toMatch(/^Pulled over, the corrected pattern ends within 0\.3 mm of what is asked, after \d trials: throat /);
});

test("another throat and back than drawn are reached as well, and the sides stay", () => {
  const target = { throatDepthMm: standInCase.lines.settings.throatDepthMm + 3, backHeightMm: standInCase.lines.settings.backHeightMm - 1.5 };
  const { lasted: { ends, asked }, reached } = compensate(standInCase, { target, mechanics: standIn({ offMm: 2 }) });
  expect(reached).toBe(true);
  expect(Math.abs(ends.throatDepthMm - target.throatDepthMm)).toBeLessThanOrEqual(0.3);
  expect(Math.abs(ends.backHeightMm - target.backHeightMm)).toBeLessThanOrEqual(0.3);
  for (const half of ["medial", "lateral"] as const) expect(Math.abs(ends.lowestMm[half] - asked.lowestMm[half])).toBeLessThanOrEqual(0.3);
});

test("an upper that does not answer is told, and the best trial is given instead of the last", () => {
  let pulls = 0;
  const { reached, rounds, findings, lasted, shift } = compensate(standInCase, { mechanics: standIn({ gain: 0, onPull: () => pulls++ }) });
  expect(reached).toBe(false);
  // Stops soon: it makes no sense to go on. The pattern without correction is pulled over once as well.
  expect([rounds.length, pulls]).toEqual([3, 4]);
  expect(Math.max(...Object.values(shift).map(Math.abs))).toBe(0);
  expect(lasted.ends.throatDepthMm - lasted.asked.throatDepthMm).toBeCloseTo(rounds[0]!.miss.throatDepthMm, 9);
  expect(findings.map(explain)[0]).toMatch(/^The pattern alone does not bring this leather to where it is asked\. After 3 trials: throat /);
  // One that lies off by more than may be cut out is not reached either, and nothing is cut beyond that.
  const far = compensate(standInCase, { mechanics: standIn({ offMm: 15 }) });
  expect(far.reached).toBe(false);
  expect(Math.max(...far.rounds.flatMap(({ shift: s }) => Object.values(s).map(Math.abs)))).toBeLessThanOrEqual(8);
});

test("the same case gives the same bytes, and it is told how far it is and can be stopped", () => {
  const told: number[] = [];
  const once = compensate(standInCase, { mechanics: standIn(), watch: (_, fraction) => told.push(fraction) });
  expect(compensate(standInCase, { mechanics: standIn() }).uv).toEqual(once.uv);
  expect(told.length).toBeGreaterThan(3);
  expect([...told].sort((a, b) => a - b)).toEqual(told);
  expect(told[told.length - 1]).toBe(1);
  const stop = (_: string, fraction: number) => {
    if (fraction > 0.2) throw new Cancelled();
  };
  expect(() => compensate(standInCase, { mechanics: standIn(), watch: stop })).toThrow(Cancelled);
});

// Broyden's own property: a linear answer of n numbers is found in at most 2 n steps (Gay, SIAM J. Numer. Anal. 16 (1979) 623).
test("a linear answer that is not far from one for one is found", () => {
  const a = [[0.8, 0.2, -0.1, 0], [0.1, 1.3, 0, 0.1], [-0.2, 0, 0.6, 0.1], [0, 0.1, 0.2, 1.1]], off = [2, -1.5, 1, 0.5];
  const answer = (x: readonly number[]): number[] => a.map((row, i) => off[i]! + row.reduce((sum, value, j) => sum + value * x[j]!, 0));
  const secant = new Secant(4, 20);
  let x: readonly number[] = [0, 0, 0, 0];
  for (let step = 0; step < 8; step++) x = secant.next(x, answer(x));
  expect(Math.max(...answer(x).map(Math.abs))).toBeLessThan(1e-3);
});

test("a coarser sheet in the same frame moves as the fine one", () => {
  const { fine, coarse } = standInCase;
  const linear = (uv: Float64Array): Float64Array => uv.map((x, i) => x + 0.01 * x + (i % 2 === 0 ? 2 + 0.02 * uv[i + 1]! : -0.01 * uv[i - 1]!));
  const moved = new SheetMoves(fine.shell.mesh.triangles, fine.uv, linear(fine.uv)).moved(coarse.uv), truly = linear(coarse.uv);
  // Exact inside; at the rim the two sheets' chords lie a little apart.
  expect(Math.max(...moved.map((x, i) => Math.abs(x - truly[i]!)))).toBeLessThan(0.03);
});
