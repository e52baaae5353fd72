// All sheets of a pair of 36 pieces: laid out, drawn, written as PDF, SVG and DXF, read back and measured. The peer is the library
// that binds our PDF, drawing the same lines on bare pages by its own means, without layout, words, joints or reading back.
// Aim: all files in under 2 s on a 2-core machine, pattern.pdf under 1 MB.
import { PDFDocument, lineTo, moveTo, popGraphicsState, pushGraphicsState, stroke } from "@cantoo/pdf-lib";
import { unwatched } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { sheetsFor } from "#job/sheets-for.ts";
import type { Mark, Piece, Xy } from "#pieces/piece.ts";
import { area, perimeter } from "#plane/measure.ts";
import type { SheetChoices } from "#sheets/choices.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import { printPlan } from "#sheets/print-plan.ts";

const least = 36;
const runs = 5;
const pair = new Pipeline().run(defaultJob(), new Map());
const pieces = padded(pair.pieces);

/** The pair's own pieces, and smaller copies under names of their own until there are enough. */
function padded(own: readonly Piece[]): readonly Piece[] {
  const all = [...own];
  for (let k = 0; all.length < least; k++) all.push(smaller(own[k % own.length]!, 0.75 - 0.2 * Math.floor(k / own.length), `part ${1 + Math.floor(k / 2)}`));
  return all;
}

function smaller(piece: Piece, by: number, name: string): Piece {
  const at = ([x, y]: Xy): Xy => [x * by, y * by];
  const line = (xy: Float64Array) => ({ xy: xy.map((v) => v * by) });
  const mark = (m: Mark): Mark => {
    switch (m.kind) {
      case "line": return { ...m, line: line(m.line.xy) };
      case "notch": return { ...m, at: at(m.at), toward: at(m.toward) };
      case "prick": return { ...m, at: at(m.at) };
      case "arrow": return { ...m, from: at(m.from), to: at(m.to) };
      case "text": return { ...m, at: at(m.at), text: m.text === piece.name ? name : m.text };
    }
  };
  const outline = line(piece.outline.xy);
  return { ...piece, name, outline, marks: piece.marks.map(mark), areaMm2: area(outline), perimeterMm: perimeter(outline) };
}

/** The same cutting lines and marks as bare polylines, one piece a page. */
async function bare(): Promise<Uint8Array> {
  const doc = await PDFDocument.create();
  for (const { outline, marks } of pieces) {
    const page = doc.addPage([1000, 1000]);
    const lines = [outline.xy, ...marks.flatMap((m) => (m.kind === "line" ? [m.line.xy] : []))];
    page.pushOperators(pushGraphicsState());
    for (const xy of lines) {
      for (let i = 0; i < xy.length; i += 2) page.pushOperators((i === 0 ? moveTo : lineTo)(xy[i]! * (72 / 25.4), xy[i + 1]! * (72 / 25.4)));
      page.pushOperators(stroke());
    }
    page.pushOperators(popGraphicsState());
  }
  return doc.save();
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
/** Medians of the clock and of the processor's own time, which on a shared machine is nearer to a quiet one's, and the first run's; ms. */
async function timed<T>(work: () => T | Promise<T>): Promise<{ readonly ms: number; readonly processor: number; readonly first: number; readonly made: T }> {
  const times: number[] = [], worked: number[] = [];
  let made: T | undefined;
  for (let i = 0; i < runs; i++) {
    const [start, before] = [performance.now(), process.cpuUsage()];
    made = await work();
    times.push(performance.now() - start);
    const { user, system } = process.cpuUsage(before);
    worked.push((user + system) / 1000);
  }
  return { ms: median(times), processor: median(worked), first: times[0]!, made: made! };
}

const raw = await timed(bare);
console.log(`${pieces.length} pieces, ${pieces.reduce((n, p) => n + p.outline.xy.length / 2, 0)} points of cutting lines`);
console.log(`bare lines by the library alone: ${raw.ms.toFixed(0)} ms (processor ${raw.processor.toFixed(0)}, first ${raw.first.toFixed(0)}), ${(raw.made.length / 1e3).toFixed(0)} kB`);
const kinds: readonly (readonly [string, Partial<SheetChoices>])[] = [
  ["A4", {}],
  ["A4, a page for every piece", { onePage: true }],
  ["A4, corrected", { barAcrossMm: 99.2, barUpMm: 99.7 }],
  ["Letter", { paper: "Letter" }],
  ["A3", { paper: "A3" }],
  ["A2", { paper: "A2" }],
  ["roll of 610 mm", { paper: "roll" }],
];
for (const [name, sheets] of kinds) {
  const plan = await timed(() => printPlan(pieces, sheetChoicesFrom(sheets)));
  const all = await timed(() => sheetsFor({ ...pair, pieces, job: { ...pair.job, sheets } }, unwatched));
  const pdf = all.made.find((f) => f.name === "pattern.pdf")!.bytes;
  const pages = (await PDFDocument.load(pdf)).getPageCount();
  console.log(`${name.padEnd(28)} ${all.ms.toFixed(0).padStart(5)} ms (processor ${all.processor.toFixed(0)}, first ${all.first.toFixed(0)}), ${(all.processor / raw.processor).toFixed(1)} times the bare lines; laying out ${plan.ms.toFixed(0).padStart(4)} ms; ${String(pages).padStart(3)} pages, ${(pdf.length / 1e3).toFixed(0)} kB`);
}
