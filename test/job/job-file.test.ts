import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import { defaultJob, jobForScan, jobForTape } from "#job/default-job.ts";
import { digest } from "#job/digest.ts";
import { isJobFile, readJobFile, writeJobFile } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";

/** What a lining was before it could be cut in three. */
const onePiece = { lining: "one" };
/** A job as it was saved before parts and sheets had words of their own. */
const before4 = (job: Job) => Object.fromEntries(Object.entries(job).filter(([field]) => field !== "parts" && field !== "sheets"));
const none = new Map<string, Uint8Array>();
const asJson = (value: unknown) => strToU8(JSON.stringify(value));

describe("a saved job", () => {
  test("comes back as it was, with the scan it speaks of", () => {
    const scan = Uint8Array.from([1, 2, 3, 4]);
    const job: Job = { ...jobForScan("old last.stl", "left"), title: "Zoë – 38½", lines: { throatDepthMm: 68.5 }, shell: { springMm: 4, edge: "folded", toplineShorter: 0.03 }, pieces: { toplineFoldMm: 5 } };
    const bytes = writeJobFile(job, new Map([["old last.stl", scan]]));
    const back = readJobFile("zoe.lastwise", bytes);
    expect(back.job).toEqual(job);
    expect(back.files.get("old last.stl")).toEqual(scan);
    expect(isJobFile("zoe.lastwise", bytes)).toBe(true);
  });

  test("is the same bytes every time", () => {
    expect(writeJobFile(defaultJob(), none)).toEqual(writeJobFile(defaultJob(), none));
  });

  test("may be plain JSON, its scan beside it", () => {
    expect(readJobFile("pair.json", asJson(jobForScan("a.stl"))).job.last).toEqual({ from: "scan", file: "a.stl" });
  });

  test("of an older version is brought up to date, with all that the maker said", () => {
    // The shell's decisions and what was said of a scan lay elsewhere: an unknown field would be refused.
    const former = before4(jobForScan("a.stl", "left"));
    const old = { ...former, paper: "A4", shell: undefined, springMm: 0, version: 1, last: { from: "scan", file: "a.stl", side: "left" } };
    expect(readJobFile("pair.json", asJson(old)).job).toEqual({ ...jobForScan("a.stl", "left"), parts: onePiece });
    const today = before4(defaultJob());
    const example = { ...today, paper: "A4", shell: undefined };
    expect(readJobFile("pair.json", asJson({ ...example, springMm: 0, version: 2 })).job).toEqual({ ...defaultJob(), parts: onePiece });
    expect(readJobFile("pair.json", asJson({ ...example, springMm: 4, version: 1 })).job).toEqual({ ...defaultJob(), parts: onePiece, shell: { springMm: 4 } });
    expect(readJobFile("pair.json", asJson({ ...today, paper: "Letter", version: 3 })).job).toEqual({ ...defaultJob(), parts: onePiece, sheets: { paper: "Letter" } });
    expect(() => readJobFile("pair.json", asJson({ ...example, springMm: "four", version: 2 }))).toThrow("the field shell → springMm must be a number");
    expect(() => readJobFile("pair.json", asJson({ ...old, version: 0 }))).toThrow(/version/);
  });

  test("of an older version with no fold at the topline is cut raw, as its number said", () => {
    const former = before4(defaultJob());
    const old = { ...former, paper: "A4", shell: undefined, springMm: 2, version: 2 };
    const raw = readJobFile("pair.json", asJson({ ...old, pieces: { toplineFoldMm: 0, backSeamMm: 2 } }));
    expect(raw.job).toEqual({ ...defaultJob(), shell: { springMm: 2, edge: "raw" }, pieces: { backSeamMm: 2 }, parts: onePiece });
    // Raw takes the upper half of 2 to 3 % (common practice, no source), so 2.75 %; over a tape 2.25 %.
    expect(raw.findings!.map(explain)).toEqual([expect.stringMatching(/cut 2\.75 % shorter .* taken as cut raw/)]);
    const folded = readJobFile("pair.json", asJson({ ...old, pieces: { toplineFoldMm: 5 } }));
    expect(folded.job).toMatchObject({ shell: { springMm: 2 }, pieces: { toplineFoldMm: 5 } });
    expect(folded.findings!.map(explain)).toEqual([expect.stringMatching(/cut 2\.25 % shorter than on the last, and the upper lies over lining, stiffener and toe puff\. Look/)]);
    expect(folded.findings!.map(severityOf)).toEqual(["note"]);
  });

  test("of this version, and a taped pattern of any, comes out as it was saved: nothing is said", () => {
    expect(readJobFile("pair.json", asJson(defaultJob())).findings).toEqual([]);
    const taped = before4(jobForTape({ photos: ["in.jpg"], side: "right" }));
    expect(readJobFile("pair.json", asJson({ ...taped, paper: "A4", shell: undefined, version: 2 })).findings).toEqual([]);
  });

  test("is refused with the field named when something is wrong in it", () => {
    const wrong = (change: object) => () => readJobFile("pair.json", asJson({ ...defaultJob(), ...change }));
    expect(wrong({ shell: { springMm: "four" } })).toThrow("pair.json: the field shell → springMm must be a number");
    expect(wrong({ shell: { edge: "torn" } })).toThrow("the field shell → edge must be one of taped, folded, raw, bound, wrapped, bagged");
    expect(wrong({ shell: { toplineShorter: 2 } })).toThrow("the field shell → toplineShorter must be a share, at most 0.08");
    expect(wrong({ lines: { throatDepthMm: -3 } })).toThrow("the field lines → throatDepthMm must be greater than zero");
    expect(wrong({ sheets: { paper: "A9" } })).toThrow("the field sheets → paper must be one of A4, Letter, A3, A2");
    expect(wrong({ sheets: { barUpMm: 89 } })).toThrow("the field sheets → barUpMm must be 95 mm or more");
    expect(wrong({ parts: { cut: "sideways" } })).toThrow("the field parts → cut must be one of back-seam, inner-seam, quarters");
    expect(wrong({ parts: { strap: 1 } })).toThrow("the field parts → strap must be true or false");
    expect(wrong({ version: 7 })).toThrow(/newer Lastwise/);
    expect(wrong({ lines: { throatdepth: 70 } })).toThrow(/field lines/);
    expect(() => readJobFile("pair.json", asJson({ hello: 1 }))).toThrow(/not a job saved by Lastwise/);
    expect(() => readJobFile("pair.json", strToU8("solid"))).toThrow(/not a job saved by Lastwise/);
    expect(() => readJobFile("pair.lastwise", new Uint8Array(0))).toThrow(/empty/);
  });

  test("holds prices, shelf, sizes, minutes and ticks by no more names than anyone writes", () => {
    const names = (count: number, value: unknown) => Object.fromEntries(Array.from({ length: count }, (_, k) => [`thing ${k}`, value]));
    const opened = (making: object) => () => readJobFile("pair.json", asJson({ ...defaultJob(), making }));
    for (const [field, value] of [["prices", { price: 1 }], ["shelf", "1"], ["skins", "1"], ["minutes", "1"], ["done", {}]] as const) {
      expect(opened({ [field]: names(200, value) })().job.making).toEqual({ [field]: names(200, value) });
      expect(opened({ [field]: names(201, value) })).toThrow(`pair.json: the field making → ${field} must hold at most 200 names. Correct it and open the file again.`);
    }
    expect(opened({ shelf: { ["x".repeat(61)]: "1" } })).toThrow(/making → shelf → x+ must be a name of at most 60 letters/);
    expect(opened({ shelf: [] })).toThrow("the field making → shelf must hold numbers or short texts by name");
  });

  // ECMA-262: JSON.parse makes "__proto__" a field like any other.
  test.each([
    ['{"thread": "1 m", "__proto__": "3 m"}', "shelf", "making → shelf"], ['{"thread": {"price": 1, "__proto__": {"for": "1 m"}}}', "prices", "making → prices → thread"], ['{"__proto__": "90"}', "minutes", "making → minutes"], ["{}", "__proto__", "making"],
  ])("drops nothing without a word: %s in %s", (value, field, place) => {
    const text = JSON.stringify({ ...defaultJob(), making: {} }).replace('"making":{}', `"making":{"${field}":${value}}`);
    expect(() => readJobFile("pair.json", strToU8(text))).toThrow(`pair.json: the field ${place} holds __proto__, which is not known here. Correct it and open the file again.`);
  });

  test("keeps other names that the language uses", () => {
    const shelf = { constructor: "1 m2", toString: "2", hasOwnProperty: "3" };
    expect(readJobFile("pair.json", asJson({ ...defaultJob(), making: { shelf } })).job.making.shelf).toEqual(shelf);
  });

  test("is refused when the zip is cut short or holds no job", () => {
    const bytes = writeJobFile(defaultJob(), none);
    expect(() => readJobFile("pair.lastwise", bytes.slice(0, bytes.length - 20))).toThrow(/damaged or was not saved whole/);
    expect(() => readJobFile("pair.lastwise", zipSync({ "other.txt": strToU8("x") }))).toThrow(/holds no job.json/);
  });

  test("speaks only of files inside it or beside it, never of a path", () => {
    const on = (file: string) => () => readJobFile("pair.json", asJson({ ...defaultJob(), last: { from: "scan", file } }));
    for (const file of ["../secret.stl", "/etc/passwd", "C:\\last.stl", "deep/last.stl", "..", "", "a\0b", "job.json"]) expect(on(file), file).toThrow(/the field last → file must be the name of a file/);
    for (const file of ["last 2.stl", "..hidden.stl", "Größe 38½.stl", "靴.ply"]) expect(on(file)().job.last, file).toEqual({ from: "scan", file });
  });

  test("of a scan with a very long name can be opened again", () => {
    const job = jobForScan(`${"long ".repeat(60)}.stl`);
    expect(readJobFile("pair.json", asJson(job)).job).toEqual(job);
  });

  test("cannot be saved without the scan it speaks of", () => {
    expect(() => writeJobFile(jobForScan("a.stl"), none)).toThrow(/a.stl/);
  });
});

test("a digest tells files apart by one byte and by length", () => {
  const a = Uint8Array.from([1, 2, 3]);
  expect(digest(a)).toBe(digest(a.slice()));
  expect(digest(a)).not.toBe(digest(Uint8Array.from([1, 2, 4])));
  expect(digest(a)).not.toBe(digest(Uint8Array.from([1, 2, 3, 0])));
});
