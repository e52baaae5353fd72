import { useMemo, useState, type ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import { groundedBy } from "../state/grounds.ts";
import { kindsOf } from "../state/piece-kinds.ts";
import type { PieceWork } from "../state/piece-work.ts";
import { PieceOnLast } from "./piece-on-last.tsx";
import { PiecesView } from "./pieces-view.tsx";

const showings = ["both", "the piece", "the last"] as const;

/** All pieces, or one of them: flat and large, and beside it where it lies on the last. */
export function PiecesPicture({ pair, work }: { readonly pair: Pair; readonly work: PieceWork }): ReactElement {
  const [showing, setShowing] = useState<(typeof showings)[number]>("both");
  const piece = useMemo(() => kindsOf(pair.pieces).find((k) => k.name === work.chosen)?.shown, [pair.pieces, work.chosen]);
  const grounded = useMemo(() => (piece ? groundedBy(pair, piece) : []), [pair, piece]);
  if (!piece || grounded.length === 0 || pair.from !== "last") return <PiecesView pieces={pair.pieces} work={work} />;
  const [flat, last] = [showing !== "the last", showing !== "the piece"];
  const words = (
    <p>
      <span>Show</span>
      {showings.map((s) => <button key={s} type="button" className="word" aria-pressed={s === showing} onClick={() => setShowing(s)}>{s}</button>)}
    </p>
  );
  if (!last) return <PiecesView pieces={pair.pieces} work={work}>{words}</PiecesView>;
  return (
    <div className={flat ? "flat-and-laid" : "flat-and-laid alone"}>
      <PieceOnLast pair={pair} piece={piece} grounded={grounded} />
      {flat ? <PiecesView pieces={pair.pieces} work={work}>{words}</PiecesView> : <div className="under">{words}</div>}
    </div>
  );
}
