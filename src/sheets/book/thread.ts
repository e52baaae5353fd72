import { capital } from "#base/listed.ts";
import type { ThreadNeed } from "#making/thread/thread-need.ts";
import { lengthWords } from "#making/amounts/units.ts";
import type { Block } from "./block.ts";
import { plain } from "./numbers.ts";
import { columnsFor, tableBlocks } from "./table.ts";
import { heading, lines, small } from "./words.ts";

/** Thread and needle, then every seam with the stitches that it takes. */
export function threadBlocks(thread: ThreadNeed, width: number): readonly Block[] {
  const { ticket, tex, diameterMm, needle, seams, topMm, bobbinMm, totalMm, wasteShare } = thread;
  const told = `Thread number ${plain(ticket)} (${plain(tex)} tex, ${plain(diameterMm)} mm thick) with needle ${needle.nm} (American ${needle.us}): ${lengthWords(totalMm)} for the pair, ${lengthWords(topMm)} on the spool and ${lengthWords(bobbinMm)} on the bobbin, ${Math.round(100 * wasteShare)} % of it for ends and waste.`;
  const columns = columnsFor(width, [{ head: "Seam" }, { head: "Stitched, both shoes", mm: 34 }, { head: "Stitches in 10 mm", mm: 28 }, { head: "Through", mm: 20 }, { head: "Thread a seam", mm: 22 }, { head: "Thread", mm: 32 }]);
  const rows = seams.map((s) => [capital(s.name), lengthWords(s.seamMm), plain(s.stitchesPerCm), `${plain(s.stackMm)} mm`, `${plain(s.ratio)} times`, lengthWords(s.threadMm)]);
  return [
    { cells: [{ x: 0, lines: [...lines("Thread and needle, seam by seam", width, heading), ...lines(told, width, small)] }], keep: true, gapMm: 4 },
    ...tableBlocks(columns, rows, { gapMm: 1, close: true }),
  ];
}
