import { useId, useRef, useState, type ClipboardEvent, type KeyboardEvent, type ReactElement } from "react";
import type { StripReading } from "#leather/leather.ts";
import { loadUnitWords, type LoadUnit } from "../state/load-unit.ts";
import { commasBothWays, commasBothWaysWords, noReading, pastedRows, readReading, type ReadingOn, type ReadingPart, type TypedReading } from "../state/new-reading.ts";

interface NewReadingProps {
  /** Which strip, for those who hear the page: "strip 2 of the upper". */
  readonly of: string;
  /** Under what the half-typed row is kept while the maker looks elsewhere. */
  readonly keptAs: string;
  readonly unit: LoadUnit;
  readonly on: ReadingOn;
  readonly onReadings: (readings: readonly StripReading[]) => void;
}

/** Rows that were begun and are not whole yet; nothing that was typed is lost by looking at another station. */
const begun = new Map<string, TypedReading>();
const parts: readonly ReadingPart[] = ["load", "length", "after"];

/** The empty row at the end of a strip's table: Enter goes on to the next field, and takes the row when it is whole. */
export function NewReading({ of, keptAs, unit, on, onReadings }: NewReadingProps): ReactElement {
  const [typed, setTyped] = useState(() => begun.get(keptAs) ?? noReading);
  const [wrong, setWrong] = useState<{ readonly at: ReadingPart; readonly sentence: string }>();
  const row = useRef<HTMLTableRowElement>(null);
  const wrongId = useId();
  const focus = (part: ReadingPart): void => row.current?.querySelector<HTMLInputElement>(`[data-part="${part}"]`)?.focus();
  const become = (next: TypedReading): void => {
    if (next === noReading) begun.delete(keptAs);
    else begun.set(keptAs, next);
    setTyped(next);
  };
  const take = (): void => {
    const read = readReading(typed, unit, on);
    if ("reading" in read) {
      setWrong(undefined);
      become(noReading);
      onReadings([read.reading]);
      focus("load");
    } else {
      setWrong(read);
      focus(read.at);
    }
  };
  const key = (part: ReadingPart) => (e: KeyboardEvent): void => {
    if (e.key === "Escape") {
      setWrong(undefined);
      become(noReading);
    }
    if (e.key !== "Enter") return;
    e.preventDefault();
    // From the load on to the length; from the length the row is taken, for the last field is often left empty.
    if (part === "load" && typed.length.trim() === "" && typed.load.trim() !== "") focus("length");
    else take();
  };
  const paste = (e: ClipboardEvent): void => {
    const text = e.clipboardData.getData("text"), rows = pastedRows(text);
    if (commasBothWays(text)) {
      e.preventDefault();
      setWrong({ at: "load", sentence: commasBothWaysWords });
    }
    if (!rows) return;
    e.preventDefault();
    const read = rows.map((r) => readReading(r, unit, on));
    const first = read.findIndex((r) => !("reading" in r));
    const bad = read[first];
    onReadings(read.slice(0, first < 0 ? undefined : first).flatMap((r) => ("reading" in r ? [r.reading] : [])));
    // What could not be read stands in the row, with the reason.
    if (bad && !("reading" in bad)) {
      become(rows[first]!);
      setWrong({ at: bad.at, sentence: `Row ${first + 1} of what you pasted: ${bad.sentence}` });
    }
  };
  const says: Readonly<Record<ReadingPart, string>> = { load: `new load on ${of}, ${loadUnitWords[unit]}`, length: `length under it on ${of}, millimetres`, after: `length one minute after on ${of}, millimetres, if read` };
  return (
    <>
      <tr ref={row} className="new-row">
        {parts.map((part) => (
          <td key={part}>
            <input
              type="text" inputMode="decimal" autoComplete="off" spellCheck={false} size={5}
              className="new-number"
              data-part={part}
              aria-label={says[part]}
              aria-invalid={wrong?.at === part}
              aria-describedby={wrong?.at === part ? wrongId : undefined}
              value={typed[part]}
              onChange={(e) => {
                setWrong(undefined);
                become({ ...typed, [part]: e.target.value });
              }}
              onKeyDown={key(part)}
              onPaste={paste}
            />
          </td>
        ))}
        <td><button type="button" className="word" aria-label={`take the new row on ${of}`} onClick={take}>take</button></td>
      </tr>
      {wrong && <tr><td colSpan={4}><span className="why-wrong" id={wrongId} role="alert" ref={(e) => e?.scrollIntoView({ block: "nearest" })}>{wrong.sentence}</span></td></tr>}
    </>
  );
}
