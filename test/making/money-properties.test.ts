// What holds for any prices, shelf and hours.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { goodIds, type GoodId } from "#making/goods.ts";
import { measureOf } from "#making/amounts/good-measures.ts";
import type { MakingSaid } from "#making/said.ts";
import { needing, reckoned, stepOf } from "../support/money-said.ts";

const inside = { area: ["dm2", 1e4], length: ["m", 1e3], mass: ["g", 1], volume: ["ml", 1e3], count: ["pieces", 1] } as const;
const amount = (good: GoodId, value: number): string => `${value} ${inside[measureOf[good]][0]}`;

/** A few goods with amounts and prices in hundredths, amounts in tenths of a unit; counts whole. */
const goods = fc.uniqueArray(fc.record({
  good: fc.constantFrom(...goodIds),
  use: fc.integer({ min: 1, max: 500 }), cents: fc.integer({ min: 0, max: 50_000 }), per: fc.integer({ min: 1, max: 1000 }), shelf: fc.integer({ min: 0, max: 2000 }),
}), { selector: ({ good }) => good, minLength: 1, maxLength: 12 });
const money = fc.record({ rate: fc.integer({ min: 0, max: 10_000 }), overhead: fc.integer({ min: 0, max: 5000 }), asked: fc.integer({ min: 0, max: 100_000 }) });
type Goods = typeof goods extends fc.Arbitrary<infer T> ? T : never;

const needsOf = (all: Goods) => all.map(({ good, use }) => needing(good, use * inside[measureOf[good]][1]));
const saidOf = (all: Goods): MakingSaid => ({
  prices: Object.fromEntries(all.map(({ good, cents, per }) => [good, { price: (cents / 100).toFixed(2), for: amount(good, per) }])),
  shelf: Object.fromEntries(all.map(({ good, shelf }) => [good, amount(good, shelf)])),
});
const steps = [stepOf("cutting", 45), stepOf("closing", 130), stepOf("lasting", 95)];
/** Sums are kept to twelve digits. */
const near = (got: number, wanted: number): void => expect(Math.abs(got - wanted)).toBeLessThanOrEqual(1e-10 * Math.max(1, Math.abs(wanted)));
const run = (property: (all: Goods, sums: { rate: number; overhead: number; asked: number }) => void) => fc.assert(fc.property(goods, money, property), { seed: 42, numRuns: 200 });

describe("the cost of a pair", () => {
  test("is material, work and overhead; each line is what is used times what one costs", () => {
    run((all, { rate, overhead, asked }) => {
      const { cost } = reckoned({ ...saidOf(all), rate: rate / 100, overhead: overhead / 100, asked: asked / 100 }, needsOf(all), steps);
      // In hundredths, by whole numbers as far as they go.
      const material = all.reduce((sum, { use, cents, per }) => sum + (use * cents) / per, 0);
      near(100 * cost.material, material);
      near(100 * cost.total, material + (270 * rate) / 60 + overhead);
      near(cost.total, cost.material + cost.workCost + cost.overhead);
      near(100 * cost.left!, asked - 100 * cost.total);
      near(cost.anHour! * 4.5, asked / 100 - cost.material - cost.overhead);
      if (cost.total > 0) near(cost.shares.reduce((sum, { share }) => sum + share, 0), 1);
      near(cost.shares.reduce((sum, one) => sum + one.cost, 0), cost.total);
      expect(cost.shares.every((one, i) => i === 0 || one.cost <= cost.shares[i - 1]!.cost)).toBe(true);
    });
  });

  test("never falls when a price rises, nor does what is paid in the shop", () => {
    run((all, { rate }) => {
      const before = reckoned({ ...saidOf(all), rate: rate / 100 }, needsOf(all), steps).cost;
      for (let k = 0; k < all.length; k++) {
        const dearer = all.map((one, i) => (i === k ? { ...one, cents: one.cents + 1 } : one));
        const after = reckoned({ ...saidOf(dearer), rate: rate / 100 }, needsOf(dearer), steps).cost;
        expect(after.total).toBeGreaterThanOrEqual(before.total);
        expect(after.shopping).toBeGreaterThanOrEqual(before.shopping);
      }
    });
  });

  test("does not depend on how many pairs are made, nor on what lies on the shelf", () => {
    run((all) => {
      const said = saidOf(all), needs = needsOf(all);
      const many = reckoned({ ...said, pairs: 7 }, needs, steps).cost, one = reckoned({ ...said, shelf: {} }, needs, steps).cost;
      expect({ ...many, shopping: 0 }).toEqual({ ...one, shopping: 0 });
    });
  });

  test("with skins a tenth dearer is what it is with those prices written a tenth higher", () => {
    run((all) => {
      const skins = ["upper leather", "lining leather", "sock leather"];
      const needs = needsOf(all), said = saidOf(all), { cost } = reckoned(said, needs, steps);
      const raised = Object.fromEntries(all.map(({ good, cents, per }) => [good, { price: ((skins.includes(good) ? 11 : 10) * cents / 1000).toFixed(4), for: amount(good, per) }]));
      near(cost.skinsDearer.total, reckoned({ ...said, prices: raised }, needs, steps).cost.total);
      expect(cost.skinsDearer.goods).toEqual(all.map(({ good }) => good).filter((good) => skins.includes(good)));
    });
  });
});

describe("what is to be bought", () => {
  test("is what is needed less what is there, bought whole where it is sold whole, with nothing lost", () => {
    run((all) => {
      for (const pairs of [1, 3, 1000]) {
        reckoned({ ...saidOf(all), pairs }, needsOf(all), steps).toBuy.forEach(({ needed, onShelf, short, whole, left, paid }, i) => {
          const { good, use, shelf, cents, per } = all[i]!, unit = inside[measureOf[good]][1];
          near(needed, pairs * use * unit);
          near(onShelf, shelf * unit);
          near(short, Math.max(0, pairs * use - shelf) * unit);
          const bought = whole ? whole.count * whole.each : short;
          near(left, onShelf + bought - needed);
          expect(left).toBeGreaterThanOrEqual(0);
          if (whole) {
            expect(whole.count).toBe(Math.ceil(Math.max(0, pairs * use - shelf) / per));
            near(100 * paid!, whole.count * cents);
          } else near(100 * paid!, (Math.max(0, pairs * use - shelf) * cents) / per);
        });
      }
    });
  });

  test("nothing where the shelf holds it all", () => {
    run((all) => {
      const full = all.map((one) => ({ ...one, shelf: 3 * one.use }));
      const { toBuy, cost } = reckoned({ ...saidOf(full), pairs: 3 }, needsOf(full), steps);
      expect(toBuy.every(({ short, paid, left, whole }) => short === 0 && paid === 0 && left === 0 && (whole?.count ?? 0) === 0)).toBe(true);
      expect(cost.shopping).toBe(0);
    });
  });
});
