import { useSyncExternalStore, type ReactElement } from "react";
import type { Desk } from "../desk.ts";
import type { Desktop, Saved } from "../desktop.ts";
import { saveJob } from "../download.ts";
import { redoable, undoable } from "../state/history.ts";

const savedWords: Readonly<Record<Saved, string>> = {
  saving: "Saving …",
  saved: "Saved in this browser",
  elsewhere: "Not saved: this work was changed in another tab. Reload to see that, or save this to a file.",
  refused: "Not saved: a number of this work cannot be used yet.",
  "not saved": "Not saved: this browser keeps nothing. Save the work to a file.",
};

function useOnline(): boolean {
  return useSyncExternalStore(
    (ear) => {
      addEventListener("online", ear);
      addEventListener("offline", ear);
      return () => {
        removeEventListener("online", ear);
        removeEventListener("offline", ear);
      };
    },
    () => navigator.onLine,
  );
}

interface TopProps {
  readonly desk: Desk;
  readonly now: Desktop;
  readonly onOpen: () => void;
}

/** Whose pair this is, what can be taken back, and in words whether it is kept. */
export function Top({ desk, now, onOpen }: TopProps): ReactElement {
  const back = undoable(now.history);
  const again = redoable(now.history);
  const online = useOnline();
  return (
    <header className="top">
      <h1>Lastwise</h1>
      <input
        className="words title"
        aria-label="name of this work"
        value={desk.job.title}
        maxLength={80}
        onChange={(e) => desk.change({ ...desk.job, title: e.target.value }, "the name", "typing the name")}
        onBlur={() => desk.settle()}
      />
      <p className="kept" role="status">
        <span className={now.saved === "saved" || now.saved === "saving" ? "" : "loud"}>{savedWords[now.saved]}</span>
        {!online && <span> · offline, everything still works</span>}
      </p>
      <p className="acts">
        <button type="button" className="word" disabled={back === undefined} onClick={() => desk.undo()} title="Ctrl Z">
          Take back{back ? `: ${back}` : ""}
        </button>
        <button type="button" className="word" disabled={again === undefined} onClick={() => desk.redo()} title="Shift Ctrl Z">
          Do again{again ? `: ${again}` : ""}
        </button>
        <button type="button" className="word" onClick={onOpen}>Open a scan or a saved job</button>
        <button type="button" className="word" onClick={() => saveJob(desk)}>Save to a file</button>
      </p>
    </header>
  );
}
