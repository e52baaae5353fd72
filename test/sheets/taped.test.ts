import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { cardMarks } from "#sheets/marks/card-marks.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { pdfLines } from "../support/pdf-lines.ts";
import { tapedInput } from "../support/taped-input.ts";

describe("sheets of a taped pattern", () => {
  test("are all there, each read back true, and the report tells the tape in place of a last", async () => {
    const made = tapedInput("right", true);
    const files = await sheetsOf(made, unwatched);
    expect(files.map((f) => f.name)).toEqual(["pattern.pdf", "pattern.svg", "pattern.dxf", "marks.pdf", "making.pdf", "report.json"]);
    const report = JSON.parse(new TextDecoder().decode(files.find((f) => f.name === "report.json")!.bytes));
    expect(report).not.toHaveProperty("last");
    expect(report).not.toHaveProperty("shell");
    expect(report.tape).toMatchObject({ side: "right", lastLengthMm: { how: "traced" }, photos: [{ name: "tape.jpg" }] });
    expect(report.tape.medial.backMm).toBeCloseTo(made.tape.medial.lengths.back, 3);
    expect(report.lasting.throatDepthMm.target).toBeCloseTo((made.tape.medial.lengths.centre + made.tape.lateral.lengths.centre) / 2, 3);
    expect(report.lasting).not.toHaveProperty("sideHeightsMm");
    expect(report.pieces).toHaveLength(made.pieces.length);
    const names = report.pieces.map((p: { name: string; side: string }) => `${p.name}, ${p.side}`).sort();
    const all = ["bottom filler", "insole", "lining", "outsole", "second insole board", "shank", "sock", "toe puff", "upper", "upper, net"];
    expect(names).toEqual(all.flatMap((name) => [`${name}, left`, `${name}, right`]).sort());
    expect(report.strips.map((s: { name: string }) => s.name)).toEqual(["fold tape", "seam tape", "seam tape of the lining", "flank tape"]);
    expect(report.parts).toMatchObject({ cut: "back-seam", lining: "one" });
    expect(Object.keys(report.made)).toEqual(["boards", "shank", "filler"]);
  });

  test("without a bottom hold nothing of it, of a left one too", async () => {
    const files = await sheetsOf(tapedInput("left", false), unwatched);
    const report = JSON.parse(new TextDecoder().decode(files.find((f) => f.name === "report.json")!.bytes));
    expect(report.tape).not.toHaveProperty("bottom");
    expect(report).not.toHaveProperty("made");
    const all = ["lining", "toe puff", "upper", "upper, net"];
    expect(report.pieces.map((p: { name: string; side: string }) => `${p.name}, ${p.side}`).sort()).toEqual(all.flatMap((name) => [`${name}, left`, `${name}, right`]).sort());
    expect(report.findings.map((f: { code: string }) => f.code)).toContain("tape-no-bottom");
  });

  test("the marks page says that its lengths are those of the flat pattern", async () => {
    const made = tapedInput("right", true);
    const text = (await pdfLines((await sheetsOf(made, unwatched)).find((f) => f.name === "marks.pdf")!.bytes))[0]!.text.join(" ");
    expect(text).toContain("lying flat; there is no last in this job");
    const { back } = cardMarks(made.tape);
    expect(text).toContain(`back ${(Math.round(back.lengthMm * 2) / 2).toFixed(1)}`);
  });
});
