import type { ReactElement } from "react";
import { mostBarOff, sheetChoicesFrom, trueBarMm } from "#sheets/choices.ts";
import { printPaper } from "#sheets/print-paper.ts";
import type { Desk } from "../desk.ts";
import { followUsualSheet, setSheets } from "../state/edits.ts";
import { lengthField } from "../state/measure-field.ts";
import { mm, percent, say } from "../state/numbers.ts";
import { NumberField } from "./number-field.tsx";
import { WithWhy } from "./why.tsx";

/** What the maker's rule reads on the two printed bars: by so much the next print is drawn larger or smaller. */
export function SheetBars({ desk }: { readonly desk: Desk }): ReactElement {
  const choices = sheetChoicesFrom(desk.job.sheets);
  const { barAcrossMm, barUpMm } = choices;
  // Wide paper has longer bars and its numbers are typed as they are read; what is kept is for one of 100 mm.
  const { barMm } = printPaper(choices);
  const factor = barMm / trueBarMm;
  const [least, most] = [mostBarOff.least * factor, mostBarOff.most * factor];
  const outside = `On this paper each bar is drawn ${mm(barMm, 0)} long, and a printer draws it from ${say(least)} to ${mm(most)}. Measure the whole bar from end to end; where the rule reads so, the page was fitted to the paper: print it again at 100\u00a0%.`;
  const field = { ...lengthField(least, most, 0.05), factor };
  const bar = (key: "barAcrossMm" | "barUpMm", name: string): ReactElement => (
    <NumberField label={name} value={desk.job.sheets[key] ?? trueBarMm} field={field} desk={desk} spot={`sheets ${key}`} edit={(v) => setSheets(desk.job, { [key]: v })} what={`the ${name}`} limits={{ least, most }} outside={outside}
      reading={{ own: desk.job.sheets[key] !== undefined, forget: () => desk.change(followUsualSheet(desk.job, key), `forgetting the ${name}`) }} />
  );
  const off = barAcrossMm !== trueBarMm || barUpMm !== trueBarMm;
  return (
    <>
      <WithWhy
        name="printed bars"
        spots={["sheets barAcrossMm", "sheets barUpMm"]}
        why={
          <>
            <p>A printer may draw a page up to one or two per cent too large or too small, and not by the same along and across. Print one page at 100&nbsp;%, lay your steel rule on both bars, and type what it reads.</p>
            <p>Both are drawn {mm(barMm, 0)} long on this paper. After a correction print one page again: now the rule must read {mm(barMm, 0)} on both. More than {mm(barMm - least, 0)} off is not the printer but “fit to page”.</p>
          </>
        }
      >
        The bar across measured {bar("barAcrossMm", "bar across")}, the bar up {bar("barUpMm", "bar up")}.
      </WithWhy>
      <p className="follows">
        {off ? (
          <>
            The pages are drawn {drawn(barAcrossMm)} across and {drawn(barUpMm)} up, for this printer alone; SVG and DXF stay as they are.{" "}
            <button type="button" className="word" onClick={() => desk.change(followUsualSheet(followUsualSheet(desk.job, "barAcrossMm"), "barUpMm"), "forgetting the bars")}>Forget the bars</button>
          </>
        ) : "Your printer is taken to be true until you type what your rule reads."}
      </p>
    </>
  );
}

/** A bar that came out short asks for a larger print. */
function drawn(readMm: number): string {
  const by = trueBarMm / readMm - 1;
  if (Math.abs(by) < 5e-5) return "as they are";
  return `${percent(Math.abs(by), 2)} ${by > 0 ? "larger" : "smaller"}`;
}
