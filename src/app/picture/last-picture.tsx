import { useMemo, useState, type ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { Proof } from "#job/proof.ts";
import type { Desk } from "../desk.ts";
import { setLines } from "../state/edits.ts";
import type { Station } from "../state/stations.ts";
import { CardView } from "./card-view.tsx";
import { cardOutline, drawnLines, type LineKey } from "./drawn-lines.ts";
import type { EyeName } from "./eyes.ts";
import type { Pull } from "./grip.tsx";
import { handlesOf } from "./handles.ts";
import { useInk } from "./ink.ts";
import { LastView } from "./last-view.tsx";
import { LookFrom } from "./look-from.tsx";
import { notesOf } from "./notes.ts";
import type { ShellMap } from "./shell-map.ts";

const showings = ["both", "the last", "the card"] as const;

interface LastPictureProps {
  readonly desk: Desk;
  readonly pair: LastPair;
  readonly busy: boolean;
  readonly station: Station;
  readonly map: ShellMap | undefined;
  /** How this very pattern does when it is tried out, where that is known. */
  readonly proof: Proof | undefined;
  /** The outer half is drawn folded over the inner one on the card. */
  readonly folded: boolean;
}

/** The last and the card, side by side or alone. */
export function LastPicture({ desk, pair, busy, station, map, proof, folded }: LastPictureProps): ReactElement {
  const ink = useInk();
  const [lit, setLit] = useState<LineKey>();
  const [showing, setShowing] = useState<(typeof showings)[number]>("both");
  const [from, lookFrom] = useState<{ readonly name: EyeName }>({ name: "above" });
  const lines = useMemo(() => drawnLines(pair), [pair]);
  const handles = useMemo(() => (station === "Lines" || station === "Shell" ? handlesOf(pair) : []), [pair, station]);
  const notes = useMemo(() => notesOf(pair, proof), [pair, proof]);
  const nicks = useMemo(() => proof?.relief.nicks.map((n) => n.onFlat) ?? [], [proof]);
  const beside = useMemo(() => (station === "Lasting" && pair.corrected ? cardOutline({ shell: pair.shell, flat: pair.corrected.flat }) : undefined), [station, pair]);
  const onPull: Pull = (values, what, gesture) => desk.change(setLines(desk.job, values), what, gesture);
  const onDone = (): void => desk.settle();

  const withLast = showing !== "the card";
  const withCard = showing !== "the last";
  return (
    <>
      <div className={`views${withLast && withCard ? " two" : ""}`}>
        {withLast && (
          <LastView
            pair={pair}
            ink={ink}
            lines={lines}
            handles={handles}
            map={map}
            words={notes}
            from={from}
            lit={lit}
            onLit={setLit}
            asked={desk.job.lines}
            busy={busy}
            onPull={onPull}
            onDone={onDone}
          />
        )}
        {withCard && <CardView pair={pair} lines={lines} handles={handles} map={map} notes={notes} nicks={nicks} beside={beside} folded={folded} lit={lit} onLit={setLit} asked={desk.job.lines} busy={busy} onPull={onPull} onDone={onDone} />}
      </div>
      <div className="under">
        {withLast && <LookFrom onLook={(name) => lookFrom({ name })} />}
        <p>
          <span>Show</span>
          {showings.map((s) => <button key={s} type="button" className="word" aria-pressed={s === showing} onClick={() => setShowing(s)}>{s}</button>)}
        </p>
        {beside && withCard && <p>Broken line: the pattern corrected for the leathers.</p>}
      </div>
    </>
  );
}
