import type { ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import { paperNames } from "#sheets/paper.ts";
import type { SheetFile } from "#sheets/sheet-file.ts";
import type { Desk } from "../desk.ts";
import type { Desktop } from "../desktop.ts";
import { downloadBytes } from "../download.ts";
import { say } from "../state/numbers.ts";
import { kindsOf } from "../state/piece-kinds.ts";
import type { PagePlan } from "../state/page-plan.ts";
import { SizeInput } from "./size-field.tsx";
import { WordChoice } from "./word-choice.tsx";

const told: Readonly<Record<SheetFile["name"], string>> = {
  "pattern.pdf": "the pattern at true scale, in pages to print and join",
  "marks.pdf": "the tape lengths to mark on both lasts",
  "pattern.svg": "the same pieces as one drawing in millimetres",
  "pattern.dxf": "the same pieces for a cutting machine, in millimetres",
  "report.json": "every figure of this pair, to be read by programs",
};
const names = Object.keys(told) as SheetFile["name"][];

interface StationSheetsProps {
  readonly desk: Desk;
  readonly now: Desktop;
  readonly pair: Pair;
  readonly plan: PagePlan;
}

/** What will be printed, and the files. */
export function StationSheets({ desk, now, pair, plan }: StationSheetsProps): ReactElement {
  const ready = now.sheets !== undefined && now.sheetsOf === pair;
  const making = now.busy?.on === "sheets";
  const pieces = kindsOf(pair.pieces).reduce((n, k) => n + k.count, 0);
  return (
    <>
      <p className="sentence">
        The pattern is printed on <WordChoice label="paper" value={sheetChoicesFrom(desk.job.sheets).paper} options={paperNames} onChange={(paper) => desk.change({ ...desk.job, sheets: { ...desk.job.sheets, paper } }, "the paper")} />, and carries the name{" "}
        <b>{pair.labels.title}</b>, size{" "}
        <SizeInput desk={desk} pair={pair} />.
      </p>
      <p className="follows">
        {plan.tiling.tiles.length + plan.covers} pages for {pieces} pieces; {plan.covers === 1 ? "the first says" : `the first ${plan.covers} say`} how to print and join the others. Print at 100&nbsp;%, not “fit to page”, and
        measure the scale bars before you cut.
      </p>
      {!ready && (
        <p className="sentence">
          <button type="button" className="action" disabled={making || now.draft} onClick={() => desk.makeSheets()}>{making ? "Making the sheets …" : "Make the sheets"}</button>
        </p>
      )}
      <p className="follows" role="status">
        {ready ? "Each file was read back and measured; it holds to true scale." : "They are made here in your browser; nothing is sent anywhere."}
      </p>
      {ready && (
        <ul className="files">
          {names.map((name) => {
            const file = now.sheets?.find((f) => f.name === name);
            return file && (
              <li key={name}>
                <button type="button" className="row" onClick={() => downloadBytes(name, file.bytes, file.mime)}>
                  <b>{name}</b> · {told[name]} · {say(file.bytes.length / 1000, 0)} kB
                </button>
              </li>
            );
          })}
        </ul>
      )}
    </>
  );
}
