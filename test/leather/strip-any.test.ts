// Whatever is written down, a possible leather with a finite band comes out.
import fc from "fast-check";
import { expect, test } from "vitest";
import { drawLeather } from "#leather/band-draw.ts";
import { fitStrips } from "#leather/fit-strips.ts";
import { leatherFrom } from "#leather/leather-from.ts";
import { knownLeathers, stripWays, type LeatherSaid } from "#leather/leather.ts";
import { ToeLaw } from "#leather/toe-law.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const reading = fc.record({ loadN: number(1e-3, 200), lengthMm: number(80, 260), afterMm: fc.option(number(80, 260), { nil: undefined }) }).map(({ afterMm, ...rest }) => (afterMm === undefined ? rest : { ...rest, afterMm }));
const strip = fc.record({ way: fc.constantFrom(...stripWays), widthMm: number(1, 60), gaugeMm: number(90, 160), readings: fc.array(reading, { maxLength: 5 }) });
const said: fc.Arbitrary<LeatherSaid> = fc.record({ known: fc.constantFrom(...knownLeathers), thicknessMm: number(0.2, 5), strips: fc.array(strip, { maxLength: 5 }) });

test("a fit of anything is finite, banded, possible, and its findings can be said", () => {
  fc.assert(
    fc.property(said, (leather) => {
      const fit = fitStrips(leather);
      expect(() => new ToeLaw(fit.leather.numbers)).not.toThrow();
      for (const { stretch, low, high } of Object.values(fit.told)) expect(low > 0 && low <= stretch && stretch <= high && high < Infinity).toBe(true);
      for (const { pull, stretch, low, high } of fit.curves) {
        for (let i = 1; i < pull.length; i++) expect(stretch[i]! > stretch[i - 1]! && low[i]! <= stretch[i]! && stretch[i]! <= high[i]!).toBe(true);
      }
      for (const spread of Object.values(fit.leather.spread)) expect(spread >= 0 && spread < Infinity).toBe(true);
      for (let k = 0; k < 3; k++) expect(() => new ToeLaw(drawLeather(fit.leather, 5, k))).not.toThrow();
      expect(leatherFrom(leather, "upper", 1).numbers.along).toBeGreaterThan(0);
    }),
    { numRuns: 300, seed: 6 },
  );
});
