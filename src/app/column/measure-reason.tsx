import type { ReactElement } from "react";
import { capital } from "#base/listed.ts";
import { measureHelp } from "#last/help.ts";
import type { LastMeasurements } from "#last/measured.ts";
import { ruleFor } from "../state/measure-rule.ts";
import type { MeasureKey } from "../state/spot.ts";
import { measureFields, nameOf } from "../state/measure-words.ts";
import { mm, say } from "../state/numbers.ts";

interface MeasureReasonProps {
  readonly of: MeasureKey;
  readonly measures: LastMeasurements;
  readonly onTake: (mm: number) => void;
}

/** What a measure of the last is, how it is taken by hand, what is usual and what goes wrong. */
export function MeasureReason({ of, measures, onTake }: MeasureReasonProps): ReactElement {
  const help = measureHelp[nameOf(of)];
  const { name, field, wrong } = measureFields[of];
  const ruled = ruleFor(of, measures);
  return (
    <>
      <p><b>{capital(name)}.</b> {help.meaning}</p>
      <p><b>By hand:</b> {help.byHand}</p>
      <p><b>Usual</b> on women’s flat lasts: {say(field.min)} to {say(field.max)} mm. {wrong}</p>
      {ruled !== undefined && Math.abs(ruled - measures[of]) > 0.05 && <p>Beside your other numbers the rule of the trade says {mm(ruled)}. <button type="button" className="word" onClick={() => onTake(ruled)} aria-label={`take ${mm(ruled)} for the ${name}`}>Take it</button></p>}
    </>
  );
}
