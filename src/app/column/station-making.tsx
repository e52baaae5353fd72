import { useContext, type ReactElement } from "react";
import type { Making } from "#making/making.ts";
import type { Desk } from "../desk.ts";
import { tell } from "../state/spots.ts";
import type { Workshop } from "../workshop.ts";
import { costSpoken, MakingMoney } from "./making-money.tsx";
import { MakingPrices } from "./making-prices.tsx";
import { MakingCement, MakingDays, MakingMinutes, MakingPairs } from "./making-time.tsx";
import { MakingOthers, MakingTable, MakingWorkshop } from "./making-workshop.tsx";
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
  return (
    <>
      <Spoken lines={[...new Set(found.map(tell)), costSpoken(making)]} settled={desk.now.history.gesture === undefined} />
      <MakingOthers desk={desk} workshop={workshop} />
      <MakingPairs desk={desk} making={making} />
      <MakingDays desk={desk} />
      <MakingCement desk={desk} making={making} />
      <MakingMoney desk={desk} making={making} />
      <MakingPrices desk={desk} making={making} />
      <MakingMinutes desk={desk} making={making} />
      <MakingWorkshop desk={desk} making={making} />
      <MakingTable desk={desk} />
    </>
  );
}
