// Vapour in a room's air against worked values and printed tables from outside.
import { describe, expect, test } from "vitest";
import { limits } from "#making/care/limits.ts";
import { exampleRoomM3, exampleShare, roomWords } from "#making/care/room-words.ts";
import { solventIds, solvents, type SolventId } from "#making/care/solvents.ts";
import { molarVolume, ppmOf, roomEstimate } from "#making/care/vapour.ts";
import { Bug } from "#base/bug.ts";

/** Standard atomic weights, g/mol (IUPAC, from memory), and the molecules' formulas: textbook chemistry. */
const weights = { C: 12.011, H: 1.008, O: 15.999 };
const atoms: Record<SolventId, [C: number, H: number, O: number]> = {
  toluene: [7, 8, 0], "n-hexane": [6, 14, 0], MEK: [4, 8, 1], acetone: [3, 6, 1], "n-heptane": [7, 16, 0], cyclohexane: [6, 12, 0], "ethyl acetate": [4, 8, 2],
};

/** The other way than ours: mg/m³ of so many parts in a million. */
const mgPerM3Of = (ppm: number, id: SolventId, atC: number): number => (ppm * solvents[id].molarMass) / molarVolume(atC);

describe("gas", () => {
  // R T / p at 101.325 kPa, evaluated outside this project with twenty digits.
  test("a mole takes 24.055 l at 20 °C and 24.465 l at 25 °C", () => {
    expect(molarVolume(20)).toBeCloseTo(24.055, 3);
    expect(molarVolume(25)).toBeCloseTo(24.465, 3);
  });

  test("a mole at 0 °C and 1 bar takes 22.711 l (CODATA 2018)", () => {
    expect(molarVolume(0, 100_000)).toBeCloseTo(22.710_954_64, 6);
  });

  test("molar masses are the sums of their atoms", () => {
    for (const id of solventIds) {
      const [c, h, o] = atoms[id];
      expect(solvents[id].molarMass, id).toBeCloseTo(c * weights.C + h * weights.H + o * weights.O, 1);
    }
  });

  // Directives count at 20 °C (Directive 91/322/EEC, annex, note d); what the law prints is rounded: 192, 384, 72, 600, 900, 700.
  test.each([
    ["toluene", 50, 191.5, 192], ["toluene", 100, 383.0, 384], ["n-hexane", 20, 71.65, 72], ["MEK", 200, 599.5, 600], ["MEK", 300, 899.3, 900], ["cyclohexane", 200, 699.7, 700],
  ] as const)("%s: %d ppm at 20 °C are %d mg/m³, in the law %d", (id, ppm, mg, law) => {
    const got = mgPerM3Of(ppm, id, 20);
    expect(Math.abs(got / mg - 1)).toBeLessThan(0.003);
    expect(Math.abs(got / law - 1)).toBeLessThan(0.006);
    expect(Math.abs(ppmOf(law, solvents[id].molarMass, 20) / ppm - 1)).toBeLessThan(0.006);
  });

  // American tables count at 25 °C with 24.45 l/mol.
  test.each([["toluene", 100, 376.9], ["n-hexane", 50, 176.2], ["MEK", 200, 589.9], ["MEK", 300, 884.8]] as const)("%s: %d ppm at 25 °C are %d mg/m³", (id, ppm, mg) => {
    expect(Math.abs(mgPerM3Of(ppm, id, 25) / mg - 1)).toBeLessThan(0.002);
  });

  test("1 ppm of n-hexane at 25 °C is 3.52 mg/m³; NIOSH prints 3.53", () => {
    expect(Math.abs(mgPerM3Of(1, "n-hexane", 25) - 3.525)).toBeLessThan(0.01);
    for (const mg of [3.525, 3.53]) expect(Math.abs(ppmOf(mg, solvents["n-hexane"].molarMass, 25) - 1)).toBeLessThan(0.003);
  });

  test("ppm and mg/m³ lead back to each other", () => {
    for (const id of solventIds) expect(ppmOf(mgPerM3Of(37, id, 23), solvents[id].molarMass, 23)).toBeCloseTo(37, 9);
  });
});

describe("a closed room", () => {
  // Worked by hand: 10 000 mg / 30 m³ = 333.3 mg/m³; 333.3 × 24.055 / 92.14 = 87.0 ppm.
  test("10 g of toluene in 30 m³: 333.3 mg/m³ and 87.0 ppm, above the limit of the European Union, below that of OSHA", () => {
    const { mgPerM3, ppm, against } = roomEstimate("toluene", 10, 30);
    expect(mgPerM3).toBeCloseTo(333.3, 1);
    expect(Math.abs(ppm - 87.0)).toBeLessThan(0.1);
    const side = (jurisdiction: string): string | undefined => against.find(({ limit }) => limit.jurisdiction === jurisdiction)?.side;
    expect(side("European Union")).toBe("above");
    expect(side("USA, OSHA")).toBe("below");
    expect(side("USA, California")).toBe("above");
    expect(against.map(({ limit }) => limit.substance)).toEqual(limits.filter(({ substance }) => substance === "toluene").map(({ substance }) => substance));
  });

  test("twice the room holds half as much of it; no room at all is our own mistake", () => {
    expect(roomEstimate("acetone", 12, 60).ppm).toBeCloseTo(roomEstimate("acetone", 12, 30).ppm / 2, 9);
    expect(() => roomEstimate("acetone", 12, 0)).toThrow(Bug);
    expect(() => roomEstimate("acetone", Number.NaN, 30)).toThrow(Bug);
  });
});

describe("the room in words", () => {
  test("50 g of a cement with a fifth of toluene are those 10 g", () => {
    expect([exampleShare, exampleRoomM3]).toEqual([0.2, 30]);
    const words = roomWords({ cementG: 50 }).join(" ");
    expect(words).toContain("One pair takes about 50 g of contact cement from the tin, with what dries on brush and pot. Most");
    expect(words).toContain("20 % of it were toluene, that would be 10 g");
    expect(words).toContain("30 m³");
    expect(words).toContain("about 330 mg/m³ (87 ppm)");
    expect(words).toContain("above the limit of the European Union (50 ppm; Directive 2006/15/EC of 7 February 2006)");
    // 87 ppm pass no limit of OSHA's; that is not told, for nobody shall take it for leave.
    expect(words).toContain("; and above the limit of USA, California (10 ppm; Title 8, section 5155, as looked up in November 2026).");
    expect(words).not.toMatch(/below|OSHA/);
  });

  test("the figures follow the pair, the solvent, its share and the room", () => {
    const words = roomWords({ cementG: 24, substance: "n-hexane", share: 0.1, roomM3: 12 }).join(" ");
    expect(words).toContain("about 24 g");
    expect(words).toContain("10 % of it were n-hexane, that would be 2.4 g");
    // 2400 mg / 12 m³ = 200 mg/m³; × 24.055 / 86.18 = 55.8 ppm.
    expect(words).toContain("12 m³ with no air coming in, it would make about 200 mg/m³ (56 ppm)");
    expect(words).toContain("above the limit of the European Union (20 ppm");
  });

  test("several pairs coated at one time are reckoned together", () => {
    const words = roomWords({ cementG: 50, pairs: 3 }).join(" ");
    expect(words).toContain("with what dries on brush and pot; 3 pairs coated at one time at the bench take 150 g. Most");
    // 30 g in 30 m³: 1000 mg/m³; × 24.055 / 92.14 = 261 ppm, above the 200 ppm of OSHA too.
    expect(words).toContain("that would be 30 g");
    expect(words).toContain("about 1000 mg/m³ (260 ppm)");
    expect(words).toContain("above the limit of USA, OSHA (200 ppm; 29 CFR 1910.1000, Table Z-2, as looked up in November 2026)");
  });

  test("where no limit is passed none is named, and one ventilates whatever the figures are; nothing where no cement is used", () => {
    const few = roomWords({ cementG: 1 });
    expect(few.join(" ")).not.toMatch(/below|above|limit of/);
    expect(few.at(-1)).toContain("no limit means that a little less does no harm, and you ventilate whatever the figures are");
    expect(roomWords({ cementG: 0 })).toEqual([]);
    expect(roomWords({ cementG: Number.NaN })).toEqual([]);
  });
});
