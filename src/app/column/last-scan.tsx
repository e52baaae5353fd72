import { useState, type ReactElement } from "react";
import { severityOf, type Finding } from "#base/findings.ts";
import type { LastPair } from "#job/pair.ts";
import type { Side } from "#last/last.ts";
import type { Desk } from "../desk.ts";
import type { ApartMap } from "../picture/apart-map.ts";
import type { Looking } from "../state/looking.ts";
import { scanWork } from "../state/scan-work.ts";
import type { SeenLast } from "../state/seen-last.ts";
import { setScanSide } from "../state/scan-edits.ts";
import { FindingsList } from "./findings-list.tsx";
import { LastFeather } from "./last-feather.tsx";
import { LastMeasures } from "./last-measures.tsx";
import { LastOther } from "./last-other.tsx";
import { LastPoints } from "./last-points.tsx";
import { SizeField } from "./size-field.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const sides: readonly Side[] = ["left", "right"];
const unitNames: Readonly<Record<string, string>> = { m: "metres", dm: "decimetres", cm: "centimetres", mm: "millimetres", in: "inches" };

interface LastScanProps {
  readonly desk: Desk;
  /** Nothing while no pair can be made. */
  readonly pair: LastPair | undefined;
  /** The last that is shown: that of the pair, or of a scan that waits. */
  readonly seen: SeenLast | undefined;
  readonly looking: Looking;
  /** How far the other last of the pair differs, when there is one. */
  readonly map: ApartMap | undefined;
  /** What was found that belongs to no sentence here, the gravest first. */
  readonly rest: readonly Finding[];
}

/** A last from a scan, as sentences: what was read, mended and found on it, all of which can be put right. */
export function LastScan({ desk, pair, seen, looking, map, rest }: LastScanProps): ReactElement | null {
  const work = scanWork(desk);
  const { last } = work.job;
  if (last.from !== "scan") return null;
  const letGo = work.waiting && <button type="button" className="word" onClick={() => desk.changeWaiting(undefined, "letting the scan go")}>Let this scan go</button>;
  if (!seen) return <p className="sentence">This last is read from <b>{last.file}</b>. {letGo}</p>;
  return (
    <>
      {work.waiting && (
        <p className="sentence">
          <b>No pattern can be made of this scan yet</b>, for the reason above the picture. Put right here what was found wrong, most likely the feather line; it is tried again after each change. {letGo}
        </p>
      )}
      <WithWhy name="unit and side" word="how" why={<UnitAndSide />} spots={["scan unit", "scan side"]}>
        This last was read from <b>{last.file}</b>, in {unitNames[seen.last.placement.unit]}. It is a{" "}
        <WordChoice label="foot" value={seen.last.side} options={sides} onChange={(side) => work.change(setScanSide(work.job, side), "the side")} /> last.
      </WithWhy>
      <Mended rest={rest} all={seen.findings} />
      {!work.waiting && <SizeField desk={desk} pair={pair} />}
      <LastMeasures work={work} seen={seen} />
      <LastFeather work={work} seen={seen} looking={looking} />
      <LastPoints work={work} seen={seen} looking={looking} />
      {!work.waiting && <LastOther desk={desk} seen={seen} looking={looking} map={map} />}
    </>
  );
}

/** What has to be looked at stands open; small repairs behind a word. */
function Mended({ rest, all }: { readonly rest: readonly Finding[]; readonly all: readonly Finding[] }): ReactElement | null {
  const [open, setOpen] = useState(false);
  const notes = rest.filter((f) => severityOf(f) === "note");
  return (
    <>
      <FindingsList findings={rest.filter((f) => severityOf(f) !== "note")} all={all} />
      {notes.length > 0 && (
        <div className="sentence">
          <p>
            {notes.length === 1 ? "One small thing was" : `${notes.length} small things were`} mended on the scan.{" "}
            <button type="button" className="word why" aria-expanded={open} onClick={() => setOpen(!open)}>{open ? "close" : "which"}</button>
          </p>
          {open && <FindingsList findings={notes} all={all} />}
        </div>
      )}
    </>
  );
}

function UnitAndSide(): ReactElement {
  return (
    <>
      <p>Most scans do not say their unit: it is taken to be the one in which the length is that of a last. The side is told from waist, joints and cone: the inner joint lies farther forward, and the waist is hollower on the inner side.</p>
      <p>By hand: hold the last bottom down, toe away from you. The side on which the big toe will lie is the inner one; on a right last it is on your left.</p>
      <p className="source">Common practice, no source.</p>
    </>
  );
}
