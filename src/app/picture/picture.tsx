import type { ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import type { Desk } from "../desk.ts";
import type { Looking } from "../state/looking.ts";
import type { PagePlan } from "../state/page-plan.ts";
import type { Station } from "../state/stations.ts";
import type { ApartMap } from "./apart-map.ts";
import { FoundPicture } from "./found-picture.tsx";
import { LastPicture } from "./last-picture.tsx";
import { PiecesView } from "./pieces-view.tsx";
import { SheetsView } from "./sheets-view.tsx";
import type { StretchMap } from "./stretch-map.ts";

interface PictureProps {
  readonly desk: Desk;
  readonly pair: Pair;
  readonly busy: boolean;
  readonly station: Station;
  readonly looking: Looking;
  readonly map: StretchMap | undefined;
  readonly apart: ApartMap | undefined;
  readonly plan: PagePlan | undefined;
  readonly chosen: string | undefined;
  readonly onChoose: (name: string | undefined) => void;
}

/** The one large picture of the open station. */
export function Picture(props: PictureProps): ReactElement {
  const { desk, pair, station, looking, apart, plan, chosen, onChoose } = props;
  if (station === "Sheets") return plan ? <SheetsView plan={plan} paper={pair.job.paper} /> : <></>;
  // A taped pattern has no last to be shown.
  if (station === "Pieces" || pair.from === "tape") return <PiecesView pieces={pair.pieces} chosen={chosen} onChoose={onChoose} />;
  if (station === "Last") return <FoundPicture desk={desk} pair={pair} looking={looking} map={apart} />;
  return <LastPicture {...props} pair={pair} />;
}
