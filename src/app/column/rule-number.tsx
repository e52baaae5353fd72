import type { ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { Job } from "#job/job.ts";
import type { Rule } from "#lines/lines.ts";
import type { Desk } from "../desk.ts";
import { fieldOf } from "../state/measure-field.ts";
import type { Spot } from "../state/spot.ts";
import { NumberField } from "./number-field.tsx";
import { Reason } from "./why.tsx";

interface RuleNumberProps {
  readonly desk: Desk;
  readonly rule: Rule;
  /** What the maker has asked for, where she has. */
  readonly own: number | undefined;
  /** The rule is the same on every last. */
  readonly anyLast?: boolean;
}

interface RuleNumberFieldProps extends RuleNumberProps {
  readonly spot: Spot;
  readonly edit: (value: number) => Job;
  /** What lies outside is refused here, in the field's unit. */
  readonly limits?: { readonly least: number; readonly most: number } | undefined;
}

const named = ({ name }: Rule): string => name.charAt(0).toLowerCase() + name.slice(1);

/** One number that a rule of construction speaks of, in its sentence: the maker's, else what the rule says. */
export function RuleNumber({ desk, rule, own, spot, edit, limits }: RuleNumberFieldProps): ReactElement {
  return <NumberField label={rule.name} value={own ?? rule.value} field={fieldOf(rule)} desk={desk} spot={spot} edit={edit} what={`the ${named(rule)}`} {...(limits && { limits })} />;
}

/** Its why, under its name unless it is the only one of its sentence. */
export function RuleReason({ desk, rule, own, anyLast = false, follow, titled }: RuleNumberProps & { readonly follow: () => Job; readonly titled: boolean }): ReactElement {
  return (
    <>
      {titled && <p><b>{capital(rule.name)}</b></p>}
      <Reason rule={rule} value={own ?? rule.value} anyLast={anyLast} onRule={() => desk.change(follow(), `the rule for the ${named(rule)}`)} />
    </>
  );
}
