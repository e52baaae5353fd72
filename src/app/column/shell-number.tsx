import type { ReactElement } from "react";
import type { ShellNumbers, ShellRules } from "#shell/settings.ts";
import type { Desk } from "../desk.ts";
import { followShellRule, setShell } from "../state/edits.ts";
import { RuleNumber, RuleReason } from "./rule-number.tsx";

export interface ShellNumberProps {
  readonly desk: Desk;
  readonly rules: ShellRules;
  readonly of: keyof ShellNumbers;
  /** What lies outside is refused here, in the field's unit. */
  readonly limits?: { readonly least: number; readonly most: number };
}

/** One number of the shell, in its sentence. */
export function ShellNumber({ desk, rules, of, limits }: ShellNumberProps): ReactElement {
  return <RuleNumber desk={desk} rule={rules[of]} own={desk.job.shell[of]} spot={`shell ${of}`} edit={(v) => setShell(desk.job, { [of]: v })} limits={limits} />;
}

/** Its why. */
export function ShellReason({ desk, rules, of }: ShellNumberProps): ReactElement {
  return <RuleReason desk={desk} rule={rules[of]} own={desk.job.shell[of]} follow={() => followShellRule(desk.job, of)} titled />;
}
