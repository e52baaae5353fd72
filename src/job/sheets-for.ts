import { unwatched, type Watch } from "#base/watch.ts";
import type { Foretold } from "#lasting/foretold.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import type { LastInput } from "#sheets/input.ts";
import type { SheetFile } from "#sheets/sheet-file.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import type { LastPair, Pair } from "./pair.ts";
import type { Proof } from "./proof.ts";

/** All files of a pair, each read back and measured before it is given out. With a proof the report tells how the pattern did when it was tried out; what was foretold of lasting stands in the report and on the marks sheet. */
export async function sheetsFor(pair: Pair, watch: Watch = unwatched, proof?: Proof, foretold?: Foretold): Promise<readonly SheetFile[]> {
  const { labels, job, pieces, strips, parts, pieceSettings, made, findings, timesMs } = pair;
  const any = { ...labels, choices: sheetChoicesFrom(job.sheets), pieces, strips, parts, pieceSettings, ...(made && { made }), findings, timesMs };
  if (pair.from === "tape") return sheetsOf({ ...any, from: "tape", tape: pair.tape, traced: pair.traced }, watch);
  return sheetsOf({ ...any, from: "last", last: pair.last, lines: pair.lines, shellSettings: pair.shellSettings, beneath: pair.beneath, flat: pair.flat, ...(pair.seams && { seams: pair.seams }), ...(proof && { tried: proof }), ...(foretold && { foretold }), ...correctedFor(pair) }, watch);
}

/** Which leather was said, and what was corrected for it. */
function correctedFor({ job, corrected, leathers: { upper, lining }, lasting }: LastPair): Pick<LastInput, "corrected" | "leatherName"> {
  return { ...(job.leather.upper && { leatherName: upper.name }), ...(corrected && { corrected: { upper, lining, lasting, difference: corrected.difference } }) };
}
