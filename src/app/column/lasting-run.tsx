import { useLayoutEffect, useRef, type ReactElement, type RefObject } from "react";
import type { LastPair } from "#job/pair.ts";
import type { LastingAsked } from "../lasting-talk.ts";
import type { LastingNow, Lastings } from "../lastings.ts";
import { looksAmong, looksWords } from "../state/stations.ts";

interface LastingRunProps {
  readonly pair: LastPair;
  readonly lastings: Lastings;
  readonly now: LastingNow;
  /** What was found holds for the work as it is. */
  readonly holds: boolean;
}

/** The word that pulls the upper over, and how that stands; how far it is stands over the picture. */
export function LastingRun({ pair, lastings, now, holds }: LastingRunProps): ReactElement {
  const { busy, trouble, lasted } = now;
  const line = useKeptFocus(busy !== undefined);
  // Not switched off while it works: the hand on it would be lost.
  const pull = (): void => (busy ? undefined : lastings.ask({ for: "lasting", what: "pull", job: pair.job }));
  return (
    <>
      {!holds && <p><button type="button" className="action" aria-disabled={busy !== undefined} onClick={pull}>{lasted ? "Pull it over again" : "Pull it over"}</button></p>}
      <p className="follows" role="status" tabIndex={-1} ref={line}>{howItStands(now, holds)}</p>
      {trouble && <p className="why-wrong" role="alert">{trouble}</p>}
    </>
  );
}

const doneWords: Readonly<Record<Exclude<LastingAsked["what"], "pull">, string>> = {
  band: "Thirty like leathers were pulled over: between what the ends lie stands in the table.",
  correct: "The search for the pattern that ends there is done.",
  turn: "The pieces were turned and pulled over.",
  drafts: "Each draft was tried harder and softer.",
  swap: "It was pulled over in the other leather.",
};

function howItStands({ done, lasted, busy }: LastingNow, holds: boolean): string {
  const stopped = done === "stopped" ? "Stopped. " : "";
  if (!holds && lasted) return `${stopped}What stands below is from before the last change${busy?.wish.what === "pull" ? "; it is being pulled over anew" : ""}.`;
  if (!lasted) return `${stopped}The upper is laid on the last and drawn draft by draft, as you would at the bench. It takes from some seconds to a minute or two; the work goes on meanwhile.`;
  if (done !== undefined && done !== "stopped" && done !== "pull") return doneWords[done];
  const looks = looksAmong(lasted.findings).length;
  return `${stopped}Pulled over as the work stands now: ${looks === 0 ? "nothing" : looksWords(looks)} to look at before you cut.`;
}

/** When the work is done, the word that asked for it is gone, or the one that ends it: the hand that was on it goes to this line. */
function useKeptFocus(busy: boolean): RefObject<HTMLParagraphElement | null> {
  const line = useRef<HTMLParagraphElement>(null);
  const before = useRef(busy);
  useLayoutEffect(() => {
    if (before.current && !busy && document.activeElement === document.body) line.current?.focus({ preventScroll: true });
    before.current = busy;
  }, [busy]);
  return line;
}
