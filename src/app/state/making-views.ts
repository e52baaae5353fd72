import type { Pair } from "#job/pair.ts";
import type { Making } from "#making/making.ts";
import type { Desk } from "../desk.ts";

/** What of making a pair is looked at. */
export const makingViews = ["list", "cost", "steps", "calendar", "tools"] as const;
export type MakingView = (typeof makingViews)[number];

export const viewWords: Readonly<Record<MakingView, string>> = {
  list: "the shopping list",
  cost: "what it costs",
  steps: "the steps",
  calendar: "the calendar",
  tools: "tools and care",
};

/** What each of these views is given: the shown pair, and what making it takes as the maker's words stand now. */
export interface MakingViewProps {
  readonly desk: Desk;
  readonly pair: Pair;
  readonly making: Making;
}
