import type { ReactElement } from "react";
import { jawsMm, lastingFrom, type PullSettings } from "#lasting/settings.ts";
import { pullWord } from "#lasting/lasted.ts";
import type { Desk } from "../desk.ts";
import { setLasting } from "../state/lasting-edits.ts";
import { LastingNumber, LastingReason } from "./lasting-number.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const ways = ["marks", "full"] as const;
const wayWords: Readonly<Record<(typeof ways)[number], string>> = { marks: "only until the topline stands at its mark", full: "each with its full pull" };

/** How the upper is pulled over: every pull in newtons with its word, friction, and the tape in the topline. */
export function LastingPulls({ desk }: { readonly desk: Desk }): ReactElement {
  const settings = lastingFrom(desk.job.lasting);
  const pull = (of: keyof PullSettings): ReactElement => <><LastingNumber desk={desk} of={of} /> <span className="word-of">({pullWord(settings[of])})</span></>;
  const most = settings.stopAtMarks ? "at most " : "";
  const why = (...of: readonly (keyof PullSettings)[]): ReactElement => <>{of.map((key) => <LastingReason key={key} desk={desk} of={key} titled={of.length > 1} />)}</>;
  return (
    <>
      <p className="follows">Pulls are those of pincers {jawsMm} mm broad: up to 12 N is light, up to 30 N firm, above that strong. Hook a spring balance to your pincers once to feel what yours are.</p>
      <WithWhy name="how far back, seat and waists are pulled" spots={[]} why={<MarksReason />}>
        Back, seat sides and waists are pulled <WordChoice label="how far back, seat sides and waists are pulled" value={settings.stopAtMarks ? "marks" : "full"} options={ways} say={(w) => wayWords[w]} onChange={(w) => desk.change(setLasting(desk.job, { stopAtMarks: w === "marks" }), "how far is pulled")} />.
      </WithWhy>
      <WithWhy name="pulls at the toe" spots={["lasting pullToeN", "lasting pullToeCornerN"]} why={why("pullToeN", "pullToeCornerN")}>
        The toe is drawn with {pull("pullToeN")}, then both its corners with {pull("pullToeCornerN")}.
      </WithWhy>
      <WithWhy name="pulls at the back and the seat" spots={["lasting pullBackN", "lasting pullSeatSideN"]} why={why("pullBackN", "pullSeatSideN")}>
        The back is set with {most}{pull("pullBackN")}, the sides of the seat with {most}{pull("pullSeatSideN")}.
      </WithWhy>
      <WithWhy name="pulls at joints and waist" spots={["lasting pullJointN", "lasting pullWaistN"]} why={why("pullJointN", "pullWaistN")}>
        The joints are drawn with {pull("pullJointN")}, the waists closed with {most}{pull("pullWaistN")}.
      </WithWhy>
      <WithWhy name="friction and tape" spots={["lasting friction", "lasting tapeN"]} why={why("friction", "tapeN")}>
        The lining drags on the last with <LastingNumber desk={desk} of="friction" /> of what presses it. The tape in the topline resists with <LastingNumber desk={desk} of="tapeN" />.
      </WithWhy>
    </>
  );
}

function MarksReason(): ReactElement {
  return (
    <>
      <p>A maker watches her marks: she pulls at the back until it stands at its height, and at seat sides and waists until the topline above them does, then tacks. Each is pulled so here, and no harder than its number says; what it took stands among the drafts.</p>
      <p>Toe, toe corners and joints have no topline above them and are pulled by feel, with their full pull. With their full pull all drafts are taken as if you did not look at the marks.</p>
    </>
  );
}
