// What can hurt at the bench: every hazard has its caution, in the order of the steps; what is said holds to practice and to the standards,
// and nothing is called harmless.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { cautionsOf, cautionWords } from "#making/care/cautions.ts";
import { hazardIds, type HazardId } from "#making/care/hazards.ts";
import { limits } from "#making/care/limits.ts";
import { careFilled, carePages } from "../../tools/guide/care-page.ts";
import { textOf } from "../../tools/guide/make.ts";

const step = (id: string, ...hazards: readonly HazardId[]) => ({ id, hazards });
const said = (hazard: HazardId): string => {
  const { title, what, care, law, first } = cautionWords[hazard];
  return [title, what, ...care, ...(law ?? []), first].join("\n");
};

describe("cautions of steps", () => {
  test("one for each hazard, in the order in which the steps meet it, with the steps it belongs to", () => {
    const found = cautionsOf([step("cut", "knife"), step("sew", "sewing machine", "knife"), step("stick", "solvent cement"), step("trim", "knife")]);
    expect(found.map(({ hazard, steps }) => [hazard, steps])).toEqual([["knife", ["cut", "sew", "trim"]], ["sewing machine", ["sew"]], ["solvent cement", ["stick"]]]);
    expect(cautionsOf([step("cut", "knife", "dust"), step("sand", "dust", "knife")]).map(({ hazard }) => hazard)).toEqual(["knife", "dust"]);
    expect(cautionsOf([])).toEqual([]);
    expect(cautionsOf([step("fold")])).toEqual([]);
  });

  test("limits stand at solvent cement alone, and the closed room where the pair's grams are known", () => {
    const [cement, knife] = cautionsOf([step("stick", "solvent cement"), step("cut", "knife")], 45, 2);
    expect(cement!.limits).toEqual(limits);
    expect(cement!.room!.join(" ")).toMatch(/about 45 g of contact cement from the tin.*2 pairs coated at one time at the bench take 90 g/);
    expect(knife!.limits).toBeUndefined();
    expect(knife!.room).toBeUndefined();
    expect(cautionsOf([step("stick", "solvent cement")])[0]!.room).toBeUndefined();
  });

  test("every hazard says what can happen, several things to do, and whose word comes first", () => {
    for (const hazard of hazardIds) {
      const { title, short, what, care, first, source } = cautionWords[hazard];
      expect(short.length, short).toBeLessThan(145);
      expect(title.length && what.length && source.length, hazard).toBeGreaterThan(0);
      expect(care.length, hazard).toBeGreaterThanOrEqual(4);
      expect(new Set(care).size).toBe(care.length);
      expect(first, hazard).toMatch(/safety data sheet.* your local rules and licensed practice come before anything said here\.$/);
      for (const sentence of [what, ...care, first]) expect(sentence.length, sentence).toBeLessThan(430);
      for (const sentence of [short, what, ...care, first]) expect(sentence).toMatch(/\.$/);
    }
  });
});

describe("what is said", () => {
  test("solvent cement: moving air before the mask, mask and goggles and gloves, no flame, doctor (mask and goggles: common practice, no source)", () => {
    const { care } = cautionWords["solvent cement"];
    const at = (part: RegExp): number => care.findIndex((item) => part.test(item));
    const order = [/water-based/, /exhaust/, /[Nn]o flame/, /half mask/, /goggles/].map(at);
    for (const part of ["exhaust", "organic-vapour filters", "goggles", "gloves", "no flame"]) expect(cautionWords["solvent cement"].short).toContain(part);
    expect(order.every((place) => place >= 0)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    for (const part of ["Do not count on an open door", "organic-vapour filters", "Never a dust mask", "nitrile gloves", "no spark", "no heat gun", "close the tin", "metal bin", "pregnant", "asthma", "asks a doctor", "low in toluene and n-hexane"]) expect(said("solvent cement")).toContain(part);
  });

  // EN 14387 and EN 149 as told by sellers of filters and masks; REACH Annex XVII, entries 48 and 57; NIOSH on n-hexane: flash point −7 °F.
  test("solvent cement: standards and laws with jurisdiction and date", () => {
    for (const part of ["EN 14387", "EN 149", "Annex XVII, entry 48", "Annex XVII, entry 57", "European Union", "−22 °C", "−7 °F", "USA, NIOSH"]) expect(said("solvent cement")).toContain(part);
    expect(Math.round(((-7 - 32) * 5) / 9)).toBe(-22);
    for (const law of cautionWords["solvent cement"].law!) expect(law).toMatch(/^European Union, REACH .*looked up in November 2026/);
  });

  test("latex and water-based cement: allergy, ammonia, moving air, eyes and skin, frost; nothing lets the care go (common practice, no source)", () => {
    const words = said("water-based glue");
    for (const part of ["allergy", "ammonia", "Open a window", "moving air", "goggles", "nitrile gloves (no latex gloves)", "running water", "doctor", "frost", "asthma", "Away from children", "a cement of one part", "isocyanates", "a dust mask holds back neither ammonia nor solvent"]) expect(words).toContain(part);
    expect(cautionWords["water-based glue"].short).toMatch(/^Window open, goggles, nitrile gloves\./);
    for (const part of ["no flame", "mask with organic-vapour filters", "window is open all the same", "do not spray", "nitrile gloves", "turpentine"]) expect(said("ink and dye")).toContain(part);
  });

  test("heat wakes up dry cement alone; dust wants P2 or FFP2 (a maker's notes of a class; common practice, no source)", () => {
    expect(said("heat")).toContain("Warm only cement that is dry");
    expect(said("heat")).toMatch(/hair dryer; no flame/);
    expect(said("dust")).toMatch(/P2 or FFP2/);
    expect(said("dust")).toContain("against cement vapour it does nothing");
    expect(said("grinding")).toMatch(/goggles[\s\S]*Hair tied back[\s\S]*no loose sleeves/);
  });

  test("nails are counted and felt for; feet that do not feel go to licensed practice (common practice, no source)", () => {
    expect(said("hammer and nails")).toMatch(/so many tacks went in, so many must come out/);
    expect(said("hammer and nails")).toMatch(/eye/);
    for (const part of ["no doctor", "diabetes", "numb", "wounds", "orthopaedic", "licensed practice", "no tack"]) expect(said("feet")).toContain(part);
  });
});

describe("nothing is called harmless", () => {
  const claims = (text: string): readonly string[] =>
    [...text.matchAll(/[^\n]*(?<!keep )\b(?:safe|safer|safest|safely|harmless|innocuous|non-?toxic|risk-?free|(?:no|without|free of|not a) (?:danger|risk|hazard)|not (?:dangerous|harmful|toxic|poisonous)|(?<!no limit means[^\n]*)no harm|nothing to fear)\b[^\n]*/gi)].map(([line]) => line.trim());
  /** Program text without its comments. */
  const spoken = (source: string): string => source.replaceAll(/"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`|\/\/.*|\/\*[\s\S]*?\*\//g, (part) => (part.startsWith("/") ? "" : part));
  const under = (folder: string): string[] => (readdirSync(folder, { recursive: true }) as string[]).filter((name) => /\.(?:ts|tsx|md)$/.test(name)).map((name) => join(folder, name));
  const files = [
    ...under("src/making"), ...under("src/sheets").filter((name) => /book|making/.test(name)), ...under("src/app").filter((name) => name.includes("making")),
    ...["needs", "money", "calendar"].map((name) => join("src", "base", "sentences", `${name}.ts`)),
    ...["guide/working-with-care.md", "guide/bench-tools.md", "method/vapour.md"].map((name) => join("docs", name)),
  ];

  test("in no text of making: the cautions, the steps, the tools, the findings, the book, the pages", () => {
    expect(files.length).toBeGreaterThan(40);
    expect(files.flatMap((file) => claims(spoken(readFileSync(file, "utf8"))).map((line) => `${file}: ${line}`))).toEqual([]);
  });

  test("and the search finds such a claim, but not the safety data sheet", () => {
    expect(claims('const x = "This glue is safe at home."')).toHaveLength(1);
    expect(claims("Below the limit there is no danger.\nIt is non-toxic.\nYou may safely breathe it.")).toHaveLength(3);
    expect(claims("The safety data sheet comes first.")).toEqual([]);
    expect(claims("It does no harm.")).toHaveLength(1);
    expect(claims("No wonder: no limit means that a little less does no harm.")).toEqual([]);
    expect(spoken('// safe\nconst a = "https://x.y/safe"; /* safe */')).toBe('\nconst a = "https://x.y/safe"; ');
  });
});

describe("the pages for the maker", () => {
  test("tell what the program tells: run `npm run guide`, look at what changed, and commit it", () => {
    for (const { path, text } of carePages()) {
      expect(textOf(path), path).toBe(text);
      expect(text.match(/<!-- made: /g)!.length).toBeGreaterThanOrEqual(2);
    }
  });

  test("every hazard, limit and restriction stands on them, and a slip in a made block is seen", () => {
    const page = textOf(join("docs", "guide", "working-with-care.md"))!;
    for (const hazard of hazardIds) expect(page).toContain(`## ${cautionWords[hazard].title}\n`);
    const rows = page.split("\n").filter((line) => line.startsWith("| ")).map((line) => line.split("|").slice(1, -1).map((cell) => cell.trim()));
    const head = rows.find((row) => row.includes("USA, OSHA"))!;
    for (const { substance, jurisdiction, date, ppm, mgPerM3, short, ceilingPpm, source } of limits) {
      const row = rows.find((cells) => cells.length === head.length && cells[0]!.replace(/ \(.*/, "") === substance)!;
      const cell = row[head.indexOf(jurisdiction)]!;
      expect(cell.startsWith(`${ppm} (${mgPerM3})`), cell).toBe(true);
      if (short) expect(cell).toContain(`15 min: ${short.ppm}`);
      if (ceilingPpm !== undefined) expect(cell).toContain(`never over ${ceilingPpm}`);
      const origin = page.split("\n").find((line) => line.startsWith(`- ${jurisdiction}, ${date} (`))!;
      for (const part of [substance, source]) expect(origin).toContain(part);
    }
    expect(careFilled(page.replace("| 50 (192)", "| 60 (192)"))).toBe(page);
  });
});
