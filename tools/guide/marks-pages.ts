import { join } from "node:path";
import { usualSheets } from "#sheets/choices.ts";
import { marksPages } from "#sheets/marks/marks-pdf.ts";
import { printPaper } from "#sheets/print-paper.ts";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { lastInput } from "#job/sheets-for.ts";
import type { Made } from "./make.ts";
import { pageSvg } from "./page-svg.ts";

export const marksPicturesFolder = join("docs", "guide", "marks");

/** The first two pages of the example's marks.pdf, in vamp and quarters, so that side seams are seen as well. */
export function marksPictures(): readonly Made[] {
  const pair = new Pipeline().run({ ...defaultJob(), parts: { cut: "quarters" } }, new Map());
  if (pair.from !== "last") throw new Error("The example pair is made on a last.");
  const { inks } = marksPages({ ...lastInput(pair), choices: usualSheets }, printPaper(usualSheets));
  const named = [["both-lasts", "Marks on both lasts, example pair"], ["strips", "Strips and gauges for the right last, example pair"]] as const;
  return named.map(([name, title], i) => ({ path: join(marksPicturesFolder, `${name}.svg`), text: pageSvg({ ...inks[i]!.page, content: inks[i]!.content() }, title) }));
}
