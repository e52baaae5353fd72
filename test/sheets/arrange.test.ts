import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arrange, gapMm, placedXy } from "#sheets/arrange.ts";
import { gridOf, papers } from "#sheets/paper.ts";
import { samplePieces, sampleRectangle } from "../support/sample-pieces.ts";

const grid = gridOf(papers.A4);

describe("laying the pieces on the common sheet", () => {
  test("no piece lies on another or over the sheet's edge", () => {
    const sizes = fc.array(fc.tuple(fc.integer({ min: 5, max: 420 }), fc.integer({ min: 5, max: 420 })), { minLength: 1, maxLength: 14 });
    fc.assert(
      fc.property(sizes, (all) => {
        const sheet = arrange(all.map(([w, h], i) => sampleRectangle(`r${i}`, w, h, 200)), grid);
        const boxes = sheet.placed.map((p) => p.bounds);
        for (const [i, a] of boxes.entries()) {
          expect(a.minX).toBeGreaterThanOrEqual(gapMm - 0.01);
          expect(a.minY).toBeGreaterThanOrEqual(gapMm - 0.01);
          expect(a.maxX).toBeLessThanOrEqual(sheet.widthMm - gapMm + 0.01);
          expect(a.maxY).toBeLessThanOrEqual(sheet.heightMm - gapMm + 0.01);
          for (const b of boxes.slice(i + 1)) {
            const apart = Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY);
            expect(apart).toBeGreaterThan(2 * gapMm - 0.03);
          }
        }
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  test("places turn by exact quarters and keep every length", () => {
    const xy = Float64Array.of(0, 0, 100.25, 0, 100.25, 30.5);
    expect([...placedXy(xy, { xMm: 10, yMm: 20, rotationDeg: 90 })]).toEqual([10, 20, 10, 120.25, -20.5, 120.25]);
  });

  test("the same pieces lie in the same places", () => {
    const again = () => JSON.stringify(arrange(samplePieces(), grid).placed.map((p) => p.place));
    expect(again()).toBe(again());
  });

  test("a piece that fits a page lies on one page", () => {
    // A sole of 252 × 80 mm fits the window of A4 upright.
    const sheet = arrange([sampleRectangle("sole", 252, 80)], grid);
    expect([sheet.columns, sheet.rows]).toEqual([1, 1]);
    expect(sheet.placed[0]!.place.rotationDeg).toBe(90);
  });
});
