import { beforeAll, describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Last } from "#last/last.ts";
import { curveLength, pointOn } from "#last/surface-curve.ts";
import { drawingBoard, drawLines, type DrawingBoard } from "#lines/draw.ts";
import { featherHalf, footAtX, halves, halfSign } from "#lines/feather.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { demoBoard } from "../support/demo-shell.ts";
import { hasShared } from "../support/shared.ts";
import { lastNames, truthLast, truthOf, type Truth } from "../support/truth-last.ts";

const gap = (a: readonly number[], b: readonly number[]) => Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);

/** The invented example last always; the synthetic lasts of ../shared/data/lasts where they lie beside the project. */
const example = "the example last";
const names: readonly string[] = hasShared ? [example, ...lastNames] : [example];

describe.skipIf(!hasShared).each(lastNames)("lines against the truth of %s (../shared/data/lasts)", (name) => {
  let last: Last, truth: Truth, board: DrawingBoard;
  beforeAll(() => {
    last = truthLast(name);
    truth = truthOf(name);
    board = drawingBoard(last);
  });

  test("a throat depth of 55, 70 and 85 mm ends where the truth says", () => {
    const rules = lineRulesFor(last);
    for (const depth of [55, 70, 85]) {
      const { lines, topline } = drawLines(board, rules, settle(rules, { throatDepthMm: depth }));
      // The truth's ridge is sampled every 2 mm, so its chords cost a few hundredths.
      expect(gap(pointOn(lines.centre, 1e9), truth.points[`throat${depth}`]!)).toBeLessThan(0.1);
      expect(gap(pointOn(topline.medial, 1e9), truth.points[`throat${depth}`]!)).toBeLessThan(0.1);
    }
  });

  test("a tape laid up to the comb edge has the length that the truth gives for the wall", () => {
    for (const wall of truth.wallHeights)
      for (const half of halves) {
        if (wall[half].ends !== "comb edge") continue;
        const { foot } = footAtX(featherHalf(last.feather, half), wall.x)!;
        const arc = board.arcs.from(foot, 400);
        const top = arc.points.filter((_, i) => i % 3 === 2).findIndex((z) => z > truth.combHeight - 1e-3);
        // Chord error of 1.5 mm triangles, and the feather apex lies inside the rounding.
        expect(Math.abs(arc.arc[top]! - wall[half].surfaceLength)).toBeLessThan(0.35);
      }
  });
});

describe.each(names)("lines on %s", (name) => {
  let last: Last, board: DrawingBoard;
  beforeAll(() => {
    last = name === example ? demoBoard().last : truthLast(name);
    board = drawingBoard(last);
  });

  test("both halves leave the back and meet the throat square, and are lowest where asked", () => {
    const rules = lineRulesFor(last);
    const settings = settle(rules, {});
    const { topline, lines } = drawLines(board, rules, settings);
    for (const half of halves) {
      const curve = topline[half];
      const n = curve.points.length;
      const end = [0, 1, 2].map((d) => curve.points[n - 3 + d]! - curve.points[n - 12 + d]!);
      const length = Math.hypot(...end);
      // Square to the centre line: the last two millimetres run across the ridge; a radius of 26 mm turns by 0.04 on the way.
      const before = pointOn(last.centreRidge, settings.throatDepthMm - 2), after = pointOn(last.centreRidge, settings.throatDepthMm + 2);
      const ridge = [0, 1, 2].map((d) => after[d]! - before[d]!);
      expect(Math.abs(end.reduce((sum, e, d) => sum + e * ridge[d]!, 0)) / (length * Math.hypot(...ridge))).toBeLessThan(0.06);
      expect(Math.sign(end[1]!)).toBe(-halfSign(last, half));
      const low = half === "medial" ? lines.lowestMedial : lines.lowestLateral;
      const asked = half === "medial" ? settings.sideHeightMedialMm : settings.sideHeightLateralMm;
      expect(Math.abs(low.heightMm - asked)).toBeLessThan(0.1);
      for (const mark of half === "medial" ? lines.quarterHeights.medial : lines.quarterHeights.lateral) expect(mark.heightMm).toBeGreaterThan(low.heightMm - 0.02);
      expect(gap(pointOn(curve, 0), pointOn(last.backCurve, settings.backHeightMm))).toBeLessThan(1e-9);
    }
  });

  test("the defaults give nothing to look at", () => {
    const rules = lineRulesFor(last);
    const { lines } = drawLines(board, rules, settle(rules, {}));
    expect(lines.findings.filter((f) => severityOf(f) !== "note")).toEqual([]);
  });

  test("the topline is smooth: neighbouring steps turn by less than two degrees", () => {
    const rules = lineRulesFor(last);
    const { topline } = drawLines(board, rules, settle(rules, {}));
    for (const half of halves) {
      const flat = topline[half].flat;
      let worst = 0;
      for (let i = 2; i + 3 < flat.length; i += 2) {
        const ax = flat[i]! - flat[i - 2]!, ay = flat[i + 1]! - flat[i - 1]!, bx = flat[i + 2]! - flat[i]!, by = flat[i + 3]! - flat[i + 1]!;
        worst = Math.max(worst, Math.abs(ax * by - ay * bx) / (Math.hypot(ax, ay) * Math.hypot(bx, by)));
      }
      expect(worst).toBeLessThan(Math.sin((2 * Math.PI) / 180));
    }
  });

  test("the throat's radius, measured on the last across 16 mm, is the asked one within 5 %", () => {
    const rules = lineRulesFor(last);
    for (const asked of [18, 26, 32]) {
      const { topline, lines } = drawLines(board, rules, settle(rules, { throatRadiusMm: asked }));
      const throat = pointOn(lines.centre, 1e9);
      const ahead = pointOn(last.centreRidge, lines.settings.throatDepthMm + 2), behind = pointOn(last.centreRidge, lines.settings.throatDepthMm - 2);
      const sides = halves.map((half) => pointOn(topline[half], curveLength(topline[half]) - 8));
      const height = [0, 1, 2].reduce((sum, d) => sum + 0.5 * (sides[0]![d]! + sides[1]![d]! - 2 * throat[d]!) * (ahead[d]! - behind[d]!), 0) / gap(ahead, behind);
      expect((gap(sides[0]!, sides[1]!) ** 2 / 4 + height ** 2) / (2 * height) / asked).toBeGreaterThan(0.95);
      expect((gap(sides[0]!, sides[1]!) ** 2 / 4 + height ** 2) / (2 * height) / asked).toBeLessThan(1.05);
    }
  });

  test("values beyond the last are refused, unusual ones are told", () => {
    const rules = lineRulesFor(last);
    expect(() => drawLines(board, rules, settle(rules, { throatDepthMm: 160 }))).toThrow(Refusal);
    expect(() => drawLines(board, rules, settle(rules, { backHeightMm: 95 }))).toThrow(/back height of 95 mm does not fit/);
    expect(() => drawLines(board, rules, settle(rules, { sideHeightLateralMm: Number.NaN }))).toThrow(/outer side height must be a number/);
    expect(() => drawLines(board, rules, settle(rules, { sideHeightLateralMm: 2 }))).toThrow(/too small to draw/);
    const { lines } = drawLines(board, rules, settle(rules, { throatDepthMm: last.measures.vampPointFromToe + 3 }));
    expect(lines.findings.map((f) => f.code)).toContain("throat-behind-vamp-point");
    const tilted = drawLines(board, rules, settle(rules, { sideHeightMedialMm: 58, lowestAtMedial: 0.68 }));
    expect(tilted.lines.findings.map((f) => f.code)).toContain("lowest-elsewhere");
    expect(tilted.lines.lowestMedial.heightMm).toBeLessThan(57.5);
  });

  test("the forme's two ways undo each other", () => {
    const { forme } = board;
    for (const share of [0.2, 0.4, 0.6, 0.8]) {
      const arc = board.arcs.from(footAtX(featherHalf(last.feather, "lateral"), share * last.landmarks.toePoint[0])!.foot, 30);
      const p = pointOn(arc, 20);
      expect(gap(forme.toLast(forme.toFlat(p))!, p)).toBeLessThan(0.05);
    }
    expect(curveLength(forme.back.medial)).toBeCloseTo(curveLength(forme.back.lateral), 9);
  });
});
