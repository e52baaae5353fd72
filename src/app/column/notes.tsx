import { createContext, useContext, type ReactElement } from "react";
import type { Finding } from "#base/findings.ts";
import type { Rules } from "#job/run-options.ts";
import { spotsOf } from "../state/spots.ts";
import type { Spot } from "../state/spot.ts";
import { FindingsList } from "./findings-list.tsx";

/** The findings of the open station, and all of them, by which the pins in the picture are counted. */
export interface Found {
  readonly here: readonly Finding[];
  readonly all: readonly Finding[];
  readonly rules: Rules | undefined;
}

export const FoundHere = createContext<Found>({ here: [], all: [], rules: undefined });

/** What was found about some numbers, to stand under the sentence that they stand in. */
export function NotesOn({ spots }: { readonly spots: readonly Spot[] }): ReactElement | null {
  const { here, all, rules } = useContext(FoundHere);
  const mine = here.filter((f) => spotsOf(f, rules).some((spot) => spots.includes(spot)));
  return <FindingsList findings={mine} all={all} />;
}
