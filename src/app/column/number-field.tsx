import { useId, useRef, useState, type KeyboardEvent, type ReactElement } from "react";
import type { Field } from "../state/measure-field.ts";
import { readNumber, say, snap } from "../state/numbers.ts";

export interface NumberFieldProps {
  /** For those who hear the page: "throat depth, mm". */
  readonly label: string;
  /** In the inner unit (mm or share). */
  readonly value: number;
  readonly field: Field;
  /** `gesture` joins all changes made while the field keeps the focus and the keys keep coming. */
  readonly onChange: (value: number, gesture: string) => void;
  readonly onDone: () => void;
  readonly negative?: boolean;
}

let gestures = 0;

/** A number inside a sentence: typed with comma or point, stepped with the arrow keys (Page up and down: ten steps). */
export function NumberField({ label, value, field, onChange, onDone, negative = false }: NumberFieldProps): ReactElement {
  const shown = say(value * field.factor, Math.max(1, field.decimals));
  const [typed, setTyped] = useState<string>();
  // A complaint stands until the number changes.
  const [complaint, complain] = useState<{ readonly text: string; readonly at: number }>();
  const wrong = complaint?.at === value ? complaint.text : undefined;
  const gesture = useRef("");
  const wrongId = useId();

  const give = (inUnit: number): void => onChange(inUnit / field.factor, (gesture.current ||= `field ${++gestures}`));
  const done = (): void => {
    if (gesture.current === "") return;
    gesture.current = "";
    onDone();
  };
  const type = (text: string): void => {
    setTyped(text);
    const n = readNumber(text);
    // While typing, only what is usual is worked out at once: the 7 of 72 is not meant yet.
    if (n !== undefined && n >= field.min && n <= field.max) give(n);
  };
  const take = (): void => {
    if (typed === undefined) return done();
    const n = readNumber(typed);
    setTyped(undefined);
    const wrongly = (text: string): void => complain({ text, at: value });
    if (n === undefined) wrongly(`“${typed.trim()}” is not a number. Type one like 72.5 or 72,5.`);
    else if (n < 0 && !negative) wrongly("This cannot be less than nothing.");
    else if (n !== Number(shown.replace("−", "-"))) give(n);
    done();
  };
  const step = (by: number): void => {
    const from = (typed === undefined ? undefined : readNumber(typed)) ?? value * field.factor;
    setTyped(undefined);
    const to = snap(from + by * field.step, field.step);
    if (negative || to >= 0) give(to);
  };
  const key = (e: KeyboardEvent): void => {
    const by = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[e.key];
    if (by !== undefined) {
      e.preventDefault();
      step(by);
    } else if (e.key === "Enter") take();
    else if (e.key === "Escape") {
      setTyped(undefined);
      done();
    }
  };
  const text = typed ?? shown;
  return (
    <span className={`number${wrong ? " wrong" : ""}`}>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        role="spinbutton"
        aria-label={`${label}, ${field.unit === "%" ? "percent" : field.unit === "°" ? "degrees" : "millimetres"}`}
        aria-valuenow={Number((value * field.factor).toFixed(3))}
        aria-valuetext={`${shown} ${field.unit}`}
        aria-valuemin={field.min}
        aria-valuemax={field.max}
        aria-invalid={wrong !== undefined}
        aria-describedby={wrong ? wrongId : undefined}
        style={{ width: `${Math.max(2, text.length) + 0.6}ch` }}
        value={text}
        onChange={(e) => type(e.target.value)}
        onKeyDown={key}
        onKeyUp={(e) => (e.key.startsWith("Arrow") || e.key.startsWith("Page")) && done()}
        onFocus={(e) => e.target.select()}
        onBlur={take}
      />
      <span className="unit"> {field.unit}</span>
      {wrong && <span className="why-wrong" id={wrongId} role="alert">{wrong}</span>}
    </span>
  );
}
