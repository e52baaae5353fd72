import { useSyncExternalStore, type ReactElement } from "react";
import type { Finding } from "#base/findings.ts";
import { defaultJob } from "#job/default-job.ts";
import type { LastPair, Pair } from "#job/pair.ts";
import type { ApartMap } from "../picture/apart-map.ts";
import type { Looking } from "../state/looking.ts";
import type { Desk } from "../desk.ts";
import { seenLast } from "../state/scan-work.ts";
import { isExample } from "../state/edits.ts";
import { mm } from "../state/numbers.ts";
import { holdsUsual, usualOf, withUsual } from "../state/usual.ts";
import type { Usuals } from "../usuals.ts";
import { FindingsList } from "./findings-list.tsx";
import { FromMeasures } from "./from-measures.tsx";
import { FromTape } from "./from-tape.tsx";
import { LastScan } from "./last-scan.tsx";
import { ShapeSentence } from "./shape-sentence.tsx";
import { LastWays } from "./last-ways.tsx";

interface StationLastProps {
  readonly desk: Desk;
  /** Nothing while no pair can be made. */
  readonly pair: Pair | undefined;
  readonly onOpen: () => void;
  readonly onPictures: () => void;
  readonly looking: Looking;
  readonly map: ApartMap | undefined;
  /** What was found that no number of this station answers for, the gravest first. */
  readonly rest: readonly Finding[];
  readonly usuals: Usuals;
}

/** The first station: where the last comes from, and what was found on it. */
export function StationLast({ desk, pair, onOpen, onPictures, looking, map, rest, usuals }: StationLastProps): ReactElement {
  const onLast = pair?.from === "last" ? pair : undefined;
  const { from } = (desk.now.waiting ?? desk.job).last;
  const seen = seenLast(desk);
  const ways = <LastWays desk={desk} side={pair ? (pair.from === "last" ? pair.last.side : pair.tape.side) : "right"} onOpen={onOpen} onPictures={onPictures} />;
  // Who comes for the first time reads first how her own last comes in.
  const waysFirst = isExample(desk.job) && !desk.now.waiting;
  return (
    <>
      {onLast && !desk.now.waiting && <ShapeSentence last={onLast.last} />}
      <BegunWithUsual desk={desk} usuals={usuals} />
      {waysFirst && ways}
      {from === "tape" && <FromTape desk={desk} pair={pair} />}
      {from === "measures" && <FromMeasures desk={desk} pair={pair} />}
      {from === "scan" && <LastScan desk={desk} pair={onLast} seen={seen} looking={looking} map={map} rest={rest} />}
      {onLast && from === "measures" && <FeatherFollows pair={onLast} />}
      {from !== "scan" && !desk.now.waiting && <FindingsList findings={rest} all={pair?.findings ?? []} />}
      {!waysFirst && ways}
    </>
  );
}

/** Work that was brought in begins with the maker's usual numbers: said there and then, with the way to do without. */
function BegunWithUsual({ desk, usuals }: { readonly desk: Desk; readonly usuals: Usuals }): ReactElement | null {
  const { usual } = useSyncExternalStore(usuals.listen, usuals.look);
  const { brought } = desk.now;
  if (!usual || !brought || desk.now.waiting || desk.job.last !== brought.last || !holdsUsual(desk.job, usual) || holdsUsual(defaultJob(), usual)) return null;
  return (
    <p className="follows" role="status">
      It begins with your usual words and numbers of shell, pieces and sheets.{" "}
      <button type="button" className="word" onClick={() => desk.change(withUsual(desk.job, usualOf(defaultJob())), "going by the rules instead")}>Go by the rules instead</button>
    </p>
  );
}

function FeatherFollows({ pair: { last: { measures } } }: { readonly pair: LastPair }): ReactElement {
  return (
    <p className="follows">
      The feather line is {mm(measures.featherLength, 0)} round: {mm(measures.featherMedial, 0)} on the inner side, {mm(measures.featherLateral, 0)} on the outer. The vamp point lies{" "}
      {mm(measures.vampPointFromToe)} from the toe, along the front centre.
    </p>
  );
}
