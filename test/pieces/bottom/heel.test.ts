import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bottomPieces } from "#pieces/bottom/bottom-pieces.ts";
import { heelStack, type HeelLayer } from "#pieces/bottom/heel-stack.ts";
import { hullHeight, lowerHull } from "#pieces/bottom/lower-hull.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { crossArc, pitched, type FormulaBottom } from "../../support/formula-bottoms.ts";

const none = { counterMm: 0, counterInnerMm: 0, counterOuterMm: 0, puffReachMm: 0 };
const rules = pieceRulesFor({ measures: { ballWidth: 76, seatWidth: 60 } });
const used = { upperThicknessMm: 1.1, liningThicknessMm: 0.8, toePuffMm: 0, firstBoardMm: 2, secondBoardMm: 1.8, soleMm: 4.5, liftMm: 5, topPieceMm: 5.5 };
const marginThick = 1.9;

function made({ last, bottom, net }: FormulaBottom, own: Partial<PieceSettings> = {}) {
  return bottomPieces({ net, on: { last, bottom }, settings: pieceSettingsFrom(rules, { ...used, ...own }), shell: none, chosen: { sock: "full", toeCap: false, backStrip: false, sideLining: false }, labels: { title: "", size: "" } });
}
const sums = (layers: readonly HeelLayer[]) => [layers.reduce((s, l) => s + l.backMm, 0), layers.reduce((s, l) => s + l.breastMm, 0)] as const;

describe("a heel of lifts", () => {
  // Handbook's row, common practice without a source: a 15 mm heel is a rand of 2 to 3, one or two lifts and a top piece of 5 to 6.
  test("15 mm are made up as the trade does", () => {
    for (const rand of [2, 2.5, 3]) {
      const layers = heelStack({ backMm: 15 - rand, breastMm: 15 - rand, liftMm: 5, topPieceMm: 5.5 });
      const lifts = layers.filter((l) => l.name.startsWith("lift"));
      expect(lifts.length).toBeGreaterThanOrEqual(1);
      expect(lifts.length).toBeLessThanOrEqual(2);
      expect(layers[layers.length - 1]).toEqual({ name: "top piece", backMm: 5.5, breastMm: 5.5 });
    }
  });

  test("layers add up at back and breast, none is thicker than its leather, none turns over", () => {
    const height = fc.double({ min: 2.5, max: 40, noNaN: true });
    fc.assert(fc.property(height, fc.double({ min: -2.5, max: 2.5, noNaN: true }), fc.double({ min: 4, max: 6, noNaN: true }), fc.double({ min: 5, max: 6, noNaN: true }), (backMm, rise, liftMm, topPieceMm) => {
      const breastMm = Math.max(0.1, backMm + rise);
      const layers = heelStack({ backMm, breastMm, liftMm, topPieceMm });
      const [back, breast] = sums(layers);
      expect(layers.length).toBeGreaterThan(0);
      expect(Math.abs(back - backMm)).toBeLessThan(1e-9);
      expect(Math.abs(breast - breastMm)).toBeLessThan(1e-9);
      for (const l of layers) {
        expect(Math.min(l.backMm, l.breastMm)).toBeGreaterThan(0);
        if (l.name.startsWith("lift")) expect(Math.max(l.backMm, l.breastMm)).toBeLessThanOrEqual(liftMm + 1 + 1e-9);
      }
      // All under the first are even.
      for (const l of layers.slice(1)) expect(Math.abs(l.backMm - l.breastMm)).toBeLessThan(1e-9);
    }));
  });

  test.each([[24, 0], [20, 1.5], [28, 3], [16, -1]] as const)("a plane seat %i mm high that falls by %f degrees", (heelMm, pitchDeg) => {
    const p = (pitchDeg * Math.PI) / 180;
    const shape = pitched(250, 34, heelMm, pitchDeg, 70, 115);
    const { made: { heel } } = made(shape);
    // Square to the seat lie margin, both boards and sole; under the tread margin, one board and sole.
    const back = heelMm - (marginThick + 2 + 1.8 + 4.5) / Math.cos(p) + marginThick + 2 + 4.5;
    expect(Math.abs(heel!.backMm - back)).toBeLessThan(0.01);
    expect(Math.abs(heel!.breastMm - (back - 62.5 * Math.tan(p)))).toBeLessThan(0.01);
    expect(Math.abs(heel!.pitchDeg - pitchDeg)).toBeLessThan(0.01);
    const [b, f] = sums(heel!.layers);
    expect(Math.abs(b - heel!.backMm)).toBeLessThan(0.01);
    expect(Math.abs(f - heel!.breastMm)).toBeLessThan(0.01);
    // A plane seat needs no levelling.
    for (const { offMm } of heel!.splitEdge) expect(Math.abs(offMm)).toBeLessThan(0.02);
  });

  test("a round seat: the split lift is as thick as the sole's edge stands off the lowest place of the sole", () => {
    const radius = 160, half = 34, whole = 2 + 1.8 + 4.5;
    // Without margins the sole lies on the insole alone, so that its lowest place is the middle.
    const { made: { heel } } = made(crossArc(250, half, radius, "round"), { upperThicknessMm: 0, liningThicknessMm: 0 });
    expect(Math.abs(heel!.pitchDeg)).toBeLessThan(0.02);
    const level = Math.sqrt(1 - (half / radius) ** 2);
    const off = radius * (1 - level) - whole * (1 / level - 1);
    const straight = heel!.splitEdge.filter(({ alongMm }) => Math.abs(alongMm) > 58);
    expect(straight.length).toBeGreaterThan(4);
    for (const { offMm } of straight) expect(Math.abs(offMm - off)).toBeLessThan(0.05);
  });

  test("a low last gets a top piece alone, a very low one none, and one that stands wrong is told", () => {
    const codes = (heelMm: number, pitchDeg = 0) => {
      const out = made(pitched(250, 34, heelMm, pitchDeg, 70, 115));
      return { codes: out.findings.map((f) => f.code), names: out.drafts.map((d) => d.name) };
    };
    const low = codes(6.5);
    expect(low.codes).toContain("heel-top-piece-only");
    expect(low.names.filter((n) => n === "top piece" || n.startsWith("lift"))).toEqual(["top piece"]);
    const none = codes(3);
    expect(none.codes).toContain("heel-none");
    expect(none.names).not.toContain("top piece");
    expect(codes(1).codes).toContain("heel-below-ground");
    expect(codes(24, 5).codes).toContain("heel-wedge");
  });

  test("numbers with which nothing can be built are refused, odd ones told, at the number", () => {
    const shape = pitched(250, 34, 20, 0, 70, 115);
    for (const own of [{ soleMm: 0 }, { liftMm: 0 }, { liftMm: Number.NaN }, { firstBoardMm: 9 }, { topPieceMm: 0 }] as const) expect(() => made(shape, own)).toThrow(/cannot be used/);
    expect(() => made(shape, { soleMm: 9 })).not.toThrow();
    expect(made(shape, { shankMm: 170 }).findings.map((f) => f.code)).toContain("shank-near-joint");
  });
});

test("the line that hangs below points: no point under it, and its corners are points", () => {
  fc.assert(fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 40 }), (heights) => {
    const at = heights.map((_, i) => i);
    const hull = lowerHull(at, heights);
    for (const i of at) expect(hullHeight(hull, i)).toBeLessThanOrEqual(heights[i]! + 1e-9);
    for (const [k, x] of hull.at.entries()) expect(hull.height[k]).toBe(heights[x]);
    for (let k = 2; k < hull.at.length; k++) {
      const slope = (i: number): number => (hull.height[i]! - hull.height[i - 1]!) / (hull.at[i]! - hull.at[i - 1]!);
      expect(slope(k)).toBeGreaterThan(slope(k - 1));
    }
  }));
});
