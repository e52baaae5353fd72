import { unwatched, type Watch } from "#base/watch.ts";
import type { Foretold } from "#lasting/foretold.ts";
import type { Making } from "#making/making.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import type { LastInput, SheetInput, TapeInput } from "#sheets/input.ts";
import type { SheetFile } from "#sheets/sheet-file.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { edgeOf, makingOfPair } from "./making.ts";
import type { LastPair, Pair, TapedPair } from "./pair.ts";
import type { Proof } from "./proof.ts";

/** All files of a pair, each read back and measured before it is given out. With a proof the report tells how the pattern did when it was tried out; what was foretold of lasting stands in the report and on the marks sheet. Who has worked out what making takes hands it in. */
export function sheetsFor(pair: Pair, watch: Watch = unwatched, proof?: Proof, foretold?: Foretold, making = makingOfPair(pair)): Promise<readonly SheetFile[]> {
  const input: SheetInput = pair.from === "tape" ? tapeInput(pair, making) : { ...lastInput(pair, making), ...(proof && { tried: proof }), ...(foretold && { foretold }) };
  return sheetsOf(input, watch);
}

/** What the sheets of a pair on a last are made from. */
export function lastInput(pair: LastPair, making = makingOfPair(pair)): LastInput {
  const { last, lines, shellSettings, beneath, flat, seams, corrected, leathers: { upper, lining }, lasting, job } = pair;
  return {
    ...anyInput(pair, making),
    from: "last",
    last, lines, shellSettings, beneath, flat,
    ...(seams && { seams }),
    // Which leather was said, and what was corrected for it.
    ...(job.leather.upper && { leatherName: upper.name }),
    ...(corrected && { corrected: { upper, lining, lasting, difference: corrected.difference } }),
  };
}

/** The same of a taped pattern. */
const tapeInput = (pair: TapedPair, making: Making): TapeInput => ({ ...anyInput(pair, making), from: "tape", tape: pair.tape, traced: pair.traced });

function anyInput(pair: Pair, making: Making): Omit<TapeInput, "from" | "tape" | "traced"> {
  const { labels, job, pieces, strips, stitching, parts, pieceSettings, made, timesMs } = pair;
  const findings = [...pair.findings, ...making.findings];
  return { ...labels, choices: sheetChoicesFrom(job.sheets), pieces, strips, stitching, making, parts, edge: edgeOf(pair), pieceSettings, ...(made && { made }), findings, timesMs };
}
