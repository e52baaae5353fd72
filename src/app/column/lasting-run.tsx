import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { LastingNow, Lastings } from "../lastings.ts";
import { percent } from "../state/numbers.ts";
import { stageWords } from "../state/stage-words.ts";

interface LastingRunProps {
  readonly pair: LastPair;
  readonly lastings: Lastings;
  readonly now: LastingNow;
  /** What was found holds for the work as it is. */
  readonly holds: boolean;
}

/** The word that pulls the upper over; while that goes on, what is being done and how far, with Stop. */
export function LastingRun({ pair, lastings, now, holds }: LastingRunProps): ReactElement {
  const { busy, trouble, lasted } = now;
  return (
    <>
      {busy && (
        <p className="follows" role="status">
          {stageWords({ on: "pair", trial: false, stage: busy.stage })} … <progress max={1} value={busy.fraction} aria-label="how far it is pulled over" /> {percent(busy.fraction, 0)}{" "}
          <button type="button" className="word" onClick={() => lastings.stop()}>Stop</button>
          {lasted && !holds && " What stands below is from before the last change."}
        </p>
      )}
      {!busy && !holds && (
        <p><button type="button" className="action" onClick={() => lastings.ask({ for: "lasting", what: "pull", job: pair.job })}>{lasted ? "Pull it over again" : "Pull it over"}</button></p>
      )}
      {!busy && !holds && <p className="follows">{lasted ? "What stands below is from before the last change." : "The upper is laid on the last and drawn draft by draft, as you would at the bench. It takes from some seconds to a minute or two; the work goes on meanwhile."}</p>}
      {trouble && <p className="why-wrong" role="alert">{trouble}</p>}
    </>
  );
}
