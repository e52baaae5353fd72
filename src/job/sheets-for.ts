import { must } from "#base/bug.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import type { SheetFile } from "#sheets/sheet-file.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import type { Pair } from "./pair.ts";

/** All files of a pair, each read back and measured before it is given out. */
export async function sheetsFor(pair: Pair, watch: Watch = unwatched): Promise<readonly SheetFile[]> {
  must(pair.from === "last", "no pair on a taped pattern is made yet");
  const { labels, job, from, last, lines, flat, pieces, pieceSettings, findings, timesMs } = pair;
  return sheetsOf({ ...labels, from, paper: job.paper, last, lines, flat, pieces, pieceSettings, findings, timesMs }, watch);
}
