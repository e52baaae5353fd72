import type { Pair } from "#job/pair.ts";
import type { Making } from "#making/making.ts";
import type { MakingSaid } from "#making/said.ts";

/** What making the shown pair takes, by what the maker says now; nothing until it can be told. */
export function makingNow(_pair: Pair, _said: MakingSaid): Making | undefined {
  return undefined;
}
