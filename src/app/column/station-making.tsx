import { useContext, type ReactElement } from "react";
import type { Making } from "#making/making.ts";
import type { Desk } from "../desk.ts";
import { byGoodGroup, capital } from "../state/good-words.ts";
import { tell } from "../state/spots.ts";
import type { Workshop } from "../workshop.ts";
import { Fold } from "./fold.tsx";
import { MakingGood, spotsOfGood } from "./making-good.tsx";
import { costSpoken, MakingMoney } from "./making-money.tsx";
import { MakingCement, MakingDays, MakingMinutes, MakingPairs } from "./making-time.tsx";
import { MakingOthers, MakingWorkshop } from "./making-workshop.tsx";
import { FoundHere } from "./notes.tsx";
import { Spoken } from "./spoken.tsx";

interface StationMakingProps {
  readonly desk: Desk;
  readonly workshop: Workshop;
  readonly making: Making;
}

/** What it takes to make this pair: how many, when, prices, shelf and hours, in the maker's own words. */
export function StationMaking({ desk, workshop, making }: StationMakingProps): ReactElement {
  const { here: found } = useContext(FoundHere);
  const known = new Set(making.cost.lines.filter((l) => l.cost !== undefined).map((l) => l.good));
  return (
    <>
      <Spoken lines={[...new Set(found.map(tell)), costSpoken(making)]} settled={desk.now.history.gesture === undefined} />
      <MakingOthers desk={desk} workshop={workshop} />
      <MakingPairs desk={desk} making={making} />
      <MakingDays desk={desk} />
      <MakingCement desk={desk} making={making} />
      <MakingMoney desk={desk} making={making} />
      <section aria-label="Prices and shelf">
        <h3>Prices and shelf</h3>
        <p className="follows">Write them as you pay them: 12,50 for 1 ft2, 9 for 1000 m, 18 for 1 kg, 6 for 200 pieces. What is pale in a field is taken until you write.</p>
        {byGoodGroup(making.needs).map(({ group, here }) => {
          const priced = here.filter(({ good }) => known.has(good)).length;
          return (
            <Fold key={group} name={capital(group)} holds={`${here.length === 1 ? "one thing" : `${here.length} things`}, ${priced === 0 ? "no price yet" : priced === here.length ? "with prices" : `${priced} with a price`}`} spots={here.flatMap(spotsOfGood)}>
              {here.map((need) => <MakingGood key={need.good} desk={desk} need={need} />)}
            </Fold>
          );
        })}
      </section>
      <MakingMinutes desk={desk} making={making} />
      <MakingWorkshop desk={desk} making={making} />
    </>
  );
}
