import type { ReactElement } from "react";
import type { Side } from "#last/last.ts";
import type { Asked } from "#lasting/log.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import type { Desk } from "../desk.ts";
import { measureOf, setMeasureOf, setShoeNote, shoeIn, type ShoeMade, type ShoeMeasure } from "../state/log-edits.ts";
import { lengthField, type Field } from "../state/measure-field.ts";
import { sayFixed } from "../state/numbers.ts";
import { Fold } from "./fold.tsx";
import { NumberField } from "./number-field.tsx";

interface ShoeTableProps {
  readonly desk: Desk;
  readonly pair: number;
  readonly made: ShoeMade;
  /** As a tape reads it over the lasted upper, or on the bare last for shoes that were taped there. */
  readonly asked: Asked;
  readonly overUpper: boolean;
}

interface Row {
  readonly of: ShoeMeasure;
  readonly name: string;
  readonly field: Field;
  readonly asked?: number | undefined;
}

const sides: readonly Side[] = ["left", "right"];
const height = (least: number, most: number): Field => lengthField(least, most, 0.5);

/** What a tape reads on the two shoes of a pair. */
export function ShoeTable({ desk, pair, made, asked, overUpper }: ShoeTableProps): ReactElement {
  const rows: readonly Row[] = [
    { of: "throatDepthMm", name: "throat depth", field: height(30, 110), asked: asked.throatDepthMm },
    { of: "backHeightMm", name: "back height", field: height(40, 80), asked: asked.backHeightMm },
    { of: "innerHeightMm", name: "inner side, lowest", field: height(25, 60), asked: asked.innerHeightMm },
    { of: "outerHeightMm", name: "outer side, lowest", field: height(25, 60), asked: asked.outerHeightMm },
    { of: "soleMarginMm", name: "sole stands out", field: height(0, 6) },
    { of: "heelHeightMm", name: "heel height", field: height(5, 60) },
  ];
  const margins = draftOrder.map(({ number, name }): Row => ({ of: `margin ${number}`, name: `${number} · ${name}`, field: height(5, 30) }));
  const read = margins.filter(({ of }) => sides.some((side) => measureOf(shoeIn(desk.job, pair, side), of) !== undefined)).length;
  return (
    <section className="shoe" aria-label={`Pair ${pair}`} data-complaints="">
      <Rows desk={desk} pair={pair} made={made} rows={rows} caption={`Pair ${pair}, mm`} asked={overUpper ? "asked, over the upper" : "asked, on the bare last"} />
      <Fold name="Margins left at the drafts" holds={read === 0 ? "none read" : `${read} read`}>
        <Rows desk={desk} pair={pair} made={made} rows={margins} caption="Margin left inside the feather line, mm" />
      </Fold>
      <p className="sentence">
        {sides.map((side) => {
          const note = shoeIn(desk.job, pair, side)?.note ?? "";
          return (
            <span key={side}>
              {side === "left" ? "Left" : "Right"}: <input className="words" aria-label={`note on the ${side} shoe of pair ${pair}`} placeholder="a note" value={note} size={Math.max(10, Math.min(30, note.length))} maxLength={2000}
                onChange={(e) => desk.change(setShoeNote(desk.job, pair, side, made, e.target.value), `a note on pair ${pair}`, `typing a note ${pair} ${side}`)} onBlur={() => desk.settle()} />{" "}
            </span>
          );
        })}
      </p>
    </section>
  );
}

interface RowsProps {
  readonly desk: Desk;
  readonly pair: number;
  readonly made: ShoeMade;
  readonly rows: readonly Row[];
  readonly caption: string;
  /** What the column of what was asked is called; none without it. */
  readonly asked?: string;
}

function Rows({ desk, pair, made, rows, caption, asked }: RowsProps): ReactElement {
  const number = (row: Row, side: Side): ReactElement => {
    const value = measureOf(shoeIn(desk.job, pair, side), row.of);
    const what = `${row.name}, ${side} shoe of pair ${pair}`;
    return (
      <NumberField
        desk={desk} bare spot={`shoe ${pair} ${side} ${row.of}`} label={what} value={value} field={row.field} limits={{ least: -20, most: 200 }} what={what}
        edit={(v) => setMeasureOf(desk.job, pair, side, made, row.of, v)}
        reading={{ own: value !== undefined, forget: () => desk.change(setMeasureOf(desk.job, pair, side, made, row.of, undefined), what) }}
      />
    );
  };
  return (
    <table className="figures">
      <caption>{caption}</caption>
      <thead><tr><th scope="col">measure</th>{asked && <th scope="col">{asked}</th>}<th scope="col">left</th><th scope="col">right</th></tr></thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.of}>
            <th scope="row">{row.name}</th>
            {asked && <td>{row.asked === undefined ? "" : sayFixed(row.asked)}</td>}
            {sides.map((side) => <td key={side}>{number(row, side)}</td>)}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
