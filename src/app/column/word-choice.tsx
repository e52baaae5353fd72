import type { ReactElement } from "react";
import type { Spot } from "../state/spot.ts";

interface WordChoiceProps<T extends string> {
  readonly label: string;
  /** Which choice of the job it is, where something may be found about it. */
  readonly spot?: Spot;
  readonly value: T;
  readonly options: readonly T[];
  readonly say?: (option: T) => string;
  readonly onChange: (value: T) => void;
}

/** A word inside a sentence that can be another one. */
export function WordChoice<T extends string>({ label, spot, value, options, say = (o) => o, onChange }: WordChoiceProps<T>): ReactElement {
  return (
    <select className="choice" aria-label={label} data-spot={spot} value={value} onChange={(e) => onChange(e.target.value as T)}>
      {options.map((o) => <option key={o} value={o}>{say(o)}</option>)}
    </select>
  );
}
