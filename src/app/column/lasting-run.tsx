import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { LastingNow, Lastings } from "../lastings.ts";

interface LastingRunProps {
  readonly pair: LastPair;
  readonly lastings: Lastings;
  readonly now: LastingNow;
  /** What was found holds for the work as it is. */
  readonly holds: boolean;
}

/** The word that pulls the upper over; how far that is stands over the picture. */
export function LastingRun({ pair, lastings, now: { busy, trouble, lasted }, holds }: LastingRunProps): ReactElement {
  const former = lasted && !holds ? "What stands below is from before the last change." : undefined;
  return (
    <>
      {!holds && <p><button type="button" className="action" disabled={busy !== undefined} onClick={() => lastings.ask({ for: "lasting", what: "pull", job: pair.job })}>{lasted ? "Pull it over again" : "Pull it over"}</button></p>}
      {!holds && <p className="follows">{former ?? "The upper is laid on the last and drawn draft by draft, as you would at the bench. It takes from some seconds to a minute or two; the work goes on meanwhile."}</p>}
      {trouble && <p className="why-wrong" role="alert">{trouble}</p>}
    </>
  );
}
