import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { afterMm, beforeMm, lengthOf, partsWithin, type PaperStrip } from "#sheets/marks/paper-strip.ts";
import { shelved } from "#sheets/marks/shelves.ts";

describe("what is cut out", () => {
  const block = fc.record({ wideMm: fc.integer({ min: 10, max: 120 }), highMm: fc.integer({ min: 10, max: 90 }) });

  test("stands on pages without any two meeting or leaving the room", () => {
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 12 }), fc.integer({ min: 20, max: 120 }), (blocks, firstHighMm) => {
        const room = { wideMm: 120, firstHighMm, highMm: 100, gapMm: 3 };
        const placed = shelved(blocks, room);
        expect(placed).toHaveLength(blocks.length);
        for (const { block: { wideMm, highMm }, xMm, downMm, page } of placed) {
          expect(xMm).toBeGreaterThanOrEqual(0);
          expect(xMm + wideMm).toBeLessThanOrEqual(room.wideMm);
          expect(downMm - highMm).toBeGreaterThanOrEqual(0);
          expect(downMm).toBeLessThanOrEqual(page === 0 ? firstHighMm : room.highMm);
        }
        placed.forEach((a, i) =>
          placed.slice(i + 1).forEach((b) => {
            const beside = a.xMm + a.block.wideMm < b.xMm || b.xMm + b.block.wideMm < a.xMm;
            const above = a.downMm < b.downMm - b.block.highMm || b.downMm < a.downMm - a.block.highMm;
            expect(a.page !== b.page || beside || above).toBe(true);
          }),
        );
      }),
    );
  });
});

describe("a strip longer than the page", () => {
  const places = fc.uniqueArray(fc.integer({ min: 30, max: 420 }), { minLength: 1, maxLength: 9 });

  test("is cut into parts that fit, and put together again has every place where it was", () => {
    fc.assert(
      fc.property(places, fc.integer({ min: 120, max: 300 }), (lengths, roomMm) => {
        const marks = lengths.sort((a, b) => a - b).map((lengthMm) => ({ key: `m${lengthMm}`, letter: "C", lengthMm }));
        const strip: PaperStrip = { name: "s", title: "s", zero: "P", start: "stick", end: "stick", places: marks };
        const parts = partsWithin(strip, roomMm);
        let begins = 0;
        const found: number[] = [];
        for (const part of parts) {
          expect(beforeMm(part) + lengthOf(part) + afterMm(part)).toBeLessThanOrEqual(roomMm);
          for (const place of part.places) {
            if (place.letter === "+") continue;
            expect(place.toldMm ?? place.lengthMm).toBeCloseTo(begins + place.lengthMm, 9);
            found.push(begins + place.lengthMm);
          }
          begins += lengthOf(part);
        }
        expect(found.map((v) => Math.round(v * 1e6) / 1e6)).toEqual(lengths);
        // Every part but the last ends in paper to stick the next one on.
        for (const part of parts.slice(0, -1)) expect([part.end, part.places.at(-1)!.letter]).toEqual(["stick", "+"]);
      }),
    );
  });
});
