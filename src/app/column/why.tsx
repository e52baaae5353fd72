import { useId, useState, type ReactElement, type ReactNode } from "react";
import type { Rule } from "#lines/lines.ts";
import { fieldOf } from "../state/measure-field.ts";
import { say } from "../state/numbers.ts";
import type { Spot } from "../state/spot.ts";
import { NotesOn } from "./notes.tsx";

interface WithWhyProps {
  readonly name: string;
  readonly why: ReactNode;
  /** The numbers in it. */
  readonly spots: readonly Spot[];
  /** The word that opens the reason. */
  readonly word?: "why" | "how";
  readonly children: ReactNode;
}

/** A paragraph that ends with the word "why", which opens the reason under it; what was found about its numbers stands under it. */
export function WithWhy({ name, why, spots, word = "why", children }: WithWhyProps): ReactElement {
  const [open, setOpen] = useState(false);
  const id = useId();
  return (
    <div className="sentence">
      <p>
        {children}{" "}
        <button type="button" className="word why" aria-expanded={open} aria-controls={id} aria-label={`${word}: ${name}`} onClick={() => setOpen(!open)}>
          {word}
        </button>
      </p>
      <div className="reason" id={id} hidden={!open}>{why}</div>
      <NotesOn spots={spots} />
    </div>
  );
}

/** Range, reason and source of a rule of construction, and the way back to what it says; `anyLast`: it is the same on every last. */
export function Reason({ rule, value, onRule, anyLast = false }: { readonly rule: Rule; readonly value: number; readonly onRule?: (() => void) | undefined; readonly anyLast?: boolean }): ReactElement {
  const f = fieldOf(rule);
  const inUnit = (v: number): string => `${say(v * f.factor, Math.max(1, f.decimals))}\u00a0${f.unit}`;
  const own = Math.abs(value - rule.value) > 1e-9;
  return (
    <>
      <p>{rule.why}</p>
      <p>
        Usual: {say(f.min, 1)} to {inUnit(rule.max)}. {anyLast ? "The rule" : "For this last the rule"} says {inUnit(rule.value)}.{" "}
        {own && onRule && <button type="button" className="word" onClick={onRule}>Take the rule’s {inUnit(rule.value)}</button>}
      </p>
      <p className="source">{rule.source}</p>
    </>
  );
}
