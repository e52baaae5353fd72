import type { ReactElement } from "react";
import type { Finding } from "#base/findings.ts";
import type { Pair } from "#job/pair.ts";
import { rollWidths, sheetChoicesFrom, sheetSets } from "#sheets/choices.ts";
import { paperNames } from "#sheets/paper.ts";
import type { SheetFile } from "#sheets/sheet-file.ts";
import type { Desk } from "../desk.ts";
import type { Desktop } from "../desktop.ts";
import { downloadBytes } from "../download.ts";
import { setSheets } from "../state/edits.ts";
import { lengthField } from "../state/measure-field.ts";
import { say } from "../state/numbers.ts";
import type { PagePlan } from "../state/page-plan.ts";
import type { Station } from "../state/stations.ts";
import { paperWords, setWords } from "../state/sheet-words.ts";
import { NumberField } from "./number-field.tsx";
import { LooksBefore } from "./looks-before.tsx";
import { SheetBars } from "./sheet-bars.tsx";
import { SheetLayers } from "./sheet-layers.tsx";
import { SizeInput } from "./size-field.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const told: Readonly<Record<string, string>> = {
  "pattern.pdf": "the pattern at true scale, in pages to print and join",
  "marks.pdf": "the tape lengths to mark on both lasts",
  "making.pdf": "the bench book: pieces, shopping list, steps, cautions and pages to write on",
  "pattern.svg": "the same pieces as one drawing in millimetres",
  "pattern.dxf": "the same pieces for a cutting machine, in millimetres",
  "report.json": "every figure of this pair, to be read by programs",
};
const order = Object.keys(told);
const place = ({ name }: SheetFile): number => (order.indexOf(name) + order.length + 1) % (order.length + 1);

interface StationSheetsProps {
  readonly desk: Desk;
  readonly now: Desktop;
  readonly pair: Pair;
  /** Of all stations, with what a pull-over that still holds came to. */
  readonly findings: readonly Finding[];
  readonly plan: PagePlan;
  readonly onStation: (station: Station) => void;
}

const together = ["together", "apart"] as const;
const togetherWords = { together: "lie as they need the fewest pages", apart: "each begin on a page of their own" } as const;

/** What will be printed, and the files. */
export function StationSheets({ desk, now, pair, findings, plan, onStation }: StationSheetsProps): ReactElement {
  const files = now.sheets && now.sheetsOf === pair ? [...now.sheets.files].sort((a, b) => place(a) - place(b)) : undefined;
  const making = now.busy?.on === "sheets";
  const pages = plan.tiling.tiles.length + plan.covers;
  const pieces = plan.sheet.placed.length;
  const choices = sheetChoicesFrom(desk.job.sheets);
  const change = (part: Parameters<typeof setSheets>[1], what: string): void => desk.change(setSheets(desk.job, part), what);
  return (
    <>
      <LooksBefore findings={findings} but="Sheets" onStation={onStation} />
      <p className="sentence">
        The pattern is printed on <WordChoice label="paper" value={choices.paper} options={paperNames} say={paperWords} onChange={(paper) => change({ paper }, "the paper")} />
        {choices.paper === "roll" && (
          <>
            {" "}<NumberField label="width of the roll" value={choices.rollWidthMm} field={lengthField(300, 1600, 1)} desk={desk} spot="sheets rollWidthMm" edit={(rollWidthMm) => setSheets(desk.job, { rollWidthMm })} what="the width of the roll" limits={rollWidths} outside={`Paper from a roll is ${rollWidths.least} to ${rollWidths.most}\u00a0mm wide here. Measure the roll across, in millimetres.`} /> wide
          </>
        )}
        , and carries the name <b>{pair.labels.title}</b>, <span className="one-of">size <SizeInput desk={desk} pair={pair} />.</span>
      </p>
      <WithWhy name="what is printed" spots={[]} why={<><p>Net cards have no allowances: they are laid on the last, to see whether they fit. Cutting patterns carry every allowance, and are what you cut leather by.</p><p>A page of its own for each piece needs more paper, but nothing has to be cut apart, and a single piece can be printed again.</p></>}>
        It holds <WordChoice label="what is printed" value={choices.sets} options={sheetSets} say={(o) => setWords[o]} onChange={(sets) => change({ sets }, "what is printed")} />; the pieces{" "}
        <WordChoice label="how the pieces lie" value={choices.onePage ? "apart" : "together"} options={together} say={(o) => togetherWords[o]} onChange={(o) => change({ onePage: o === "apart" }, "how the pieces lie")} />.
      </WithWhy>
      <p className="follows">
        {pages} pages for {pieces} pieces; {plan.covers === 1 ? "the first says" : `the first ${plan.covers} say`} how to print and join the others. Print at 100&nbsp;%, not “fit to page”, and
        measure the scale bars before you cut.
      </p>
      {!files && (
        <p className="sentence">
          <button type="button" className="action" disabled={making || now.draft} onClick={() => desk.makeSheets()}>{making ? "Making the sheets …" : "Make the sheets"}</button>
        </p>
      )}
      <p className="follows" role="status">
        {files ? "Each file was read back and measured; it holds to true scale." : "They are made here in your browser; nothing is sent anywhere."}
      </p>
      {files && (
        <ul className="files">
          {files.map((file) => (
            <li key={file.name}>
              <button type="button" className="row" onClick={() => downloadBytes(file.name, file.bytes, file.mime)}>
                <b>{file.name}</b>{told[file.name] ? ` · ${told[file.name]}` : ""} · {say(file.bytes.length / 1000, 0)} kB
              </button>
            </li>
          ))}
        </ul>
      )}
      <SheetBars desk={desk} />
      <SheetLayers layers={choices.layers} onChange={(layers) => change({ layers }, "what the drawings hold")} />
    </>
  );
}
