import { useEffect, useState, type ReactElement } from "react";
import type { Desk, Desktop } from "../desk.ts";
import { stageWords } from "../state/stage-words.ts";

interface LineProps {
  readonly desk: Desk;
  readonly now: Desktop;
}

/** What is being worked out and how far, with Stop. Short work is not worth a word. */
export function BusyLine({ desk, now }: LineProps): ReactElement {
  const [slow, setSlow] = useState(false);
  const busy = now.busy !== undefined;
  useEffect(() => {
    if (!busy) return;
    const timer = setTimeout(() => setSlow(true), 350);
    return () => {
      clearTimeout(timer);
      setSlow(false);
    };
  }, [busy]);
  // What is shown is already that of the job: the worker only catches up, and nobody waits for it.
  const awaited = now.busy?.on === "sheets" || now.busy?.trial === true || now.draft || now.pair?.job !== desk.job;
  const show = slow && awaited && now.busy;
  return (
    <div className="busy" role="status" data-busy={busy} data-draft={now.draft}>
      {show && (
        <p>
          {stageWords(now.busy)} … <progress max={1} value={now.busy.fraction} aria-label="how far" />
          <button type="button" className="word" onClick={() => desk.stop()}>Stop</button>
        </p>
      )}
    </div>
  );
}

/** What is wrong, in a sentence. The last good picture stays under it. */
export function TroubleLine({ desk, now }: LineProps): ReactElement {
  return (
    <div className="trouble" role="alert">
      {now.trouble && (
        <p className={now.trouble.kind}>
          {now.trouble.sentence} <button type="button" className="word" onClick={() => desk.dismiss()}>Close</button>
        </p>
      )}
    </div>
  );
}

/** Before the first picture: work is under way, or it cannot be done and the maker is shown the way out. */
export function NothingYet({ desk, now }: LineProps): ReactElement {
  if (now.busy || !now.trouble) return <p className="nothing">Laying out the work …</p>;
  return (
    <p className="nothing low">
      There is no picture of this work. Take the last change back, or <button type="button" className="word" onClick={() => desk.startAfresh()}>begin with the example last</button>.
    </p>
  );
}
