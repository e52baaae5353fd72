// Figures of the trade that nothing else here is held against, each with its source; and the second example, whose every word must be read.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { checkedJob } from "#job/job-file.ts";
import { forceUnits } from "#leather/strip-csv-units.ts";
import { ofUnit } from "#making/amounts/units.ts";
import { makingOf } from "#making/making-of.ts";
import { usualSkinFt2 } from "#making/needs/skins.ts";
import { skinWaste, yieldOf } from "#making/needs/waste.ts";
import { makingInput } from "../support/making-pairs.ts";

describe("leather by figures of the trade", () => {
  test("180 kg/cm², which a clothing leather has to bear, are 17.652 N/mm² by the kilogram that hangs on a strip (a standard as an inspector's page quotes it, and standard gravity)", () => {
    expect(Math.abs((180 * forceUnits.kg) / 100 - 17.652)).toBeLessThan(1e-3);
  });

  const goats = ofUnit(usualSkinFt2.goat, "ft2"), onPieces = (pieceDm2: number, skinMm2: number): number => skinWaste(ofUnit(pieceDm2, "dm2"), skinMm2, { said: true }).onPieces;

  test("what falls away beside pieces laid close is 15 % (cow), 20 to 25 % (kid, goat, calf), 10 % (lining) on their area (a trade site on measuring pattern areas, part 4): the estimate, which has the skin's edge as well, is never below", () => {
    for (const pieceDm2 of [0.3, 0.6, 1, 2, 3]) {
      expect(onPieces(pieceDm2, ofUnit(usualSkinFt2.cow, "ft2"))).toBeGreaterThan(0.15);
      expect(onPieces(pieceDm2, goats)).toBeGreaterThan(0.25);
      expect(onPieces(pieceDm2, ofUnit(usualSkinFt2.calf, "ft2"))).toBeGreaterThan(0.25);
      expect(onPieces(pieceDm2, ofUnit(usualSkinFt2["lining goat"], "ft2"))).toBeGreaterThan(0.1);
    }
  });

  test("upholsterers buy 18 ft² for 13.5 ft² of covers, a third on top (a seller's rule); shoe pieces from a side of cow come within 6 points of it", () => {
    for (const pieceDm2 of [1, 1.5, 2, 3]) expect(Math.abs(onPieces(pieceDm2, ofUnit(usualSkinFt2.cow, "ft2")) - (18 / 13.5 - 1))).toBeLessThan(0.06);
  });

  test("an amateur's rule is 30 % on top (a maker's blog): small pieces on a goat skin come within 10 points of it, a whole cut takes more", () => {
    expect(Math.abs(onPieces(0.7, goats) - 0.3)).toBeLessThan(0.1);
    expect(onPieces(6, goats)).toBeGreaterThan(0.5);
  });

  test("the round edge costs more where the pattern is large beside the skin (two engineers' method of 1922): the same pieces, a skin four times as large, and pieces a quarter as large on the same skin lose alike", () => {
    const skin = goats, piece = ofUnit(1.6, "dm2");
    expect(yieldOf(piece, 4 * skin)).toBeGreaterThan(yieldOf(piece, skin));
    expect(yieldOf(piece, 4 * skin)).toBeCloseTo(yieldOf(piece / 4, skin), 12);
  });
});

describe("the second example of the project", () => {
  const job = checkedJob("quarters-39.json", JSON.parse(readFileSync("examples/quarters-39.json", "utf8")));
  const { pairs, cost, toBuy, calendar, findings } = makingOf(makingInput({ said: job.making }, job));

  test("is read to its last word: nothing to look at, and two goods it leaves without a price", () => {
    expect(findings.filter((found) => severityOf(found) !== "note").map(({ code }) => code)).toEqual([]);
    expect(cost.unpriced).toEqual(["lasting tacks", "edge finish"]);
    expect(pairs).toBe(3);
  });

  test("prices the same leather alike in whatever unit it is said", () => {
    const costOf = (good: string): number => { const { amount, cost: money } = cost.lines.find((line) => line.good === good)!; return money! / amount; };
    expect(costOf("upper leather")).toBeCloseTo(8.75 / 92_903.04, 12);
    expect(costOf("lining leather")).toBeCloseTo(47.5 / 1e6, 12);
    expect(costOf("sock leather")).toBeCloseTo(0.6 / 1e4, 12);
    expect(costOf("sole leather")).toBeCloseTo(0.012 / 100, 12);
    expect(costOf("thread")).toBeCloseTo(6.9 / 914_400, 12);
    expect(costOf("latex")).toBeCloseTo(8.2 / 453.59237, 12);
    expect(costOf("needles")).toBeCloseTo(3.5 / 12, 12);
  });

  test("takes the shelf off: 3 of its 9 ft² and more of upper leather, all of the stout tacks, a pair of shanks", () => {
    const of = (good: string) => toBuy.find((one) => one.good === good)!;
    expect(of("upper leather").needed - of("upper leather").short).toBeCloseTo(3 * 92_903.04, 3);
    expect(of("lasting tacks").short).toBe(0);
    expect(of("shanks").short).toBe(4);
  });

  test("has its calendar begin on the first Tuesday, 5 January 2027, at half past seven", () => {
    expect(calendar?.sessions[0]).toMatchObject({ date: "2027-01-05", fromMin: 19 * 60 + 30, toMin: 22 * 60 });
  });
});
