import { describe, expect, test } from "vitest";
import { fabricOf, gatherLimit } from "#lasting/fabric.ts";
import { lastingFrom } from "#lasting/settings.ts";
import type { Leather } from "#leather/leather.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import { stripForce } from "#leather/uniaxial.ts";
import { pleatsOf } from "#leather/gathering.ts";
import { toplineEdges } from "#shell/settings.ts";

// Two leathers of our own invention.
const spread = { along: 0.2, across: 0.2, bias: 0.2, common: 0.2 };
const goat: Leather = {
  name: "goat", known: "goat", spread, thicknessMm: 0.9, grainLimit: 0.18, breakLimit: 0.45, source: "invented",
  numbers: { along: 40, across: 18, bias: 20, poisson: 0.4, toe: 0.02, early: 0.15 },
};
const lining: Leather = { ...goat, name: "lining", thicknessMm: 0.6, grainLimit: 0.1, breakLimit: 0.3, numbers: { ...goat.numbers, along: 20, across: 15, bias: 14 } };
const settings = lastingFrom({ tapeN: 500 });

describe("upper and lining as one fabric", () => {
  test("carry the sum of both strips, each cut in its own direction", () => {
    const { law } = fabricOf(goat, lining, lastingFrom({ upperTurnDeg: 0, liningTurnDeg: 90 }), "taped");
    // Upper along its tight way, lining along its loose way; both free to narrow by different shares, so a little more than each alone.
    const alone = stripForce(new ToeLaw(goat.numbers), 1, 0, 1.06).forcePerMm + stripForce(new ToeLaw(lining.numbers), 0, 1, 1.06).forcePerMm;
    const both = stripForce(law, 1, 0, 1.06).forcePerMm;
    expect(both).toBeGreaterThanOrEqual(alone);
    expect(both).toBeLessThan(1.05 * alone);
  });

  test("without a lining it is the upper alone; turned by 90° its ways change places", () => {
    const plain = new ToeLaw(goat.numbers);
    const law = (turn: number) => fabricOf(goat, undefined, lastingFrom({ upperTurnDeg: turn }), "taped").law;
    for (const [cos, sin] of [[1, 0], [0, 1], [0.6, 0.8]] as const) {
      expect(stripForce(law(0), cos, sin, 1.05).forcePerMm).toBeCloseTo(stripForce(plain, cos, sin, 1.05).forcePerMm, 9);
      expect(stripForce(law(90), cos, sin, 1.05).forcePerMm).toBeCloseTo(stripForce(plain, sin, -cos, 1.05).forcePerMm, 9);
    }
    // Counter-clockwise: turned by 30°, the tight way lies at 30°.
    const at = (degrees: number) => stripForce(law(30), Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180), 1.05).forcePerMm;
    expect(at(30)).toBeCloseTo(stripForce(plain, 1, 0, 1.05).forcePerMm, 9);
    expect(at(30)).toBeGreaterThan(at(-30));
  });

  test("gathers, and lies in pleats beyond", () => {
    const { law, gatherLimit: limit } = fabricOf(goat, lining, settings, "taped");
    expect(limit).toBe(gatherLimit);
    expect(pleatsOf(law, 0, 2 * limit, 0)).toBeGreaterThan(0);
    expect(pleatsOf(law, 0.05, 0.05, 0)).toBe(0);
  });

  test("bends as two layers that slide: B = E t³/12 each (any text on plates)", () => {
    const one = fabricOf(goat, undefined, settings, "taped").bend, two = fabricOf(goat, lining, settings, "taped").bend;
    expect(one).toBeCloseTo(((40 / 0.9) * 0.9 ** 3) / 12, 12);
    expect(two - one).toBeCloseTo((20 * 0.36) / 12, 12);
  });

  test("bears what its upper bears", () => {
    const { grainLimit, breakLimit } = fabricOf(goat, lining, settings, "raw");
    expect([grainLimit, breakLimit]).toEqual([0.18, 0.45]);
  });
});

test("only a taped edge has the tape; a bound or wrapped one its strip of leather, 14 or 19 by 0.6 mm; others nothing", () => {
  const held = Object.fromEntries(toplineEdges.map((edge) => [edge, fabricOf(goat, lining, settings, edge).tapeN]));
  expect(held).toMatchObject({ taped: 500, folded: 0, raw: 0, bagged: 0 });
  expect(held["bound"]).toBeCloseTo(((14 * 0.6) / 0.9) * 40, 9);
  expect(held["wrapped"]).toBeCloseTo(((19 * 0.6) / 0.9) * 40, 9);
});
