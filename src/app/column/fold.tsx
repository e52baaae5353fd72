import { useContext, useId, useState, type ReactElement, type ReactNode } from "react";
import { severityOf } from "#base/findings.ts";
import { spotsOf } from "../state/spots.ts";
import type { Spot } from "../state/spot.ts";
import { FoundHere } from "./notes.tsx";
import { RefusedHere } from "./number-field.tsx";

interface FoldProps {
  readonly name: string;
  /** What is inside, in a few words. */
  readonly holds: string;
  /** The numbers inside: where one is refused or has to be looked at, the fold stands open; that there are notes is told. */
  readonly spots?: readonly Spot[];
  readonly children: ReactNode;
}

/** Sentences that are put away under a heading until they are wanted. */
export function Fold({ name, holds, spots = [], children }: FoldProps): ReactElement {
  const [open, setOpen] = useState<boolean>();
  const id = useId();
  const refused = useContext(RefusedHere);
  const { here, rules } = useContext(FoundHere);
  const about = here.filter((f) => spotsOf(f, rules).some((spot) => spots.includes(spot)));
  const needed = refused.some((r) => spots.includes(r.spot)) || about.some((f) => severityOf(f) !== "note");
  const notes = about.length === 0 ? "" : about.length === 1 ? " · one note" : ` · ${about.length} notes`;
  // What was opened for a number stays open when that is put right: the hand is still on it.
  if (needed && open === undefined) setOpen(true);
  const shown = open ?? needed;
  return (
    <section className="fold">
      <h3>
        <button type="button" className="word fold-word" aria-expanded={shown} aria-controls={id} onClick={() => setOpen(!shown)}>{name}</button> <span className="follows">{holds}{shown ? "" : notes}</span>
      </h3>
      <div id={id} className="folded-in" hidden={!shown}>{children}</div>
    </section>
  );
}
