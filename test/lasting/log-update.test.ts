// The makers here are made up: leather, skins and hands are drawn from stated scatters. What is checked is that the update is the one of
// textbooks (conjugate normal), and that it does what it is for: the third pair is foretold better than the first.
import { expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { handMm, lastSpread, skinSpread, updatedBy } from "#lasting/log-update.ts";
import type { ShoeEntry } from "#lasting/log.ts";
import type { Leather } from "#leather/leather.ts";
import { seeded } from "../photo/support/chance.ts";

const leather: Leather = {
  name: "red goat", known: "goat", numbers: { along: 30, across: 14, bias: 18, poisson: 0.4, toe: 0.02, early: 0.2 },
  spread: { along: 0.1, across: 0.1, bias: 0.15, common: 0.2 }, thicknessMm: 0.9, grainLimit: 0.2, breakLimit: 0.5, source: "Invented.",
};
const tenth = Math.log(1.1);
const entry = (pair: number, side: "left" | "right", throatDepthMm: number, more: Partial<ShoeEntry> = {}): ShoeEntry => ({
  pair, side, last: "37", leather: leather.name, measured: { throatDepthMm }, foretold: { throatDepthMm: 70, perTenthMm: -0.8 }, ...more,
});

test("one shoe moves the factor by the textbook's weights", () => {
  const { factor, low, high } = updatedBy(leather, [entry(1, "left", 68.4)]);
  const says = (-1.6 / -0.8) * tenth, variance = (handMm * tenth / 0.8) ** 2 + skinSpread ** 2;
  const precision = 1 / 0.2 ** 2 + 1 / variance, mean = says / variance / precision;
  expect(factor).toBeCloseTo(Math.exp(mean), 12);
  expect(Math.log(high / low) / 2).toBeCloseTo(1.2816 / Math.sqrt(precision), 9);
});

test("what was foretold with an earlier factor is held against that factor", () => {
  const first = updatedBy(leather, [entry(1, "left", 68.4), entry(1, "right", 68.4)]);
  const came = { foretold: { throatDepthMm: 68.9, perTenthMm: -0.8, factor: first.factor } };
  const again = updatedBy(leather, [entry(1, "left", 68.4), entry(1, "right", 68.4), entry(2, "left", 68.9, came), entry(2, "right", 68.9, came)]);
  // The second pair came as foretold: the factor it was foretold with is confirmed, and believed more.
  expect(again.factor).toBeCloseTo(first.factor, 1);
  expect(again.high / again.low).toBeLessThan(first.high / first.low);
});

test("other leathers do not count, other lasts count less, slips of the pen hardly", () => {
  expect(updatedBy(leather, [entry(1, "left", 66, { leather: "calf" })]).factor).toBe(1);
  const own = updatedBy(leather, [entry(1, "left", 68.4)], "37").factor, far = updatedBy(leather, [entry(1, "left", 68.4, { last: "38" })], "37");
  expect(own).toBeGreaterThan(far.factor);
  expect(far.factor).toBeGreaterThan(1);
  expect(far.explained.map(explain)[0]).toContain("made on another last and counts less");
  // Many shoes on one other last still leave that last's own share open.
  const many = Array.from({ length: 40 }, (_, k) => entry(k + 1, "left", 68.4, { last: "38" }));
  expect(Math.log(updatedBy(leather, many, "37").high / updatedBy(leather, many, "37").low) / 2 / 1.2816).toBeGreaterThan(1 / Math.sqrt(1 / 0.2 ** 2 + 1 / lastSpread ** 2) - 1e-9);
  expect(updatedBy(leather, [entry(1, "left", 40)]).factor).toBe(updatedBy(leather, [entry(1, "left", 50)]).factor);
});

test("shoes that tell nothing leave the leather as it was, and that is said", () => {
  const silent = [entry(1, "left", 68, { foretold: { throatDepthMm: 70, perTenthMm: 0.01 } }), entry(1, "right", 68, { foretold: undefined as never }), entry(2, "left", 68, { measured: { backHeightMm: 54 } })];
  const { leather: same, factor, explained } = updatedBy(leather, silent);
  expect([same, factor]).toEqual([leather, 1]);
  expect(explained.map(explain)).toEqual(["No shoe tells yet how much more or less red goat gives than its strips say: its shoes lack a measured throat, or nothing had been foretold of them."]);
});

test("it is explained pair by pair with its numbers", () => {
  const learned = updatedBy(leather, [entry(1, "left", 68.6), entry(1, "right", 68.2)]);
  expect(learned.explained.map(explain)).toEqual([
    "Pair 1: the throat came 1.6 mm nearer to the toe than foretold, as if the leather gave 1.21 times as much as its strips say. Against the strips it counts 84 in 100.",
    "Red goat is now taken to give 1.17 times as much as its strips say, with a band from 1.06 to 1.30. Your hand's own scatter is taken to be 0.7 mm at the throat of one shoe.",
  ]);
  expect(learned.leather.source).toBe("Invented. One pair of your own: it gives 1.17 times as much.");
  expect(learned.leather.numbers.along).toBeCloseTo(30 / learned.factor, 7);
  expect(learned.leather.spread.common).toBeLessThan(leather.spread.common);
});

/** A maker's first pairs: each is foretold with what those before it taught. Returns what the throat's middle missed, and whether the band of the factor held the truth. */
function maker(seed: number, perTenthMm: number, pairs: number): { readonly missMm: number[]; readonly held: boolean[]; readonly width: number[] } {
  const chance = seeded(seed), hand = handMm * Math.exp(0.3 * chance.normal());
  const truth = leather.spread.common * chance.normal();
  // A little bent, as true sensitivities are.
  const throat = (log: number): number => 70 + perTenthMm * (log / tenth) * (1 + 0.3 * log);
  const log: ShoeEntry[] = [], missMm: number[] = [], held: boolean[] = [], width: number[] = [];
  for (let pair = 1; pair <= pairs; pair++) {
    const learned = updatedBy(leather, log, "37"), own = Math.log(learned.factor);
    const came = throat(truth + skinSpread * chance.normal()), foretold = { throatDepthMm: throat(own), perTenthMm: perTenthMm, factor: learned.factor };
    held.push(truth >= Math.log(learned.low) && truth <= Math.log(learned.high));
    width.push(Math.log(learned.high / learned.low));
    missMm.push(Math.abs(came - foretold.throatDepthMm));
    for (const side of ["left", "right"] as const) log.push(entry(pair, side, Math.round(2 * (came + hand * chance.normal())) / 2, { foretold }));
  }
  return { missMm, held, width };
}

test.each([[-1], [-0.6], [1.4]])("over 400 makers the third pair is foretold clearly better than the first (%s mm a tenth)", (perTenthMm) => {
  const makers = Array.from({ length: 400 }, (_, k) => maker(k + 1, perTenthMm, 4));
  const mean = (pair: number): number => makers.reduce((sum, { missMm }) => sum + missMm[pair - 1]!, 0) / makers.length;
  expect(mean(3)).toBeLessThan(mean(1) / 1.8);
  expect(mean(2)).toBeLessThan(mean(1));
  // The band narrows from pair to pair, and holds the truth in about 80 of 100.
  const width = (pair: number): number => makers.reduce((sum, { width: w }) => sum + w[pair - 1]!, 0) / makers.length;
  for (const pair of [2, 3, 4]) expect(width(pair)).toBeLessThan(width(pair - 1));
  for (const p of [0, 1, 2, 3]) {
    const share = makers.filter(({ held }) => held[p]).length / makers.length;
    expect(share).toBeGreaterThan(0.74);
    expect(share).toBeLessThan(0.9);
  }
});
