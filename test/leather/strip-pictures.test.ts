// What is drawn of the strip test: the guide shows what the program draws, and the plot puts everything where it belongs.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { fitStrips } from "#leather/fit-strips.ts";
import { readStripCsv } from "#leather/strip-csv.ts";
import { stripDrawing } from "#leather/strip-drawing.ts";
import { plotStrips } from "#leather/strip-plot.ts";
import { letterHeight } from "#leather/strip-sketch.ts";
import { textOf } from "../../tools/guide/make.ts";
import { stripPictures, stripPicturesFolder } from "../../tools/guide/strips.ts";

test("the guide's pictures are those that the program draws", () => {
  const made = stripPictures();
  expect(made.filter(({ path, text }) => textOf(path) !== text).map(({ path }) => path), "Run `npm run guide`, look at what changed, and commit it.").toEqual([]);
  expect(readdirSync(stripPicturesFolder).map((name) => join(stripPicturesFolder, name)).sort()).toEqual(made.map(({ path }) => path).sort());
});

test("every line and word of the drawings lies on its ground", () => {
  const sketches = stripDrawing();
  expect(sketches.map(({ key }) => key)).toEqual(["cut", "mark", "hang"]);
  for (const { key, width, height, lines, words } of sketches) {
    for (const { xy } of lines) for (let i = 0; i < xy.length; i += 2) expect(xy[i]! >= 0 && xy[i]! <= width && xy[i + 1]! >= 0 && xy[i + 1]! <= height, `${key} ${xy.join(" ")}`).toBe(true);
    for (const { text, x, y, anchor } of words) {
      // Letters of such a type are half as wide as high in the mean; 0.55 to be safe.
      const long = 0.55 * letterHeight * text.length;
      const from = anchor === "start" ? x : anchor === "middle" ? x - long / 2 : x - long;
      expect(from >= 0 && from + long <= width && y - letterHeight >= 0 && y <= height, `${key}: ${text}`).toBe(true);
    }
  }
});

test("strips stand to the backbone as they are named: along it, square to it, at 45 degrees", () => {
  const strips = stripDrawing()[0]!.lines.filter(({ kind }) => kind === "mark");
  const turned = strips.map(({ xy }) => Math.round((Math.atan2(xy[3]! - xy[1]!, xy[2]! - xy[0]!) * 180) / Math.PI));
  expect(turned).toEqual([0, 90, 45]);
});

describe("the plot", () => {
  const fit = fitStrips({ known: "goat", strips: readStripCsv(readFileSync("examples/strips-goat.csv", "utf8")).strips });
  const frame = { left: 10, top: 5, width: 200, height: 100 };
  const plot = plotStrips(fit, frame);

  test("has every reading and every way, all inside its frame, the band round its curve", () => {
    expect(plot.readings).toHaveLength(30);
    expect(plot.ways.map(({ way }) => way)).toEqual(["along", "across", "bias"]);
    const inside = (x: number, y: number): boolean => x >= 10 - 1e-9 && x <= 210 + 1e-9 && y >= 5 - 1e-9 && y <= 105 + 1e-9;
    for (const { x, y } of plot.readings) expect(inside(x, y)).toBe(true);
    for (const { line, band } of plot.ways) {
      const n = line.length / 2;
      for (let i = 0; i < n; i++) {
        expect(inside(line[2 * i]!, line[2 * i + 1]!)).toBe(true);
        // Upper rim forward, lower rim back; y runs downward.
        expect(band[2 * i + 1]!).toBeLessThanOrEqual(line[2 * i + 1]! + 1e-9);
        expect(band[2 * (2 * n - 1 - i) + 1]!).toBeGreaterThanOrEqual(line[2 * i + 1]! - 1e-9);
      }
    }
  });

  test("the curve of each way goes through the stretch told at 10 N", () => {
    const ten = plot.loads.find(({ text }) => text === "10")!.at;
    const perPercent = (plot.stretches[0]!.at - plot.stretches[1]!.at) / Number(plot.stretches[1]!.text);
    for (const { way, line } of plot.ways) {
      let i = 2;
      while (line[i]! < ten) i += 2;
      const share = (ten - line[i - 2]!) / (line[i]! - line[i - 2]!);
      const y = line[i - 1]! + share * (line[i + 1]! - line[i - 1]!);
      expect((105 - y) / perPercent / 100).toBeCloseTo(fit.told[way].stretch, 3);
    }
  });

  test("without readings shows what is usual, in all ways", () => {
    const usual = plotStrips(fitStrips({ known: "nappa" }), frame);
    expect(usual.ways).toHaveLength(3);
    expect(usual.readings).toEqual([]);
    expect(usual.stretches.length).toBeGreaterThan(3);
  });
});
