import type { ReactElement } from "react";
import type { ShellNumbers, ShellRules } from "#shell/settings.ts";
import type { Desk } from "../desk.ts";
import { followShellRule, setShell } from "../state/edits.ts";
import { fieldOf } from "../state/measure-field.ts";
import { NumberField } from "./number-field.tsx";
import { Reason } from "./why.tsx";

export interface ShellNumberProps {
  readonly desk: Desk;
  readonly rules: ShellRules;
  readonly of: keyof ShellNumbers;
  /** What lies outside is refused here, in the field's unit. */
  readonly limits?: { readonly least: number; readonly most: number };
}

const asked = ({ desk, rules, of }: ShellNumberProps): number => desk.job.shell[of] ?? rules[of].value;

/** One number of the shell, in its sentence. */
export function ShellNumber(props: ShellNumberProps): ReactElement {
  const { desk, rules, of, limits } = props;
  const rule = rules[of];
  return (
    <NumberField
      label={rule.name}
      value={asked(props)}
      field={fieldOf(rule)}
      desk={desk}
      spot={`shell ${of}`}
      edit={(v) => setShell(desk.job, { [of]: v })}
      what={`the ${rule.name}`}
      {...(limits && { limits })}
    />
  );
}

/** Its why. */
export function ShellReason(props: ShellNumberProps): ReactElement {
  const { desk, rules, of } = props;
  const rule = rules[of];
  return (
    <>
      <p><b>{rule.name.charAt(0).toUpperCase() + rule.name.slice(1)}</b></p>
      <Reason rule={rule} value={asked(props)} onRule={() => desk.change(followShellRule(desk.job, of), `the rule for the ${rule.name}`)} />
    </>
  );
}
