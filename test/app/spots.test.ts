import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { finding } from "#base/findings.ts";
import type { Rules } from "#job/run-options.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lineRulesFor } from "#lines/rules.ts";
import { pieceRulesFor } from "#pieces/rules.ts";
import { shellRulesFor } from "#shell/rules.ts";
import { spotOf, stationOf, tell } from "#app/state/spots.ts";

const last = lastFromMeasures(demoMeasurements, "demo", unwatched);
const rules = { line: lineRulesFor(last), shell: shellRulesFor(last), piece: pieceRulesFor(last) } satisfies Rules;

describe("the number a finding speaks of", () => {
  test("is found by the name its rule has, for every number of lines, shell and pieces", () => {
    for (const [key, rule] of Object.entries(rules.line)) expect(spotOf(finding("line-not-a-number", { what: rule.name }), rules)).toBe(`lines ${key}`);
    for (const [key, rule] of Object.entries(rules.shell)) expect(spotOf(finding("shell-setting-impossible", { name: rule.name, value: -1, least: 0, most: 100 }), rules)).toBe(`shell ${key}`);
    for (const [key, rule] of Object.entries(rules.piece)) expect(spotOf(finding("piece-setting-impossible", { name: rule.name, value: -1, least: 0, most: 100 }), rules)).toBe(`pieces ${key}`);
  });

  test("is found for measures, sides and spring, and is nothing where a finding speaks of more than one", () => {
    expect(spotOf(finding("measure-out-of-range", { measure: "stickLength", askedMm: 1, fromMm: 2, toMm: 3 }), undefined)).toBe("last stickLengthMm");
    expect(spotOf(finding("topline-rises-to-hump", { half: "outer" }), rules)).toBe("lines sideHeightLateralMm");
    expect(spotOf(finding("spring-too-wide", { springMm: 90, leastMm: -60, mostMm: 60 }), rules)).toBe("shell springMm");
    expect(spotOf(finding("topline-crosses-feather", {}), rules)).toBeUndefined();
    expect(["last ballWidthMm", "lines backHeightMm", "pieces sockInMm", "shell springMm"].map((s) => stationOf(s as Parameters<typeof stationOf>[0]))).toEqual(["Last", "Lines", "Pieces", "Shell"]);
  });
});

describe("the sentence beside a field", () => {
  test("says a share in percent, as the field does, and leaves the reason to the word why", () => {
    const rule = rules.line.lowestAtMedial;
    const said = tell(finding("line-out-of-range", { what: rule.name, value: 0.7, min: rule.min, max: rule.max, unit: rule.unit, whyItMatters: rule.why }));
    expect(said).toContain("70 % of the length; 42 to 58 % of the length is usual");
    expect(said).not.toContain(rule.why);
    expect(tell(finding("line-too-small", { what: rule.name, value: 0.07, least: 0.2, unit: rule.unit }))).toMatch(/of 7 % .* 20 %/);
  });
});
