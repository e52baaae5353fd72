import type { ReactElement } from "react";
import type { LastingWork } from "../lasting-work.ts";
import { percent } from "../state/numbers.ts";
import { stageWords } from "../state/stage-words.ts";

/** What of lasting is being worked out and how far, over the picture, with Stop. */
export function LastingBusy({ work: { lastings, now: { busy } } }: { readonly work: LastingWork }): ReactElement {
  return (
    <div className="busy lasting-busy" role="status">
      {busy && (
        <p>
          {stageWords({ on: "pair", trial: false, stage: busy.stage })} … <progress max={1} value={busy.fraction} aria-label="how far it is pulled over" /> {percent(busy.fraction, 0)}{" "}
          <button type="button" className="word" onClick={() => lastings.stop()}>Stop</button>
        </p>
      )}
    </div>
  );
}
