import { useState, type ReactElement } from "react";
import { momentText, type Moment } from "#making/calendar/dates.ts";
import type { Shoe } from "#making/calendar/progress.ts";
import { readDoneAt } from "../state/step-done-at.ts";

interface StepDoneAtProps {
  readonly shoe: Shoe;
  readonly at: Moment;
  readonly now: Moment;
  readonly onSet: (at: Moment) => void;
}

/** When a step was done on one shoe. What is typed there holds from Enter on, or when the hand goes elsewhere; Escape brings the former time back. */
export function StepDoneAt({ shoe, at, now, onSet }: StepDoneAtProps): ReactElement {
  const [draft, setDraft] = useState<{ readonly over: Moment; readonly text: string }>();
  const [wrong, setWrong] = useState<string>();
  // A time that was taken back or set meanwhile is what stands there now.
  const typed = draft?.over === at ? draft.text : undefined;
  const set = (): void => {
    if (typed === undefined) return;
    const read = readDoneAt(typed, now);
    setDraft(undefined);
    setWrong("wrong" in read ? read.wrong : undefined);
    if ("at" in read && read.at !== at) onSet(read.at);
  };
  return (
    <div className="ticked-at">
      <label>{shoe} shoe done at <input
        type="datetime-local" value={typed ?? momentText(at)} aria-invalid={wrong !== undefined}
        onChange={(e) => {
          setWrong(undefined);
          setDraft({ over: at, text: e.target.value });
        }}
        onBlur={set}
        onKeyDown={(e) => {
          if (e.key === "Enter") set();
          if (e.key === "Escape") setDraft(undefined);
        }}
      /></label>
      <p className="follows" role="status">{wrong}</p>
    </div>
  );
}
