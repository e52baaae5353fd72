import { useMemo, useState } from "react";
import { makingOfPair } from "#job/making.ts";
import type { Pair } from "#job/pair.ts";
import type { Making } from "#making/making.ts";
import type { MakingSaid } from "#making/said.ts";

/** What making the shown pair takes, by what the maker says now; nothing while its pieces are not cut yet. */
export function makingNow(pair: Pair, said: MakingSaid): Making | undefined {
  return pair.pieces.length === 0 ? undefined : makingOfPair(pair, said);
}

/** The same for the page: prices answer at once, and while something is dragged it stays that of the last pair worked out in full. */
export function useMakingNow(pair: Pair | undefined, draft: boolean, said: MakingSaid): Making | undefined {
  const [full, setFull] = useState(pair);
  if (!draft && full !== pair) setFull(pair);
  const of = draft ? full : pair;
  return useMemo(() => of && makingNow(of, said), [of, said]);
}
