import { createContext, useContext, useId, type KeyboardEvent, type ReactElement, type ReactNode } from "react";
import { severityOf } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import type { Written } from "#making/said.ts";
import type { Desk } from "../desk.ts";
import type { MakingSpot } from "../state/spot.ts";
import { spotsOf } from "../state/spots.ts";
import { FoundHere, NotesOn } from "./notes.tsx";

/** Where the notes of the sentence stand that a field is in. */
const NotesAt = createContext<string | undefined>(undefined);

interface WrittenFieldProps {
  readonly desk: Desk;
  readonly spot: MakingSpot;
  /** For those who hear the page: "price of the upper leather". */
  readonly label: string;
  readonly value: Written | undefined;
  /** The job with another text; an empty one is nothing said. */
  readonly edit: (text: string) => Job;
  /** Words for that change. */
  readonly what: string;
  /** What is taken where nothing is written, or how it is written. */
  readonly hint?: string;
  readonly letters?: number;
  /** Which keys a tablet offers. */
  readonly keys?: "decimal" | "text";
}

/** A text inside a sentence that stays just as it was typed; what it means is told under the sentence. */
export function WrittenField({ desk, spot, label, value, edit, what, hint = "", letters = 60, keys = "decimal" }: WrittenFieldProps): ReactElement {
  const { here, rules } = useContext(FoundHere);
  const notes = useContext(NotesAt);
  const text = value === undefined ? "" : String(value);
  const about = here.filter((f) => spotsOf(f, rules).includes(spot));
  const typing = `typing ${spot}`;
  const key = (e: KeyboardEvent): void => {
    if (e.key === "Escape") desk.giveUp(typing);
    if (e.key === "Enter") desk.settle();
  };
  return (
    <span className={`written${text === "" ? " empty" : ""}`}>
      <input
        type="text"
        inputMode={keys}
        autoComplete="off"
        spellCheck={false}
        data-spot={spot}
        aria-label={label}
        aria-invalid={about.some((f) => severityOf(f) !== "note")}
        aria-describedby={about.length > 0 ? notes : undefined}
        style={{ width: `${Math.max(3, (text || hint).length) + 1.2}ch` }}
        maxLength={letters}
        value={text}
        placeholder={hint}
        onChange={(e) => desk.change(edit(e.target.value), what, typing)}
        onKeyDown={key}
        onBlur={() => desk.settle()}
      />
    </span>
  );
}

interface WrittenSentenceProps {
  readonly spots: readonly MakingSpot[];
  readonly children: ReactNode;
  /** What follows, in small ink. */
  readonly follows?: ReactNode;
}

/** A sentence with such fields; what is wrong in one of them stands right under it. */
export function WrittenSentence({ spots, children, follows }: WrittenSentenceProps): ReactElement {
  const id = useId();
  return (
    <NotesAt value={id}>
      <div className="sentence">
        <p className="writes">{children}</p>
        <div id={id}><NotesOn spots={spots} /></div>
        {follows && <p className="follows">{follows}</p>}
      </div>
    </NotesAt>
  );
}
