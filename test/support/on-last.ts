import type { LastPair, Pair } from "#job/pair.ts";

/** The pair, which must be one on a last. */
export function onLast(pair: Pair): LastPair {
  if (pair.from !== "last") throw new Error("this pair stands on a taped pattern");
  return pair;
}
