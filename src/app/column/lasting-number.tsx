import type { ReactElement } from "react";
import { pullRules, type PullSettings } from "#lasting/settings.ts";
import type { Desk } from "../desk.ts";
import { followLastingRule, setLasting } from "../state/lasting-edits.ts";
import { RuleNumber, RuleReason } from "./rule-number.tsx";

export interface LastingNumberProps {
  readonly desk: Desk;
  readonly of: keyof PullSettings;
}

/** One number of lasting, in its sentence; what no job can hold is refused here. */
export function LastingNumber({ desk, of }: LastingNumberProps): ReactElement {
  const rule = pullRules[of];
  const factor = rule.unit === "share" ? 100 : 1;
  return <RuleNumber desk={desk} rule={rule} own={desk.job.lasting[of]} spot={`lasting ${of}`} edit={(v) => setLasting(desk.job, { [of]: v })} limits={{ least: factor * rule.min, most: factor * rule.max }} />;
}

/** Its why. */
export function LastingReason({ desk, of, titled = true }: LastingNumberProps & { readonly titled?: boolean }): ReactElement {
  return <RuleReason desk={desk} rule={pullRules[of]} own={desk.job.lasting[of]} anyLast follow={() => followLastingRule(desk.job, of)} titled={titled} />;
}
