import { expect, test } from "vitest";
import { flatten } from "#flatten/flatten.ts";
import { pumpCounts, pumpShell } from "../support/formula-surfaces.ts";

// Does the pattern depend on how finely the last was meshed? The aim, 0.1 mm along the outline, is a third of what a knife
// follows of a drawn line (common practice, no source).

interface Laid {
  readonly energy: number;
  /** Between the heel ends at the topline, mm. */
  readonly gap: number;
  /** Point at share s of a row, linear between its vertices. */
  readonly at: (row: "feather" | "topline", s: number) => readonly [number, number];
}

/** Laid flat as it lies of itself, or with the heel ends of the topline tied to a distance: with the spring fixed. */
function laid(triangles: number, gapMm?: number): Laid {
  const counts = pumpCounts(triangles);
  const start = (row: number) => counts.slice(0, row).reduce((sum, n) => sum + n + 1, 0);
  const last = counts.length - 1;
  const [a, b] = [start(last), start(last) + counts[last]!];
  const ties = gapMm === undefined ? [] : [{ a, b, targetMm: gapMm, weight: 10 }];
  const { uv, energy } = flatten(pumpShell(triangles), { toleranceMm: 1e-4, ties });
  return {
    energy,
    gap: Math.hypot(uv[2 * a]! - uv[2 * b]!, uv[2 * a + 1]! - uv[2 * b + 1]!),
    at: (row, s) => {
      const r = row === "feather" ? 0 : last;
      const along = s * counts[r]!;
      const k = Math.min(Math.floor(along), counts[r]! - 1);
      const i = 2 * (start(r) + k);
      return [uv[i]! + (along - k) * (uv[i + 2]! - uv[i]!), uv[i + 1]! + (along - k) * (uv[i + 3]! - uv[i + 1]!)];
    },
  };
}

/** Largest distance of like points once the best rigid motion (least squares, in closed form) is taken out. */
function worstApart(one: readonly (readonly [number, number])[], other: readonly (readonly [number, number])[]): number {
  const mean = (list: typeof one, d: 0 | 1) => list.reduce((sum, p) => sum + p[d], 0) / list.length;
  const centred = (list: typeof one) => list.map((p) => [p[0] - mean(list, 0), p[1] - mean(list, 1)] as const);
  const [a, b] = [centred(one), centred(other)];
  const angle = Math.atan2(a.reduce((sum, p, k) => sum + p[0] * b[k]![1] - p[1] * b[k]![0], 0), a.reduce((sum, p, k) => sum + p[0] * b[k]![0] + p[1] * b[k]![1], 0));
  return Math.max(...a.map((p, k) => Math.hypot(Math.cos(angle) * p[0] - Math.sin(angle) * p[1] - b[k]![0], Math.sin(angle) * p[0] + Math.cos(angle) * p[1] - b[k]![1])));
}

const outline = ({ at }: Laid) => (["feather", "topline"] as const).flatMap((row) => Array.from({ length: 201 }, (_, k) => at(row, k / 200)));

test("10,000 and 100,000 triangles: outlines at most 0.1 mm apart with the spring fixed, the free gap twice that, both errors of second order", () => {
  const [coarse, middle, fine] = [10_000, 40_000, 100_000].map((n) => laid(n)) as [Laid, Laid, Laid];
  const tied = [10_000, 100_000].map((n) => outline(laid(n, fine.gap))) as [ReturnType<typeof outline>, ReturnType<typeof outline>];
  expect(worstApart(...tied)).toBeLessThan(0.1);
  // Free, the heel ends swing on the soft mode, which weighs nothing: 0.34 mm of gap for some 0.03 % of stretch.
  expect(worstApart(outline(coarse), outline(fine))).toBeLessThan(0.2);
  // Errors c / n: the differences 10k to 40k and 40k to 100k stand as 1/10 − 1/40 to 1/40 − 1/100, 5 to 1.
  for (const of of ["energy", "gap"] as const) expect(Math.abs(Math.log((coarse[of] - middle[of]) / (middle[of] - fine[of]) / 5))).toBeLessThan(0.2);
}, 30_000);
