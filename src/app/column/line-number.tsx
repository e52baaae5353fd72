import type { ReactElement } from "react";
import type { LineRules, LineSettings } from "#lines/lines.ts";
import type { Desk } from "../desk.ts";
import { followLineRule, setLines } from "../state/edits.ts";
import { RuleNumber, RuleReason } from "./rule-number.tsx";

export interface LineNumberProps {
  readonly desk: Desk;
  readonly rules: LineRules;
  readonly of: keyof LineSettings;
}

/** One number of the lines, in its sentence. */
export function LineNumber({ desk, rules, of }: LineNumberProps): ReactElement {
  return <RuleNumber desk={desk} rule={rules[of]} own={desk.job.lines[of]} spot={`lines ${of}`} edit={(v) => setLines(desk.job, { [of]: v })} />;
}

/** Its why. */
export function LineReason({ desk, rules, of }: LineNumberProps): ReactElement {
  return <RuleReason desk={desk} rule={rules[of]} own={desk.job.lines[of]} follow={() => followLineRule(desk.job, of)} titled={false} />;
}
