import { describe, expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { fitStrips } from "#leather/fit-strips.ts";
import { readStripCsv } from "#leather/strip-csv.ts";

const header = "way,width mm,between marks mm,load,unit,length mm,after a minute mm";
const rows = (...lines: readonly string[]): string => [header, ...lines].join("\n");
const told = (text: string): string[] => {
  const read = readStripCsv(text);
  return [...read.findings, ...fitStrips({ known: "goat", strips: read.strips }, { where: read.where }).findings].map(explain);
};

describe("readings as rows of text", () => {
  test("the plain form, blank cells meaning the same as above", () => {
    const { strips, findings } = readStripCsv(rows("# a goat", "along,20,150,5,N,152,", ",,,10,N,154.5,150.5", "across,21,150,5,N,156,"));
    expect(findings).toEqual([]);
    expect(strips).toEqual([
      { way: "along", widthMm: 20, gaugeMm: 150, readings: [{ loadN: 5, lengthMm: 152 }, { loadN: 10, lengthMm: 154.5, afterMm: 150.5 }] },
      { way: "across", widthMm: 21, gaugeMm: 150, readings: [{ loadN: 5, lengthMm: 156 }] },
    ]);
  });

  test("decimal commas between semicolons, other line ends, a mark of byte order, quotes, columns in any order", () => {
    const text = '\uFEFFsep=;\r\nlength mm;load kg;way;"between marks cm";width mm;note\r\n152,5;0,5;along;15;20,5;"he said ""good""; twice"\r\n';
    expect(readStripCsv(text).strips).toEqual([{ way: "along", widthMm: 20.5, gaugeMm: 150, readings: [{ loadN: 0.5 * 9.80665, lengthMm: 152.5 }] }]);
  });

  // Exact: standard gravity 9.80665 m/s² (CGPM 1901), pound 0.45359237 kg (1959), ounce a sixteenth of it.
  test.each([["N", 1], ["kg", 9.80665], ["g", 0.00980665], ["lb", 4.4482216152605], ["oz", 0.278013850953781], ["KG", 9.80665]])("a load in %s", (unit, newtons) => {
    expect(readStripCsv(rows(`along,20,100,1,${unit},101,`)).strips[0]!.readings[0]!.loadN).toBeCloseTo(newtons, 12);
  });

  test("a unit may stand behind a number, and counts before that of its column's name", () => {
    const { strips, findings } = readStripCsv(rows("along,2 cm,100mm,0.5kg,,101,", ",,,500 g,g,101,", ",,,5 N,N,4in,"));
    expect(findings).toEqual([]);
    expect(strips).toEqual([{ way: "along", widthMm: 20, gaugeMm: 100, readings: [{ loadN: 0.5 * 9.80665, lengthMm: 101 }, { loadN: 500 * (9.80665 / 1000), lengthMm: 101 }, { loadN: 5, lengthMm: 101.6 }] }]);
    expect(readStripCsv("way,width mm,between marks cm,load kg,length mm\nalong,20,150 mm,500 g,152").strips[0]).toMatchObject({ gaugeMm: 150, readings: [{ loadN: 500 * (9.80665 / 1000) }] });
  });

  test("an empty line begins a new strip; a strip's name puts its rows together", () => {
    expect(readStripCsv(rows("along,20,100,5,N,101,", "", "along,20,100,5,N,101.5,")).strips).toHaveLength(2);
    const named = readStripCsv(`strip,${header}\nA,along,20,100,5,N,101,\nB,along,20,100,5,N,102,\nA,along,20,100,10,N,103,`);
    expect(named.strips.map(({ readings }) => readings.length)).toEqual([2, 1]);
    expect(named.where(0, 1, "length")).toBe('Row 4, column "length mm"');
  });

  test.each([["45"], ["45°"], ["at 45 degrees"], ["BIAS"]])("%s is the third way", (word) => expect(readStripCsv(rows(`${word},20,100,5,N,101,`)).strips[0]!.way).toBe("bias"));
});

describe("what is wrong is named by row and column, and the rest is read", () => {
  const good = "along,20,100,5,N,101.5,";
  test.each([
    ["a width of nothing", "across,0,100,5,N,103,", 'Row 3, column "width mm": 0 is too little; the row is left out. Write a number above 0.'],
    ["letters for digits", "across,20,100,5,N,1O3,", 'Row 3, column "length mm": "1O3" is no number; the row is left out. Write it like 104.5.'],
    ["an empty length", "across,20,100,5,N,,", 'Row 3, column "length mm" is empty; the row is left out. Write a number.'],
    ["an unknown unit", "across,20,100,5,stone,103,", 'Row 3, column "unit": "stone" is no unit of load here; the row is left out. Write N, g, kg, oz or lb.'],
    ["an unknown way", "up,20,100,5,N,103,", 'Row 3, column "way": "up" is no way of a strip; the row is left out. Write along, across or 45.'],
    ["decimal commas between commas", "across,20,100,5,N,103,5,101,5", "Row 3 has 9 cells under 7 columns and is left out: its decimal commas part the cells too. Part the cells by semicolons, or write the numbers with points."],
    ["a decimal comma in the load alone", "across,20,100,0,5,kg,103,", "Row 3 has 8 cells under 7 columns and is left out: its decimal commas part the cells too. Part the cells by semicolons, or write the numbers with points."],
    ["a decimal comma in a row without its last cell", "across,20,100,0,5,kg,103", "Row 3 has its numbers under the wrong columns and is left out: its decimal commas part the cells too. Part the cells by semicolons, or write the numbers with points."],
    ["how much it grew for the whole length", "along,20,100,10,N,3,", 'Row 3, column "length mm": the strip would be shorter under load (3.0 mm) than without (100.0 mm); the reading is left out. Write the whole length between the marks, like 103.0, not by how much it grew.'],
    ["two units for one load", "along,20,100,0.5kg,g,103,", 'Row 3, column "load": "0.5kg" stands beside the unit g; the row is left out. Write one of the two units.'],
    ["an unknown unit behind a number", "along,20,100,5,N,103 px,", 'Row 3, column "length mm": "103 px" is no number; the row is left out. Write it like 104.5.'],
    ["shorter under load", "along,20,100,10,N,95,", 'Row 3, column "length mm": the strip would be shorter under load (95.0 mm) than without (100.0 mm); the reading is left out. Read it again.'],
    ["beyond the break", "along,20,100,10,N,190,", 'Row 3, column "length mm": 90.0 % longer, and goat or kid tears at 60 % or before; the reading is left out. Look at the length, and whether the clamp slipped.'],
    ["longer after than loaded", "along,20,100,10,N,103,108", 'Row 3, column "after a minute mm": longer a minute after (108.0 mm) than under load (103.0 mm). That length is left out; read it again, or look whether the two are swapped.'],
    ["lengths that fall as loads rise", "along,20,100,20,N,99.5,", 'Row 3, column "length mm": 99.5 mm under 20.0 N, but 101.5 mm under only 5.0 N. The lighter one is row 2. One of the two is misread; read both again.'],
    ["kilograms for grams", "along,20,100,500,kg,103,", 'Row 3, column "load": a load of 4903.3 N is left out: no such strip bears or feels it. Look at its unit, and write what hangs on the strip, bottle and clamp included.'],
    ["marks too near", "along,20,5,10,N,6,", 'Row 3, column "between marks mm": 5.0 mm between the marks; the strip is left out. Write the length between the marks before any load, 20 to 500 mm.'],
  ])("%s", (_, row, sentence) => expect(told(rows(good, row))).toContain(sentence));

  test("rows that lean on a row that could not be read are told so", () => {
    expect(told(rows("across,0,100,5,N,103,", ",,,10,N,105,"))[1]).toBe('Row 3, column "width mm" is empty, which means the same as above, and row 2 has nothing there that can be used; the row is left out.');
  });

  test("one reading alone is taken, with a wide band, and what is missing is said", () => {
    const said = told(rows(good));
    expect(said).toContain("Only one reading along: the band stays wide. Four loads from light to 30 N on 20 mm make it narrow.");
    expect(said.filter((text) => /^No strip (across|at 45 degrees) was read/.test(text))).toHaveLength(2);
    expect(said.some((text) => text.startsWith("The heaviest load is 5 N for 20 mm of width"))).toBe(true);
  });

  test("a light load after a heavy one is told, and its longer strip excused", () => {
    const said = told(rows("along,20,150,5,N,151.5,", ",,,10,N,153,", ",,,30,N,158,", ",,,5,N,155,"));
    expect(said.some((text) => text.startsWith('Row 5, column "load": a light load after a heavy one.'))).toBe(true);
    expect(said.some((text) => text.includes("One of the two is misread"))).toBe(false);
    expect(told(rows("along,20,150,30,N,158,", ",,,5,N,161,")).some((text) => text.includes("161.0 mm under only 5.0 N"))).toBe(true);
  });

  test("a strip along that gives more than the one across, and one reading off the others", () => {
    const swapped = rows(...[5, 10, 20, 30].flatMap((n) => [`along,20,150,${n},N,${150 + 3 + 0.6 * n},`]), "", ...[5, 10, 20, 30].map((n) => `across,20,150,${n},N,${150 + 1 + 0.25 * n},`));
    expect(told(swapped).some((text) => text.startsWith("The strip across gives less"))).toBe(true);
    const off = rows(...[5, 10, 15, 20, 25, 30].map((n) => `across,20,150,${n},N,${150 + 2 + 0.5 * n + (n === 15 ? 6 : 0)},`));
    expect(told(off).some((text) => /^Row 4, column "length mm": \d\.\d mm longer than the other readings/.test(text))).toBe(true);
  });
});

describe("what the fit finds odd", () => {
  test.each([1, 1000])("loads of %d times grams for kilograms are to be looked at, and their slip is named", (times) => {
    const loads = [["along", 0.5, 153], ["", 1, 155], ["", 3, 162], ["across", 0.5, 156], ["", 3, 170]] as const;
    const { strips } = readStripCsv(rows(...loads.map(([way, load, length]) => `${way},20,150,${load * times},g,${length},`)));
    const { findings } = fitStrips({ known: "goat", strips });
    const tiny = findings.filter((f) => f.code === "strip-loads-tiny" || f.code === "strip-far-off");
    expect(tiny.map((f) => f.code)).toEqual(times === 1 ? ["strip-loads-tiny"] : []);
    for (const one of tiny) expect([severityOf(one), explain(one)]).toEqual(["look", expect.stringContaining("kilograms and written as grams")]);
  });

  test("a leather more than four times off its kind, either way, is to be looked at", () => {
    const looks = (loads: readonly number[], more: number) => fitStrips({ known: "goat", strips: (["along", "across"] as const).map((way, i) => ({ way, widthMm: 20, gaugeMm: 100, readings: loads.map((loadN, k) => ({ loadN, lengthMm: 100 + more * (1 + i) * (k + 1) })) })) }).findings;
    const soft = looks([2, 4, 6], 9), firm = looks([100, 200, 300], 0.6);
    for (const findings of [soft, firm]) expect(findings.filter((f) => f.code === "strip-far-off").map(severityOf)).toEqual(["look"]);
    expect(firm.map(explain).join()).toContain("grams written as kilograms");
  });


  const strip = (way: string, ofLoad: (n: number) => number): string[] => ["", ...[10, 20, 30].map((n) => `${way},20,150,${n},N,${150 + ofLoad(n)},`)];
  const three = (bias: number, more = 1): string => rows(...strip("along", (n) => more * (3 + 0.25 * n)), ...strip("across", (n) => more * (5 + 0.5 * n)), ...strip("45", (n) => more * bias * n));

  test("a strip at 45 degrees that gives far less than the others let expect", () => {
    expect(told(three(0.55))).toEqual([]);
    expect(told(three(0.1)).some((text) => text.startsWith("The strip at 45 degrees gives only "))).toBe(true);
  });

  test("a leather unlike the one it was said to be, and which it is like", () => {
    expect(told(three(0.55, 2.2)).at(-1)).toMatch(/^Under a firm pull this leather gives \d\.\d times as much along and \d\.\d times as much across as goat or kid usually does\. Among those known it gives most like sheep nappa\.$/);
  });
});

describe("a file that cannot be read at all is refused", () => {
  const code = (text: string): string => {
    try {
      readStripCsv(text);
      return "";
    } catch (error) {
      if (error instanceof Refusal) return error.finding.code;
      throw error;
    }
  };
  test.each([
    ["nothing in it", "", "strips-no-rows"],
    ["only a header", header, "strips-no-rows"],
    ["no header", "along,20,150,5,N,152,", "strips-no-header"],
    ["a spreadsheet's own file", "PK\u0003\u0004\u0000", "strips-not-text"],
    ["more strips than a job holds", rows(...Array.from({ length: 61 }, (_, i) => `along,${20 + i / 100},150,5,N,152,`)), "strips-too-many"],
  ])("%s", (_, text, wanted) => expect(code(text)).toBe(wanted));

  test("whatever else the text is, strips, findings or a refusal come out", () => {
    for (const text of ["a;b;c\n1;2;3", `${header}\n,,,,,,`, `${header}\n"along,20`, `${header}\nalong,1e308,100,5,N,NaN,`, "\n\n\n#", `${header}\n${",".repeat(200)}x`]) {
      let ended = "";
      try {
        const { strips, findings } = readStripCsv(text);
        ended = strips.length + findings.length > 0 ? "told" : "silent";
      } catch (error) {
        ended = error instanceof Refusal ? "refused" : "broken";
      }
      expect(["told", "refused"], text.slice(0, 90)).toContain(ended);
    }
  });
});

test("strips of no use at all still give a leather: the known one, and it is told", () => {
  const { leather, findings } = fitStrips({ known: "calf", strips: [{ way: "along", widthMm: 20, gaugeMm: 100, readings: [{ loadN: 5, lengthMm: 40 }] }, { way: "across", widthMm: 20, gaugeMm: 100, readings: [] }] });
  expect(leather).toEqual(fitStrips({ known: "calf" }).leather);
  expect(findings.map((f) => f.code)).toEqual(["strip-shorter", "strip-empty", "strips-none"]);
});
