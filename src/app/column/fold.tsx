import { useContext, useId, useState, type ReactElement, type ReactNode } from "react";
import { spotOf, type Spot } from "../state/spots.ts";
import { FoundHere } from "./notes.tsx";
import { RefusedHere } from "./number-field.tsx";

interface FoldProps {
  readonly name: string;
  /** What is inside, in a few words. */
  readonly holds: string;
  /** The numbers inside: where one is refused or spoken of, the fold stands open. */
  readonly spots?: readonly Spot[];
  readonly children: ReactNode;
}

/** Sentences that are put away under a heading until they are wanted. */
export function Fold({ name, holds, spots = [], children }: FoldProps): ReactElement {
  const [open, setOpen] = useState<boolean>();
  const id = useId();
  const refused = useContext(RefusedHere);
  const { here, rules } = useContext(FoundHere);
  const needed = refused.some((r) => spots.includes(r.spot)) || here.some((f) => {
    const spot = spotOf(f, rules);
    return spot !== undefined && spots.includes(spot);
  });
  const shown = open ?? needed;
  return (
    <section className="fold">
      <h3>
        <button type="button" className="word fold-word" aria-expanded={shown} aria-controls={id} onClick={() => setOpen(!shown)}>{name}</button> <span className="follows">{holds}</span>
      </h3>
      <div id={id} className="folded-in" hidden={!shown}>{children}</div>
    </section>
  );
}
