import { createContext, useCallback, useContext, useId, useRef, useState, type KeyboardEvent, type ReactElement } from "react";
import { createPortal } from "react-dom";
import type { Job } from "#job/job.ts";
import type { RefusedNumber } from "../desktop.ts";
import type { Field } from "../state/measure-field.ts";
import { clamp, readMeasure, say, snap } from "../state/numbers.ts";
import type { Spot } from "../state/spot.ts";
import type { FieldDesk } from "../state/work-in-hand.ts";

interface NumberFieldProps {
  readonly desk: FieldDesk;
  /** Which number of the job it is. */
  readonly spot: Spot;
  /** For those who hear the page: "throat depth, mm". */
  readonly label: string;
  /** In the inner unit (mm, share, N); nothing where the maker has read none and none was found. */
  readonly value: number | undefined;
  readonly field: Field;
  /** The job with another value, and the words for that change. */
  readonly edit: (value: number) => Job;
  readonly what: string;
  /** What lies outside is refused here, in the field's unit; nothing below nought unless said otherwise. */
  readonly limits?: { readonly least: number; readonly most: number };
  /** What is said of a number outside them; without it, the limits alone. */
  readonly outside?: string;
  /** The number was found, and the maker may set her own reading against it; an emptied field takes hers back. */
  readonly reading?: { readonly own: boolean; readonly forget: () => void };
  /** In a table, whose heading says the unit. */
  readonly bare?: boolean;
}

/** The numbers that were refused or are not used yet, for the fields in which they stand. */
export const RefusedHere = createContext<readonly RefusedNumber[]>([]);

let gestures = 0;

/**
 * A number inside a sentence: typed with comma or point, stepped with the arrow keys (Page up and down: ten steps). What is refused
 * stays in the field with the sentence why; the job keeps the number it had.
 */
export function NumberField({ desk, spot, label, value, field, edit, what, limits = { least: 0, most: Infinity }, outside, reading, bare = false }: NumberFieldProps): ReactElement {
  const shown = value === undefined ? "" : say(value * field.factor, Math.max(1, field.decimals));
  const [typed, setTyped] = useState<string>();
  // What could not be read, with the complaint; both stand until the number changes.
  const [own, complain] = useState<{ readonly sentence: string; readonly text: string; readonly at: number | undefined }>();
  const here = useContext(RefusedHere).find((r) => r.spot === spot);
  const kept = here?.kept ? here.text : undefined;
  const refused = own && own.at === value ? own : here;
  const gesture = useRef("");
  const wrongId = useId();
  // The reason is to be seen whole, but nothing may move under a hand that touches something else.
  const entered = useRef(false);
  const showWhole = useCallback((reason: HTMLElement | null) => {
    if (entered.current) reason?.scrollIntoView({ block: "nearest" });
    entered.current = false;
  }, []);
  // The complaint stands under the whole sentence, which it would else break in two.
  const [sentence, setSentence] = useState<Element | null>(null);
  const inSentence = useCallback((span: HTMLElement | null) => setSentence(span?.closest("p, [data-complaints]") ?? null), []);

  const forget = (): void => {
    complain(undefined);
    if (here && !here.kept) desk.forgetRefused(spot);
  };
  /** `gesture` joins all changes made while the field keeps the focus and the keys keep coming. */
  const give = (inUnit: number, text: string): void => {
    complain(undefined);
    desk.change(edit(inUnit / field.factor), what, (gesture.current ||= `field ${++gestures}`), { spot, text });
  };
  const done = (): void => {
    if (gesture.current === "") return;
    gesture.current = "";
    desk.settle();
  };
  const type = (text: string): void => {
    forget();
    setTyped(text);
    const n = readMeasure(text, field.unit);
    // While typing, only what is usual is worked out at once: the 7 of 72 is not meant yet.
    // A reading is worked out when it is complete: it costs a new look at the scan.
    if (!reading && n !== undefined && n >= field.min && n <= field.max) give(n, text);
  };
  const take = (): void => {
    if (typed === undefined) return done();
    const text = typed.trim();
    const n = readMeasure(text, field.unit);
    setTyped(undefined);
    const wrongly = (sentence: string): void => {
      complain({ sentence, text, at: value });
      desk.standAt(spot, text, sentence);
    };
    if (reading && text === "") {
      if (reading.own) reading.forget();
    } else if (n === undefined) wrongly(text === "" ? `Nothing is typed here. ${wanted[field.unit]}` : `“${text}” is not a number here. ${wanted[field.unit]}`);
    else if (n < limits.least || n > limits.most) wrongly(outside ?? beyond(field.unit, limits));
    else if ((kept !== undefined && gesture.current === "") || n !== Number((kept ?? shown).replace("−", "-")) || reading?.own === false) give(n, text);
    done();
  };
  const step = (by: number): void => {
    const from = readMeasure(typed ?? kept ?? "", field.unit) ?? (value === undefined ? field.min : value * field.factor);
    forget();
    setTyped(undefined);
    const to = clamp(snap(from + by * field.step, field.step), limits.least, limits.most);
    give(to, say(to, Math.max(1, field.decimals)));
  };
  const key = (e: KeyboardEvent): void => {
    const by = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[e.key];
    if (by !== undefined) {
      e.preventDefault();
      step(by);
    } else if (e.key === "Enter") {
      entered.current = true;
      take();
    }
    if (e.key === "Escape") {
      forget();
      setTyped(undefined);
      done();
    }
  };
  const text = typed ?? refused?.text ?? shown;
  const wrong = typed === undefined ? refused?.sentence : undefined;
  const complaint = <span ref={showWhole} className="why-wrong" id={wrongId} role="alert">{wrong}</span>;
  return (
    <span ref={inSentence} className={`number${wrong ? " wrong" : ""}${reading?.own === false ? " found" : ""}`}>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        role="spinbutton"
        data-spot={spot}
        aria-label={`${label}, ${spokenUnit[field.unit]}`}
        aria-valuenow={value === undefined ? undefined : Number((value * field.factor).toFixed(3))}
        aria-valuetext={value === undefined ? "not read" : `${shown} ${field.unit}`}
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
      {!bare && <span className="unit"> {field.unit}</span>}
      {wrong && (sentence ? createPortal(complaint, sentence) : complaint)}
    </span>
  );
}

const wanted: Readonly<Record<Field["unit"], string>> = {
  mm: "Type millimetres, like 72.5 or 72,5, or centimetres, like 7,25 cm.",
  "%": "Type percent, like 50 or 50,5.",
  "°": "Type degrees, like 12 or 12,5.",
  N: "Type newtons, like 20, or kilograms, like 2 kg.",
  kg: "Type kilograms, like 1.5 or 1,5, or grams, like 1500 g.",
  g: "Type grams, like 1500, or kilograms, like 1,5 kg.",
};

const spokenUnit: Readonly<Record<Field["unit"], string>> = { mm: "millimetres", "%": "percent", "°": "degrees", N: "newtons", kg: "kilograms", g: "grams" };

function beyond(unit: Field["unit"], { least, most }: { readonly least: number; readonly most: number }): string {
  return most === Infinity && least === 0 ? "This cannot be less than nothing." : `Only ${say(least)} to ${say(most)}\u00a0${unit} can be used here.`;
}
