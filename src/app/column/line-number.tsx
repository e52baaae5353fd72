import type { ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { Desk } from "../desk.ts";
import { followLineRule, setLines } from "../state/edits.ts";
import { fieldOf } from "../state/measure-field.ts";
import { NumberField } from "./number-field.tsx";
import { Reason } from "./why.tsx";

export interface LineNumberProps {
  readonly desk: Desk;
  readonly pair: Pair;
  readonly of: keyof LineSettings;
}

/** What the maker has asked for, else what the rule says for this last. */
const asked = ({ desk, pair, of }: LineNumberProps): number => desk.job.lines[of] ?? pair.lineRules[of].value;

/** One number of the lines, in its sentence. */
export function LineNumber(props: LineNumberProps): ReactElement {
  const { desk, pair, of } = props;
  const rule = pair.lineRules[of];
  return (
    <NumberField
      label={rule.name}
      value={asked(props)}
      field={fieldOf(rule)}
      onChange={(v, gesture) => desk.change(setLines(desk.job, { [of]: v }), `the ${rule.name}`, gesture)}
      onDone={() => desk.settle()}
    />
  );
}

/** Its why. */
export function LineReason(props: LineNumberProps): ReactElement {
  const { desk, pair, of } = props;
  const rule = pair.lineRules[of];
  return <Reason rule={rule} value={asked(props)} onRule={() => desk.change(followLineRule(desk.job, of), `the rule for the ${rule.name}`)} />;
}
