import type { ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import type { Desk } from "../desk.ts";
import { comparedWords, type Compared, type Variant } from "../state/variant.ts";

interface PieceCompareProps {
  readonly desk: Desk;
  readonly pair: Pair;
  readonly kept: Variant | undefined;
  readonly compared: Compared | undefined;
  readonly onKeep: (pair: Pair | undefined) => void;
}

/** One state of the pattern kept as A, to hold the next against. */
export function PieceCompare({ desk, pair, kept, compared, onKeep }: PieceCompareProps): ReactElement {
  if (!kept) {
    return (
      <p className="sentence">
        <button type="button" className="word" onClick={() => onKeep(pair)}>Keep this as A</button>, then change what you like: A’s outlines are drawn beneath.
      </p>
    );
  }
  const atA = kept.job === desk.job;
  return (
    <section aria-label="Compared with A">
      <p className="sentence" role="status">{atA || !compared ? "This is A. Change a number or a word, and the difference is told here." : comparedWords(compared)}</p>
      <p className="acts-here">
        {!atA && <button type="button" className="word" onClick={() => desk.change(kept.job, "going back to A")}>Go back to A</button>}
        {!atA && <button type="button" className="word" onClick={() => onKeep(pair)}>Keep this as A instead</button>}
        <button type="button" className="word" onClick={() => onKeep(undefined)}>Let A go</button>
      </p>
    </section>
  );
}
