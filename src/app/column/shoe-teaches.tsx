import type { ReactElement } from "react";
import { explain } from "#base/findings.ts";
import type { LastPair } from "#job/pair.ts";
import { teachesNot } from "#lasting/log-teaching.ts";
import type { Desk } from "../desk.ts";
import type { LastingWork } from "../lasting-work.ts";
import { keepForetold, type ShoeMade } from "../state/log-edits.ts";
import { sameForLasting } from "../state/same-for-lasting.ts";

interface ShoeTeachesProps {
  readonly desk: Desk;
  readonly pair: LastPair;
  /** Number of the pair that is shown. */
  readonly shown: number;
  readonly made: ShoeMade;
  readonly work: LastingWork;
}

/** Why the pair that is shown teaches nothing about the leather, and what to do; for a pair that is not begun, whether it will teach. */
export function ShoeTeaches({ desk, pair, shown, made, work: { lastings, now } }: ShoeTeachesProps): ReactElement | null {
  const shoes = desk.job.log.filter((entry) => entry.pair === shown);
  const why = teachesNot(shoes, made.leather);
  const begun = shoes.length > 0, untold = begun ? why?.code === "log-teaches-not" && why.data.why === "not foretold" : !made.foretold;
  const { foretold } = made;
  const foretell = (): void => lastings.ask({ for: "lasting", what: "pull", job: pair.job });
  // Foretold before the pair before it had taught anything: good to be held against, not good to cut by.
  const taughtSince = !begun && !untold && !sameForLasting(now.job, pair.job);
  if (!why && !untold && !taughtSince) return null;
  return (
    <p className="follows" role="note" aria-label="What this pair teaches">
      {why && explain(why)}
      {!begun && untold && `So that pair ${shown} can teach how much ${made.leather} gives, it must be foretold before you type its throats.`}
      {untold && " "}
      {taughtSince && !now.busy && <>Your shoes have taught more since this was pulled over: <button type="button" className="word" onClick={foretell}>foretell pair {shown} anew</button>.</>}
      {untold && !foretold && !now.busy && <><button type="button" className="word" onClick={foretell}>Foretell it with the work as it is</button>, if this is how you made it.</>}
      {untold && begun && foretold && <><button type="button" className="word" onClick={() => desk.change(keepForetold(desk.job, shown, foretold), `what was foretold of pair ${shown}`)}>Keep what is foretold now with pair {shown}</button>, if this is how you made it.</>}
    </p>
  );
}
