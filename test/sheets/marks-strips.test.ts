import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { overUpperOf } from "#lasting/over-upper.ts";
import { Pipeline } from "#job/pipeline.ts";
import { lastInput } from "#job/sheets-for.ts";
import { unwatched } from "#base/watch.ts";
import { completeMeasures } from "#last/measures-by-size.ts";
import type { LastInput } from "#sheets/input.ts";
import { gaugesFor, marksPdf } from "#sheets/marks/marks-pdf.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import { marginMm, type PaperName } from "#sheets/paper.ts";
import { printPaper } from "#sheets/print-paper.ts";
import { pdfPages } from "#sheets/readback/pdf-paths.ts";
import { proveMarksPdf } from "#sheets/readback/prove.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { onLast } from "../support/on-last.ts";
import { pdfLines } from "../support/pdf-lines.ts";

function inputFor(sizeEu: number, side: "right" | "left", cut: "back-seam" | "quarters"): LastInput {
  const { measures } = completeMeasures({ sizeEu, side });
  const pair = onLast(new Pipeline().run({ ...defaultJob(), size: `EU ${sizeEu}`, last: { from: "measures", measures }, parts: { cut } }, new Map()));
  return lastInput(pair);
}

const pairs = { small: inputFor(34, "right", "back-seam"), usual: inputFor(38, "left", "quarters"), large: inputFor(43, "right", "quarters") };
const papers: readonly (readonly [PaperName, number])[] = [["A4", 610], ["Letter", 610], ["A3", 610], ["roll", 200]];

describe.each(Object.entries(pairs))("marks.pdf of a %s pair", (_, input) => {
  test.each(papers)("on %s is read back true, by our own reader and by pdf.js, with all ink within the page's margins", async (paper, rollWidthMm) => {
    const printed = printPaper(sheetChoicesFrom({ paper, rollWidthMm }));
    const file = await marksPdf(input, printed);
    await proveMarksPdf(file, file.strips);
    const pages = await pdfLines(file.bytes);
    for (const { lines, view } of pages) {
      const [wide, high] = [(view[2]! * 25.4) / 72, (view[3]! * 25.4) / 72];
      for (const { xy, stroked } of lines) {
        if (!stroked) continue;
        for (let i = 0; i < xy.length; i += 2) {
          expect(xy[i]).toBeGreaterThan(marginMm - 0.5);
          expect(xy[i]).toBeLessThan(wide - marginMm + 0.5);
          expect(xy[i + 1]).toBeGreaterThan(marginMm - 0.5);
          expect(xy[i + 1]).toBeLessThan(high - marginMm + 0.5);
        }
      }
    }
    // One page of drawings and one for each last, of the largest size on the shortest paper too.
    expect(pages).toHaveLength(3);
  });

  test("gauges every mark on both lasts, one the mirror of the other", async () => {
    const file = await marksPdf(input, printPaper(sheetChoicesFrom()));
    const lengths = (side: string) =>
      file.strips.filter((s) => s.name.startsWith(`${side}-`)).map((s) => [s.name.slice(side.length), s.marks.map((m) => m.lengthMm)] as const).sort((a, b) => (a[0] < b[0] ? -1 : 1));
    expect(lengths("left")).toEqual(lengths("right"));
    const gauges = gaugesFor(input);
    const ticks = new Set(file.strips.flatMap((s) => s.marks.map((m) => m.lengthMm)));
    for (const mark of gauges.marks) if (mark.lengthMm !== undefined) expect([mark.key, ticks.has(mark.lengthMm)]).toEqual([mark.key, true]);
    // From its measuring edge a strip of one last runs the other way than its twin on the mirrored last.
    const paths = (await pdfPages(file.bytes)).flatMap((page) => page.paths);
    const inward = (name: string) => {
      const { xy } = paths.find((p) => p.name === `zero-${name}`)!;
      return Math.round(1000 * (xy[2]! - xy[0]!));
    };
    for (const strip of ["lateral-seat", "medial-seat", "lateral-toe", "medial-toe"]) {
      expect(inward(`left-${strip}`)).toBe(-inward(`right-${strip}`));
      expect(Math.abs(inward(`left-${strip}`))).toBe(15000);
    }
    // A right outer side is seen with its toe to the right, the feather line below: turned upright with the seat down, that edge lies on the right.
    expect(inward("right-lateral-seat")).toBeLessThan(0);
  });
});

test("the strips along the feather line meet at the joint: from seat and toe together as long as the half", () => {
  const gauges = gaugesFor(pairs.usual);
  const { feather } = pairs.usual.last;
  const n = feather.points.length / 3;
  let round = 0;
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    round += Math.hypot(...[0, 1, 2].map((d) => feather.points[3 * j + d]! - feather.points[3 * i + d]!));
  }
  expect(gauges.featherMm.medial + gauges.featherMm.lateral).toBeCloseTo(round, 1);
});

test("foretold lengths stand in the report and on the sheets only where there are any", async () => {
  const { usual } = pairs;
  const band = (target: number) => ({ target, predicted: target + 0.5, low: target - 1, high: target + 2.25 });
  const { throatDepthMm, backHeightMm } = usual.lines.settings;
  const foretold = { banded: { throatDepthMm: band(throatDepthMm), backHeightMm: band(backHeightMm), innerHeightMm: band(usual.lines.lowestMedial.heightMm), outerHeightMm: band(usual.lines.lowestLateral.heightMm) } };
  const read = async (input: LastInput) => {
    const files = await sheetsOf(input, unwatched);
    const bytes = (name: string) => files.find((f) => f.name === name)!.bytes;
    return { report: JSON.parse(new TextDecoder().decode(bytes("report.json"))), words: (await pdfLines(bytes("marks.pdf")))[0]!.text };
  };
  const [without, withBand] = [await read(usual), await read({ ...usual, foretold })];
  expect(without.report.lasting.throatDepthMm).toEqual({ target: throatDepthMm });
  expect(without.words).not.toContain("foretold");
  // What the tape should read when lasted stands beside the bare length, to half a millimetre.
  const { throatMm, backMm } = overUpperOf(usual.beneath);
  expect(without.words).toContain("on shoe");
  for (const mm of [throatDepthMm + throatMm, backHeightMm + backMm]) expect(without.words).toContain((Math.round(2 * mm) / 2).toFixed(1));
  expect(withBand.report.lasting.throatDepthMm).toEqual({ target: throatDepthMm, predicted: throatDepthMm + 0.5, low: throatDepthMm - 1, high: throatDepthMm + 2.25 });
  expect(withBand.report.lasting.sideHeightsMm.lateral.lowest).toHaveProperty("high");
  expect(withBand.words).toContain("foretold");
});
