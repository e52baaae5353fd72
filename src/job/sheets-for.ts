import { unwatched, type Watch } from "#base/watch.ts";
import type { Foretold } from "#lasting/foretold.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import type { LastInput, SheetInput, TapeInput } from "#sheets/input.ts";
import type { SheetFile } from "#sheets/sheet-file.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { shellChoices } from "#shell/rules.ts";
import { makingOfPair } from "./making.ts";
import type { LastPair, Pair, TapedPair } from "./pair.ts";
import type { Proof } from "./proof.ts";

/** All files of a pair, each read back and measured before it is given out. With a proof the report tells how the pattern did when it was tried out; what was foretold of lasting stands in the report and on the marks sheet. */
export function sheetsFor(pair: Pair, watch: Watch = unwatched, proof?: Proof, foretold?: Foretold): Promise<readonly SheetFile[]> {
  const input: SheetInput = pair.from === "tape" ? tapeInput(pair) : { ...lastInput(pair), ...(proof && { tried: proof }), ...(foretold && { foretold }) };
  return sheetsOf(input, watch);
}

/** What the sheets of a pair on a last are made from. */
export function lastInput(pair: LastPair): LastInput {
  const { last, lines, shellSettings, beneath, flat, seams, corrected, leathers: { upper, lining }, lasting, job } = pair;
  return {
    ...anyInput(pair),
    from: "last",
    last, lines, shellSettings, beneath, flat,
    ...(seams && { seams }),
    // Which leather was said, and what was corrected for it.
    ...(job.leather.upper && { leatherName: upper.name }),
    ...(corrected && { corrected: { upper, lining, lasting, difference: corrected.difference } }),
  };
}

/** The same of a taped pattern. */
export const tapeInput = (pair: TapedPair): TapeInput => ({ ...anyInput(pair), from: "tape", tape: pair.tape, traced: pair.traced });

function anyInput(pair: Pair): Omit<TapeInput, "from" | "tape" | "traced"> {
  const { labels, job, pieces, strips, stitching, parts, pieceSettings, made, timesMs } = pair;
  const making = makingOfPair(pair), findings = [...pair.findings, ...making.findings];
  const edge = pair.from === "last" ? pair.shellSettings.edge : job.shell.edge ?? shellChoices.edge;
  return { ...labels, choices: sheetChoicesFrom(job.sheets), pieces, strips, stitching, making, parts, edge, pieceSettings, ...(made && { made }), findings, timesMs };
}
