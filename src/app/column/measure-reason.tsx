import type { ReactElement } from "react";
import { measureHelp } from "#last/help.ts";
import type { MeasureKey } from "../state/spots.ts";
import { measureFields, nameOf } from "../state/measure-words.ts";
import { say } from "../state/numbers.ts";

/** What a measure of the last is, how it is taken by hand, what is usual and what goes wrong. */
export function MeasureReason({ of }: { readonly of: MeasureKey }): ReactElement {
  const help = measureHelp[nameOf(of)];
  const { name, field, wrong } = measureFields[of];
  return (
    <>
      <p><b>{name.charAt(0).toUpperCase() + name.slice(1)}.</b> {help.meaning}</p>
      <p><b>By hand:</b> {help.byHand}</p>
      <p><b>Usual</b> on women’s flat lasts: {say(field.min)} to {say(field.max)} mm. {wrong}</p>
    </>
  );
}
