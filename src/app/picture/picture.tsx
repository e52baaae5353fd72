import type { ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import type { Proof } from "#job/proof.ts";
import type { Making } from "#making/making.ts";
import type { Desk } from "../desk.ts";
import type { LastingWork } from "../lasting-work.ts";
import type { LeatherSight } from "../state/leather-sight.ts";
import type { Looking } from "../state/looking.ts";
import type { MakingSight } from "../state/making-sight.ts";
import type { PieceWork } from "../state/piece-work.ts";
import type { PagePlan } from "../state/page-plan.ts";
import type { Station } from "../state/stations.ts";
import { seenLast } from "../state/scan-work.ts";
import type { ApartMap } from "./apart-map.ts";
import { FoundPicture } from "./found-picture.tsx";
import { LastPicture } from "./last-picture.tsx";
import { LastingPicture } from "./lasting-picture.tsx";
import { LeatherPicture } from "./leather-picture.tsx";
import { MadePicture } from "./made-picture.tsx";
import { MakingPicture } from "./making-picture.tsx";
import { PiecesPicture } from "./pieces-picture.tsx";
import { SheetsPicture } from "./sheets-picture.tsx";
import type { ShellMap } from "./shell-map.ts";
import { TapePicture } from "./tape-picture.tsx";
import { TapeView } from "./tape-view.tsx";

interface PictureProps {
  readonly desk: Desk;
  readonly pair: Pair;
  readonly busy: boolean;
  readonly station: Station;
  readonly looking: Looking;
  readonly map: ShellMap | undefined;
  readonly proof: Proof | undefined;
  readonly folded: boolean;
  readonly apart: ApartMap | undefined;
  readonly plan: PagePlan | undefined;
  readonly work: PieceWork;
  /** What of the leathers is looked at. */
  readonly sight: LeatherSight;
  readonly onSight: (sight: LeatherSight) => void;
  readonly lasting: LastingWork;
  readonly making: Making | undefined;
  readonly makingSight: MakingSight;
}

/** The one large picture of the open station. */
export function Picture(props: PictureProps): ReactElement {
  const { desk, pair, station, looking, apart, plan, work } = props;
  if (station === "Sheets") return plan ? <SheetsPicture desk={desk} plan={plan} made={desk.now.sheetsOf === pair ? desk.now.sheets : undefined} /> : <></>;
  if (station === "Leather") return <LeatherPicture pair={pair} sight={props.sight} onSight={props.onSight} />;
  if (station === "Making") return props.making ? <MakingPicture desk={desk} pair={pair} making={props.making} sight={props.makingSight} /> : <></>;
  if (station === "Pieces") return <PiecesPicture pair={pair} work={work} />;
  if (station === "Last") {
    const { waiting } = desk.now;
    if (waiting ? waiting.last.from === "tape" : pair.from === "tape") return <TapePicture desk={desk} pair={pair} />;
    const seen = seenLast(desk);
    const found = seen && <FoundPicture desk={desk} seen={seen} looking={looking} map={apart} />;
    if (found) return !waiting && pair.from === "last" && pair.traces ? <MadePicture desk={desk} pair={pair}>{found}</MadePicture> : found;
  }
  // A taped pattern has no last to be shown.
  if (pair.from === "tape") return <TapeView pair={pair} />;
  const { now: { lasted }, map, holds } = props.lasting;
  if (station === "Lasting" && lasted && map) return <LastingPicture pair={pair} lasted={lasted} map={map} former={!holds} />;
  return <LastPicture {...props} pair={pair} />;
}
