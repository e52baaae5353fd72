// How much nearer the pattern that is corrected for its leather comes to its marks when it is pulled over, before anything is learnt from that.
import { describe, expect, test } from "vitest";
import { correctFlat } from "#lasting/correct.ts";
import { byName, endNames } from "#lasting/log.ts";
import { pullOver } from "#lasting/pull-over.ts";
import { wholeUpper } from "#lasting/upper.ts";
import { exampleTable, readyToPull } from "../support/ready-to-pull.ts";

describe.each(["goat", "calf", "nappa"] as const)("the pattern corrected for %s", (upper) => {
  const input = readyToPull({ upper }), { flat, last } = exampleTable();
  const missed = (uv: Float64Array) => {
    const { ends, asked } = pullOver({ ...input, cut: wholeUpper({ ...flat, uv }) });
    return Object.fromEntries(endNames.map((name) => [name, byName(ends)[name] - byName(asked)[name]])) as Record<(typeof endNames)[number], number>;
  };
  const plain = missed(flat.uv), corrected = missed(correctFlat(flat, input.fabric, input.settings, { last }).flat.uv);
  const worst = (miss: typeof plain): number => Math.max(...endNames.map((name) => Math.abs(miss[name])));

  test("ends nearer to its marks, throat and sides together", () => {
    expect(worst(corrected)).toBeLessThan(worst(plain) - 0.2);
    expect(Math.abs(corrected.innerHeightMm) + Math.abs(corrected.outerHeightMm)).toBeLessThan(Math.abs(plain.innerHeightMm) + Math.abs(plain.outerHeightMm) - 0.3);
  });
  test("opens less deep at the throat, and ends within 1 mm of what is asked or 1 mm nearer to it", () => {
    expect(corrected.throatDepthMm).toBeGreaterThan(plain.throatDepthMm);
    expect(Math.abs(corrected.throatDepthMm)).toBeLessThan(Math.max(1, Math.abs(plain.throatDepthMm) - 1));
  });
});
