import { useState, type ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { GoodId } from "#making/goods.ts";
import type { Making } from "#making/making.ts";
import type { Need } from "#making/need.ts";
import type { MakingSaid } from "#making/said.ts";
import type { Desk } from "../desk.ts";
import { byGoodGroup } from "../state/good-words.ts";
import { goodsBeside } from "../state/goods-said.ts";
import { Fold } from "./fold.tsx";
import { MakingGood, spotsOfGood } from "./making-good.tsx";

interface GoodHere {
  readonly good: GoodId;
  /** Nothing where this pair does not use it. */
  readonly need: Need | undefined;
}

/** What each thing costs and how much of it there is, by groups; behind those that the pair uses the others of which something is said. */
export function MakingPrices({ desk, making }: { readonly desk: Desk; readonly making: Making }): ReactElement {
  const known = new Set(making.cost.lines.filter((l) => l.cost !== undefined).map((l) => l.good));
  const beside = useGoodsBeside(desk.job.making, making.needs);
  const goods: readonly GoodHere[] = [...making.needs.map((need) => ({ good: need.good, need })), ...beside.map((good) => ({ good, need: undefined }))];
  return (
    <section aria-label="Prices and shelf">
      <h3>Prices and shelf</h3>
      <p className="follows">Write them as you pay them: 12,50 for 1 ft2, 9 for 1000 m, 18 for 1 kg, 6 for 200 pieces. What is pale in a field is taken until you write.</p>
      {byGoodGroup(goods).map(({ group, here }) => (
        <Fold key={group} name={capital(group)} holds={holds(here, known)} spots={here.flatMap(spotsOfGood)}>
          {here.map(({ good, need }) => <MakingGood key={good} desk={desk} good={good} need={need} />)}
        </Fold>
      ))}
    </section>
  );
}

/** What stands under a heading, in a few words. */
function holds(here: readonly GoodHere[], known: ReadonlySet<GoodId>): string {
  const needed = here.filter(({ need }) => need), beside = here.length - needed.length;
  const priced = needed.filter(({ good }) => known.has(good)).length;
  const things = `${needed.length === 1 ? "one thing" : `${needed.length} things`}, ${priced === 0 ? "no price yet" : priced === needed.length ? "with prices" : `${priced} with a price`}`;
  return [...(needed.length > 0 ? [things] : []), ...(beside > 0 ? [`${beside === 1 ? "one" : beside} not used in this pair`] : [])].join("; ");
}

/** Once it stood there it stays while the station is open, so that a field that is emptied does not go away under the hand. */
function useGoodsBeside(said: MakingSaid, needs: readonly Need[]): readonly GoodId[] {
  const now = goodsBeside(said, needs);
  const [seen, setSeen] = useState(now);
  const fresh = now.filter((good) => !seen.includes(good));
  if (fresh.length > 0) setSeen([...seen, ...fresh]);
  return [...seen, ...fresh].filter((id) => !needs.some(({ good }) => good === id));
}
