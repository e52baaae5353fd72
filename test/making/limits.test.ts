// Limits, restrictions and filters against the laws and standards they come from, read outside this project in November 2026.
import { describe, expect, test } from "vitest";
import { dustMasks, dustMaskWords, filterClasses, filterFor, solventsFor, vapourFilterWords } from "#making/care/filters.ts";
import { limitFigures, limits, limitsOf, limitWords } from "#making/care/limits.ts";
import { restrictions, restrictionWords } from "#making/care/restrictions.ts";
import { solventIds, solvents } from "#making/care/solvents.ts";
import { molarVolume } from "#making/care/vapour.ts";

const of = (substance: string, jurisdiction: string): readonly (number | undefined)[] => {
  const found = limits.filter((limit) => limit.substance === substance && limit.jurisdiction === jurisdiction);
  expect(found).toHaveLength(1);
  const { ppm, mgPerM3, short, ceilingPpm } = found[0]!;
  return [ppm, mgPerM3, short?.ppm, short?.mgPerM3, ceilingPpm];
};

describe("limits", () => {
  // The French labour code, article R. 4412-149, prints the same figures for all but n-heptane, where it asks for less.
  test("of the European Union, from Directives 2000/39/EC, 2006/15/EC and (EU) 2017/164", () => {
    expect(of("toluene", "European Union")).toEqual([50, 192, 100, 384, undefined]);
    expect(of("n-hexane", "European Union")).toEqual([20, 72, undefined, undefined, undefined]);
    expect(of("MEK", "European Union")).toEqual([200, 600, 300, 900, undefined]);
    expect(of("acetone", "European Union")).toEqual([500, 1210, undefined, undefined, undefined]);
    expect(of("cyclohexane", "European Union")).toEqual([200, 700, undefined, undefined, undefined]);
    expect(of("ethyl acetate", "European Union")).toEqual([200, 734, 400, 1468, undefined]);
    expect(of("n-heptane", "European Union").slice(0, 2)).toEqual([500, 2085]);
    expect(of("n-heptane", "France")).toEqual([400, 1668, 500, 2085, undefined]);
  });

  // osha.gov, page of limits for toluene; safety data sheets that quote Table Z-1; from memory for cyclohexane and ethyl acetate.
  test("of OSHA and the recommendations of NIOSH", () => {
    expect(of("toluene", "USA, OSHA")).toEqual([200, 754, undefined, undefined, 300]);
    expect(of("toluene", "USA, NIOSH")).toEqual([100, 375, 150, 560, undefined]);
    expect(of("toluene", "USA, California")).toEqual([10, 37, 150, undefined, 500]);
    expect(of("toluene", "USA, ACGIH").slice(0, 1)).toEqual([20]);
    expect(of("n-hexane", "USA, OSHA").slice(0, 2)).toEqual([500, 1800]);
    expect(of("n-hexane", "USA, NIOSH").slice(0, 2)).toEqual([50, 180]);
    expect(of("MEK", "USA, OSHA").slice(0, 2)).toEqual([200, 590]);
    expect(of("MEK", "USA, NIOSH")).toEqual([200, 590, 300, 885, undefined]);
    expect(of("acetone", "USA, OSHA").slice(0, 2)).toEqual([1000, 2400]);
    expect(of("acetone", "USA, NIOSH").slice(0, 2)).toEqual([250, 590]);
    expect(of("n-heptane", "USA, OSHA").slice(0, 2)).toEqual([500, 2000]);
    expect(of("n-heptane", "USA, NIOSH")).toEqual([85, 350, undefined, undefined, 440]);
    expect(of("cyclohexane", "USA, OSHA").slice(0, 2)).toEqual([300, 1050]);
    expect(of("ethyl acetate", "USA, OSHA").slice(0, 2)).toEqual([400, 1400]);
  });

  // Printed tables are rounded, up to 2.9 % off (ethyl acetate 1400 for 1441 mg/m³, n-hexane 180 for 176).
  test("ppm and mg/m³ of one row belong together at its temperature", () => {
    for (const limit of limits) {
      const { substance, atC, ppm, mgPerM3, short } = limit;
      for (const row of [{ ppm, mgPerM3 }, ...(short?.mgPerM3 === undefined ? [] : [{ ppm: short.ppm, mgPerM3: short.mgPerM3 }])]) {
        expect(Math.abs((row.ppm * solvents[substance].molarMass) / molarVolume(atC) / row.mgPerM3 - 1), limitWords(limit)).toBeLessThan(0.03);
      }
    }
  });

  test("every limit shows figures, jurisdiction, date and source, and whether it was only remembered", () => {
    for (const limit of limits) {
      const words = limitWords(limit);
      expect(words).toContain(limit.jurisdiction);
      expect(limit.date).toMatch(/\b(19|20)\d\d\b/);
      for (const part of [limit.date, limit.source, limit.substance, limitFigures(limit), `${limit.ppm} ppm`, `${limit.mgPerM3} mg/m³`]) expect(words).toContain(part);
      expect(limit.fromMemory, words).toBe(/memory/.test(limit.source));
      if (limit.fromMemory) expect(limit.date).not.toContain("looked up");
    }
  });

  test("every solvent has a limit of the Union and one of the USA, the Union's first", () => {
    for (const id of solventIds) {
      const found = limitsOf(id).map(({ jurisdiction }) => jurisdiction);
      expect(found[0], id).toBe("European Union");
      expect(found, id).toContain("USA, OSHA");
      expect(new Set(found).size, id).toBe(found.length);
    }
  });
});

describe("restrictions", () => {
  // echa.europa.eu, question 668; a product page that quotes entry 57.
  test("of toluene and cyclohexane sold to the public, with law, jurisdiction and date", () => {
    const [toluene, cyclohexane] = restrictions.map(restrictionWords);
    for (const part of ["European Union", "REACH Regulation (EC) 1907/2006, Annex XVII, entry 48", "toluene", "0.1 %", "general public", "looked up in November 2026"]) expect(toluene).toContain(part);
    for (const part of ["European Union", "entry 57", "cyclohexane", "0.1 %", "350 g", "neoprene contact adhesives", "ventilation is poor", "laying carpet", "looked up in November 2026"]) expect(cyclohexane).toContain(part);
    expect(restrictions).toHaveLength(2);
  });
});

describe("filters", () => {
  // EN 14387:2021 as two sellers of filters tell it: A brown above 65 °C, AX at or below; class 1, 2, 3 to 1000, 5000, 10 000 ppm.
  test("type by boiling point, class by concentration", () => {
    expect(filterFor(65.1)).toBe("A");
    expect(filterFor(65)).toBe("AX");
    expect(filterClasses).toEqual({ 1: 1000, 2: 5000, 3: 10_000 });
  });

  // Boiling points: NIOSH for n-hexane (156 °F), the others from memory.
  test("acetone wants AX, the others A", () => {
    expect(solventIds.map((id) => Math.round(solvents[id].boilsC))).toEqual([111, 69, 80, 56, 98, 81, 77]);
    expect(Math.abs(solvents["n-hexane"].boilsC - ((156 - 32) * 5) / 9)).toBeLessThan(0.3);
    expect(solventsFor("AX")).toEqual(["acetone"]);
    expect(solventsFor("A")).toHaveLength(solventIds.length - 1);
    for (const part of ["EN 14387", "brown", "65 °C", "type AX for those that boil at 65 °C or below (acetone)"]) expect(vapourFilterWords).toContain(part);
  });

  // EN 149 as sellers of masks tell it; that it says nothing of vapour is from memory.
  test("a dust mask filters particles, never vapour", () => {
    expect(dustMasks).toEqual({ FFP1: 0.8, FFP2: 0.94, FFP3: 0.99 });
    expect(dustMaskWords).toMatch(/^Never a dust mask against vapour: EN 149 .* is a standard for particles/);
  });
});
