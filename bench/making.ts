// What making takes, for a pair whose pieces are there: list, cost, steps, calendar, and the bench book. The peers are what the pair itself
// took in the same run: cutting its pieces, and writing its pattern.pdf. Aim: list, cost, steps and book together below 1 s on a 2-core machine.
import { unwatched } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { makingOfPair } from "#job/making.ts";
import { Pipeline } from "#job/pipeline.ts";
import { lastInput, sheetsFor } from "#job/sheets-for.ts";
import type { LastPair } from "#job/pair.ts";
import { bookPdf } from "#sheets/book/making-pdf.ts";
import { printPaper } from "#sheets/print-paper.ts";

const runs = 5;
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
const said = { sessions: "Tue 19:00-21:30, Thu 19:00-21:30, Sat 9:00-13:00", start: "2026-12-01", rate: "18", asked: "290", prices: { "upper leather": { price: "9,50", for: "1 ft2" }, thread: { price: "7.80", for: "1000 m" } } };
const jobs: readonly (readonly [string, Job])[] = [
  ["whole cut, taped edge", { ...defaultJob(), making: said }],
  ["quarters with all extras", { ...defaultJob(), making: said, parts: { cut: "quarters", seam: "lapped", strap: true, bow: true, toeCap: true, backStrip: true, sideLining: true }, shell: { edge: "bound" } }],
  ["10 pairs on 2 pairs of lasts", { ...defaultJob(), making: { ...said, pairs: "10", lasts: "2" } }],
  ["1,000 pairs", { ...defaultJob(), making: { ...said, pairs: "1000" } }],
];

async function timed(work: () => unknown): Promise<{ readonly ms: number; readonly first: number }> {
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return { ms: median(times), first: times[0]! };
}

for (const [name, job] of jobs) {
  const pair = new Pipeline().run(job, new Map(), { now: () => performance.now() }) as LastPair;
  const input = lastInput(pair), paper = printPaper(input.choices);
  const making = await timed(() => makingOfPair(pair));
  const book = await timed(() => bookPdf(input, paper));
  const sheets = await timed(() => sheetsFor(pair, unwatched));
  const { pages, bytes } = await bookPdf(input, paper);
  const pieces = pair.timesMs["pieces"]!;
  console.log(`${name.padEnd(26)} list, cost, steps, calendar ${making.ms.toFixed(1)} ms (first ${making.first.toFixed(0)}), ${(making.ms / pieces).toFixed(3)} of cutting the pieces (${pieces.toFixed(0)} ms); book ${book.ms.toFixed(0)} ms (first ${book.first.toFixed(0)}), ${pages.length} pages, ${(bytes.length / 1e3).toFixed(0)} kB, ${(book.ms / sheets.ms).toFixed(2)} of all sheets (${sheets.ms.toFixed(0)} ms)`);
}
