import { makingOfPair } from "#job/making.ts";
import type { Pair } from "#job/pair.ts";
import type { Making } from "#making/making.ts";
import type { MakingSaid } from "#making/said.ts";

/** What making the shown pair takes, by what the maker says now; nothing while its pieces are not cut yet. */
export function makingNow(pair: Pair, said: MakingSaid): Making | undefined {
  return pair.pieces.length === 0 ? undefined : makingOfPair(pair, said);
}
