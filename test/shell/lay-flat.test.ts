import { beforeAll, describe, expect, test } from "vitest";
import { explain, type Finding } from "#base/findings.ts";
import { cutShell } from "#shell/cut.ts";
import { heelGap, layFlat, layFree, type FreeLay } from "#shell/lay-flat.ts";
import type { Shell } from "#shell/shell.ts";
import { toplineAsked } from "#shell/tension.ts";
import { demoBoard } from "../support/demo-shell.ts";

describe("a spring that cannot be laid", () => {
  let shell: Shell, free: FreeLay, apart: number;
  beforeAll(() => {
    const { board, drawn } = demoBoard();
    shell = cutShell(board, drawn, 2500);
    free = layFree(shell);
    apart = heelGap({ shell, uv: free.flat.uv });
  });

  test("is refused with what can: the heel ends cannot be swung past each other", () => {
    for (const mm of [apart - 9, apart + 1, 1e6, -1e6, NaN]) expect(() => layFlat(shell, mm, { free }), String(mm)).toThrow(new RegExp(`cannot be laid.* from -60 \\(apart\\) to ${Math.floor(apart - 10)} mm \\(together\\)`));
  });

  test("leaves the way apart open where a tight topline has brought the heel ends near each other", () => {
    const tight = (springMm: number) => layFlat(shell, springMm, { free, toplineMm: toplineAsked(shell, 0.076) });
    const near = tight(0);
    const told = near.findings.find((f): f is Extract<Finding, { code: "heel-ends-near" }> => f.code === "heel-ends-near")!;
    expect(heelGap(near)).toBeLessThan(12);
    // Closing it is refused, whatever the gap, with both ends; what the finding names is laid, and is enough.
    expect(() => tight(30)).toThrow(/from -60 \(apart\) to [01] mm/);
    expect(explain(told)).toContain("which swings them apart");
    const apart = tight(told.data.springMm!);
    expect(apart.findings.map((f) => f.code)).not.toContain("heel-ends-near");
    expect(heelGap(apart)).toBeGreaterThanOrEqual(20);
    expect(heelGap(tight(-60)) - heelGap(near)).toBeCloseTo(60, 0);
  });

  test("while one within that is laid as asked", () => {
    expect(apart - heelGap(layFlat(shell, 30, { free }))).toBeCloseTo(30, 0);
  });
});
