// Allowances against Steiner's formula for parallel bodies (A + P d + π d², P + 2 π d; J. Steiner 1840) and what follows from it by hand.
import { describe, expect, test } from "vitest";
import { netArea, stripsArea } from "#pieces/check/balance.ts";
import { cutPanels } from "#pieces/check/widths.ts";
import { evenAllowance } from "#pieces/edges/allowance.ts";
import { cutPanel } from "#pieces/edges/cut-panel.ts";
import { edgeOf } from "#pieces/net-upper.ts";
import type { NetEdge, NetPanel } from "#pieces/panel.ts";
import { resample } from "#plane/along.ts";
import { evenWidth, offsetEdge, offsetLoop } from "#plane/edge-offset.ts";
import { area, lengthOf, perimeter } from "#plane/measure.ts";
import { arcPoints } from "../support/outlines.ts";

/** A rectangle 100 × 60 grown by `d` with round corners, `steps` chords in each quarter. */
function rounded(d: number, steps: number) {
  const corner = (cx: number, cy: number, from: number) => [...arcPoints(cx, cy, d, from, from + Math.PI / 2, steps)];
  const straight = (xy: readonly number[]) => [...resample({ xy: Float64Array.from(xy) }, 0.5).xy].slice(2, -2);
  return {
    xy: Float64Array.from([
      ...corner(0, 0, Math.PI), ...straight([0, -d, 100, -d]), ...corner(100, 0, -Math.PI / 2), ...straight([100 + d, 0, 100 + d, 60]),
      ...corner(100, 60, 0), ...straight([100, 60 + d, 0, 60 + d]), ...corner(0, 60, Math.PI / 2), ...straight([-d, 60, -d, 0]),
    ]),
  };
}

/** The rectangle as a panel of four edges. */
const sides: readonly (readonly [number, number, number, number])[] = [[0, 0, 100, 0], [100, 0, 100, 60], [100, 60, 0, 60], [0, 60, 0, 0]];
const rectangle: NetPanel = {
  name: "vamp",
  edges: sides.map((xy): NetEdge => ({ ...edgeOf(resample({ xy: Float64Array.from(xy) }, 1)), role: "side" })),
  places: [],
};

describe("the offset that allowances are drawn by", () => {
  test("5 mm round a rectangle 100 × 60, then 7 mm more: the values for 5 and for 12", () => {
    const five = rounded(5, 400);
    expect(Math.abs(area(five) / 7678.539816 - 1)).toBeLessThan(2e-4);
    expect(Math.abs(perimeter(five) / 351.4159265 - 1)).toBeLessThan(2e-4);
    const twelve = offsetLoop(five, evenWidth(five, 7));
    expect(Math.abs(area(twelve) / 10292.38934 - 1)).toBeLessThan(2e-4);
    expect(Math.abs(perimeter(twelve) / 395.3982237 - 1)).toBeLessThan(2e-4);
  });

  test("12 mm on all four edges with corners run on: 124 × 84", () => {
    const { outline } = cutPanel(rectangle, rectangle.edges.map((e) => evenAllowance(e, "seam", 12)));
    expect(area(outline)).toBeCloseTo(10416, 9);
    expect(perimeter(outline)).toBeCloseTo(2 * (124 + 84), 9);
  });

  test("a width of its own on each edge: (100 + 4 + 8) × (60 + 2 + 6), and the balance says the same by strips", () => {
    const widths = [2, 4, 6, 8];
    const { outline } = cutPanel(rectangle, rectangle.edges.map((e, k) => evenAllowance(e, "seam", widths[k]!)));
    expect(area(outline)).toBeCloseTo(112 * 68, 9);
    const draft = { name: "vamp", material: "upper leather", net: false, outline, marks: [], labels: [], directionDeg: 0, ground: "vamp" } as const;
    const [cut] = cutPanels([rectangle], [draft]);
    expect(netArea(rectangle)).toBeCloseTo(6000, 9);
    expect(stripsArea(cut!)).toBeCloseTo(112 * 68 - 6000, 6);
  });

  // ΔL = d θ for an arc; 2 π t for every closed convex girth: a fold, a seam or a thickness on a round edge.
  test.each([[4.5], [12], [-12]])("an arc of 80 mm radius over a quarter turn, by %d mm", (d) => {
    const arc = { xy: arcPoints(0, 0, 80, 0, Math.PI / 2, 4000) };
    expect(Math.abs(lengthOf(offsetEdge(arc, evenWidth(arc, d))) - (80 + d) * (Math.PI / 2))).toBeLessThan(1e-4);
  });

  test.each([[1.0, 6.2832], [1.2, 7.5398], [1.3, 8.1681], [1.5, 9.4248], [2.2, 13.823]])("leather %d mm thick round a heel's section: the girth grows by %d mm", (t, more) => {
    const section = rounded(20, 4000);
    expect(Math.abs(perimeter(offsetLoop(section, evenWidth(section, t))) - perimeter(section) - more)).toBeLessThan(2e-3);
  });

  test("a strip whose width changes: its area is ∫ w ds + ½ ∫ w² dθ", () => {
    // A quarter ring of radius 50 whose width grows from 10 to 20 mm with the angle: the outer edge is r = 60 + 20 θ / π.
    const n = 2000;
    const arc = { xy: arcPoints(0, 0, 50, 0, Math.PI / 2, n) };
    const outer = offsetEdge(arc, Float64Array.from({ length: n + 1 }, (_, i) => 10 + (10 * i) / n));
    const ring = { xy: Float64Array.from([...outer.xy, ...[...arc.xy].reduce<number[]>((all, v, i, xy) => (i % 2 === 0 ? [v, xy[i + 1]!, ...all] : all), [])]) };
    const q = Math.PI / 2;
    // ½ ∫ (60 + 10 θ/q)² − 50² dθ over 0 … q = ½ q (3600 + 600 + 100/3 − 2500).
    expect(Math.abs(area(ring) / ((q / 2) * (1700 + 100 / 3)) - 1)).toBeLessThan(1e-5);
  });
});
