import type { ReactElement } from "react";
import { knownWords } from "#leather/strip-words.ts";
import type { LastingWish } from "../lasting-talk.ts";
import type { LastingWork } from "../lasting-work.ts";
import { percent } from "../state/numbers.ts";
import { stageWords } from "../state/stage-words.ts";

/** What of lasting is being worked out and how far, over the picture, with Stop. */
export function LastingBusy({ work: { lastings, now: { busy } } }: { readonly work: LastingWork }): ReactElement {
  return (
    <div className="busy lasting-busy" role="status">
      {busy && (
        <p>
          {wishWords(busy.wish)}{busy.stage === "" ? "" : `: ${small(stageWords({ on: "pair", trial: false, stage: busy.stage }))}`} … <progress max={1} value={busy.fraction} aria-label="how far it is pulled over" /> {percent(busy.fraction, 0)}{" "}
          <button type="button" className="word" onClick={() => lastings.stop()}>Stop</button>
        </p>
      )}
    </div>
  );
}

/** What was asked for. */
function wishWords(wish: LastingWish): string {
  switch (wish.what) {
    case "pull": return "Pulling it over";
    case "band": return "Pulling thirty like leathers over";
    case "correct": return "Looking for the pattern that ends there";
    case "turn": return "Pulling it over with the pieces turned";
    case "drafts": return "Trying each draft harder and softer";
    case "swap": return `Pulling it over in ${knownWords[wish.other]}`;
  }
}

const small = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);
