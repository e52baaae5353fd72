import type { ReactElement } from "react";
import type { LineRules, LineSettings } from "#lines/lines.ts";
import type { Desk } from "../desk.ts";
import { followLineRule, setLines } from "../state/edits.ts";
import { fieldOf } from "../state/measure-field.ts";
import { NumberField } from "./number-field.tsx";
import { Reason } from "./why.tsx";

export interface LineNumberProps {
  readonly desk: Desk;
  readonly rules: LineRules;
  readonly of: keyof LineSettings;
}

/** What the maker has asked for, else what the rule says for this last. */
const asked = ({ desk, rules, of }: LineNumberProps): number => desk.job.lines[of] ?? rules[of].value;

/** One number of the lines, in its sentence. */
export function LineNumber(props: LineNumberProps): ReactElement {
  const { desk, rules, of } = props;
  const rule = rules[of];
  return (
    <NumberField
      label={rule.name}
      value={asked(props)}
      field={fieldOf(rule)}
      desk={desk}
      spot={`lines ${of}`}
      edit={(v) => setLines(desk.job, { [of]: v })}
      what={`the ${rule.name}`}
    />
  );
}

/** Its why. */
export function LineReason(props: LineNumberProps): ReactElement {
  const { desk, rules, of } = props;
  const rule = rules[of];
  return <Reason rule={rule} value={asked(props)} onRule={() => desk.change(followLineRule(desk.job, of), `the rule for the ${rule.name}`)} />;
}
