import type { ReactElement } from "react";
import type { Desk } from "../desk.ts";
import { upperLayers } from "#leather/leather.ts";
import type { LeatherShelf } from "../leather-shelf.ts";
import type { LeatherSight } from "../state/leather-sight.ts";
import { LeatherDirection } from "./leather-direction.tsx";
import { LeatherOf } from "./leather-of.tsx";

interface StationLeatherProps {
  readonly desk: Desk;
  readonly shelf: LeatherShelf;
  /** There is no last in this work: what the leather does is known, but not over what. */
  readonly taped: boolean;
  readonly onSight: (sight: LeatherSight) => void;
}

/** What upper and lining are cut from, how far these leathers give, and which way they are laid. */
export function StationLeather({ desk, shelf, taped, onSight }: StationLeatherProps): ReactElement {
  return (
    <>
      {taped && <p className="follows">A taped pattern brings no last to pull the upper over. What you say of the leathers is kept and told all the same; bring the last in by a scan or by measures to have the pattern corrected for them.</p>}
      {upperLayers.map((layer) => <LeatherOf key={layer} desk={desk} shelf={shelf} layer={layer} onSight={() => onSight(layer)} onTest={() => onSight("test")} />)}
      <LeatherDirection desk={desk} onSight={() => onSight("laid")} />
    </>
  );
}
