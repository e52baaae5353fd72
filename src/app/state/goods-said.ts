import { goodIds, type GoodId } from "#making/goods.ts";
import type { Need } from "#making/need.ts";
import type { MakingSaid } from "#making/said.ts";

/** Goods of which something is said and that this pair does not use, as those of another cement; what is wrong there is to be seen all the same. */
export function goodsBeside({ prices, shelf, skins }: MakingSaid, needs: readonly Pick<Need, "good">[]): readonly GoodId[] {
  return goodIds.filter((id) => [prices, shelf, skins].some((of) => of?.[id] !== undefined) && !needs.some(({ good }) => good === id));
}
