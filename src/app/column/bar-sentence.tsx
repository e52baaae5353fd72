import type { ReactElement } from "react";
import type { Job } from "#job/job.ts";
import { barMm as printedBarMm } from "#photo/card.ts";
import { lengthField } from "../state/measure-field.ts";
import { mm } from "../state/numbers.ts";
import { setBar } from "../state/tape-edits.ts";
import type { FieldDesk } from "../state/work-in-hand.ts";
import { NumberField } from "./number-field.tsx";
import { WithWhy } from "./why.tsx";

interface BarSentenceProps {
  readonly fields: FieldDesk;
  readonly job: Job;
  /** What the maker's rule reads; nothing when she has not measured. */
  readonly barMm: number | undefined;
}

/** What the maker's own rule reads on the bar of the printed card: the scale of every photograph hangs on it. */
export function BarSentence({ fields, job, barMm }: BarSentenceProps): ReactElement {
  return (
    <WithWhy
      name="bar on the card"
      spots={["card bar"]}
      why={
        <>
          <p>Printers shrink or stretch a page by up to one or two per cent without saying so. Lay your own steel rule on the upright bar of the card you printed and type what it reads, to half a millimetre or finer; every length in the photographs is set by it.</p>
          <p>It is drawn {mm(printedBarMm)} long. A print more than 3 % off is better made again at 100 %, without “fit to page”.</p>
        </>
      }
    >
      On the upright bar printed on the card your rule reads{" "}
      <NumberField label="bar on the card" value={barMm ?? printedBarMm} field={lengthField(0.97 * printedBarMm, 1.03 * printedBarMm, 0.1)} desk={fields} spot="card bar" edit={(v) => setBar(job, v)} what="the bar on the card" reading={{ own: barMm !== undefined, forget: () => fields.change(setBar(job, undefined), "forgetting the bar on the card") }} />
      {barMm === undefined && <span className="follows"> (as it is drawn; measure it, then type what you read, or say that <button type="button" className="word" onClick={() => fields.change(setBar(job, printedBarMm), "the bar on the card")}>it reads just that</button>)</span>}.
    </WithWhy>
  );
}
