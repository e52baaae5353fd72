import type { ReactElement } from "react";

interface WordChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly T[];
  readonly say?: (option: T) => string;
  readonly onChange: (value: T) => void;
}

/** A word inside a sentence that can be another one. */
export function WordChoice<T extends string>({ label, value, options, say = (o) => o, onChange }: WordChoiceProps<T>): ReactElement {
  return (
    <select className="choice" aria-label={label} value={value} onChange={(e) => onChange(e.target.value as T)}>
      {options.map((o) => <option key={o} value={o}>{say(o)}</option>)}
    </select>
  );
}
