import type { Pair } from "#job/pair.ts";
import type { Rules } from "#job/run-options.ts";

/** The rules of construction that a pair was made by. */
export const rulesOf = (pair: Pair): Rules => ({ ...(pair.from === "last" ? { line: pair.lineRules, shell: pair.shellRules } : {}), piece: pair.pieceRules });
