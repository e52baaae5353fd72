import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { hollowUnder } from "#lasting/hollow.ts";
import type { Lasted } from "#lasting/lasted.ts";
import { MarkSearch } from "#lasting/mark-search.ts";
import { pullOver } from "#lasting/pull-over.ts";
import { tightN } from "#lasting/pulls.ts";
import { lastingFrom, type LastingChoices } from "#lasting/settings.ts";
import { lowestShares, shiftedTopline } from "#lasting/shift.ts";
import { wholeUpper } from "#lasting/upper.ts";
import { toplineOf } from "#shell/tension.ts";
import { exampleTable, readyToPull } from "../support/ready-to-pull.ts";

describe("how hard a draft is pulled to its mark", () => {
  /** Pulls by what the search says until it is content; `over` tells where the topline then stands. */
  const pulled = (before: readonly number[], mostN: number, over: (pullsN: readonly number[]) => readonly number[]) => {
    const search = new MarkSearch(before.map((_, k) => ({ number: 5 + k, mostN, mark: {} })), before);
    let pulls = 1;
    while (search.goesOn(over(search.pullsN))) pulls++;
    return { taken: search.taken, pulls, ends: over(search.taken.map(({ pullN }) => pullN)) };
  };

  test("comes to it whether the topline answers evenly, late or ever more", () => {
    for (const drawn of [(n: number) => 0.4 * n, (n: number) => Math.max(0, 0.5 * (n - 6)), (n: number) => 0.01 * n * n, (n: number) => 2 * Math.sqrt(n)]) {
      const { taken, pulls, ends } = pulled([4], 60, ([n]) => [4 - drawn(n!)]);
      expect(Math.abs(ends[0]!)).toBeLessThanOrEqual(0.2);
      expect(pulls).toBeLessThanOrEqual(6);
      expect(taken[0]!.shortMm).toBeUndefined();
    }
  });
  test("is just past tight where the topline stands there already, and the most where even that does not bring it down", () => {
    expect(pulled([-1], 25, ([n]) => [-1 - 0.1 * n!]).taken).toEqual([{ number: 5, pullN: tightN }]);
    const { taken, pulls } = pulled([6], 25, ([n]) => [6 - 0.1 * n!]);
    expect(taken).toEqual([{ number: 5, pullN: 25, shortMm: 3.5 }]);
    expect(pulls).toBe(1);
  });
  test("never goes on where the upper lets go all at once: it stays above", () => {
    const { ends } = pulled([1.5], 25, ([n]) => [n! < 11 ? 1.5 - 0.05 * n! : -7]);
    expect(ends[0]).toBeGreaterThan(0);
  });
  test("is each side's own", () => {
    const { taken, ends } = pulled([3, 1], 25, ([a, b]) => [3 - 0.3 * a! - 0.02 * b!, 1 - 0.25 * b! - 0.02 * a!]);
    for (const mm of ends) expect(Math.abs(mm)).toBeLessThanOrEqual(0.2);
    expect(taken[0]!.pullN).toBeGreaterThan(taken[1]!.pullN + 3);
  });
});

describe("an upper cut higher than it need be", () => {
  const { flat, drawn: { lines } } = exampleTable();
  const usual = lastingFrom();
  const pull = (settings: Partial<LastingChoices>, higherMm = 6): Lasted => {
    const uv = shiftedTopline(flat.shell, flat.uv, lowestShares(lines), { throatShiftMm: 0, backShiftMm: 2, innerShiftMm: higherMm, outerShiftMm: higherMm });
    return pullOver({ ...readyToPull({ settings }), cut: wholeUpper({ ...flat, uv }) });
  };
  const side = ({ ends, asked }: Lasted, half: "medial" | "lateral"): number => ends.lowestMm[half] - asked.lowestMm[half];
  const atMarks = pull({}), byForce = pull({ stopAtMarks: false });

  // A handbook of shoemaking: the back's draft sets the back height; too much and the quarters are low and do not grip. So one looks at the mark.
  test("is drawn down to its marks and no farther, with less than the most pull", () => {
    expect(Math.abs(atMarks.ends.backHeightMm - atMarks.asked.backHeightMm)).toBeLessThan(2.1);
    for (const half of ["medial", "lateral"] as const) expect(Math.abs(side(atMarks, half))).toBeLessThan(1);
    const [inner, outer] = [atMarks.drafts[4]!, atMarks.drafts[5]!];
    for (const { pullN } of [inner, outer]) expect(pullN > tightN && pullN <= usual.pullSeatSideN).toBe(true);
    expect(atMarks.settled).toBe(true);
  });
  test("is drawn far below them by pulls as hard that are not stopped", () => {
    expect(byForce.drafts.map(({ pullN }) => pullN)).toEqual([100, 50, 50, 25, 25, 25, 20, 20, 25, 25]);
    for (const half of ["medial", "lateral"] as const) expect(side(byForce, half)).toBeLessThan(side(atMarks, half) - 2);
  });
  test("keeps short of them where the most pull is too little, and that is told", () => {
    const { drafts, findings } = pull({ pullSeatSideN: 4 }, 8);
    expect(drafts[4]!.pullN).toBe(4);
    expect(drafts[4]!.shortMm).toBeGreaterThan(0.5);
    expect(findings.map(explain).join("\n")).toMatch(/Draft 5, seat side, inside, keeps short of its mark: pulled with 4 N, the topline still stands \d\.\d mm above it\./);
  });
});

test("the hollow that a taut thread spans is that of the longest chord, looked for pair by pair", () => {
  const { shell } = exampleTable().flat, p = shell.mesh.positions;
  for (const half of ["medial", "lateral"] as const) {
    const ids = toplineOf(shell, half), hollow = hollowUnder(shell, half), deepest = hollow.indexOf(Math.max(...hollow)), v = ids[deepest]!;
    let gap = 0;
    for (const a of ids) for (const b of ids) {
      const [ax, ay, bx, by] = [p[3 * a]!, Math.abs(p[3 * a + 1]!), p[3 * b]!, Math.abs(p[3 * b + 1]!)];
      if (!(ax < p[3 * v]! && bx > p[3 * v]!)) continue;
      gap = Math.max(gap, ((by - ay) * (p[3 * v]! - ax) - (bx - ax) * (Math.abs(p[3 * v + 1]!) - ay)) / Math.hypot(bx - ax, by - ay));
    }
    expect(gap).toBeGreaterThan(3);
    // Told square to the last's wall, which leans in there by up to 25 degrees.
    expect(hollow[deepest]! / gap).toBeGreaterThan(1 - 1e-9);
    expect(hollow[deepest]! / gap).toBeLessThan(1.1);
    expect(Math.min(...hollow)).toBe(0);
  }
});

// Taut card and a taut tape do the same (docs/method/check.md): not a fault of the drafts.
test("flanks that a taut topline holds off are told as such, and count as nothing that a pattern has to put right", () => {
  const { findings, troubles } = pullOver(readyToPull());
  expect(findings.filter(({ code }) => code === "lasting-spans").length).toBe(2);
  expect(findings.some(({ code }) => code === "lasting-flank")).toBe(false);
  expect(troubles.filter(({ kind }) => kind === "stands off").every(({ spans }) => spans)).toBe(true);
});
