import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { Desk } from "../desk.ts";
import { setLasting } from "../state/lasting-edits.ts";
import { mm } from "../state/numbers.ts";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const choices = ["card", "corrected"] as const;
const words: Readonly<Record<(typeof choices)[number], string>> = { card: "the card as it was laid flat", corrected: "the pattern corrected for these leathers" };

/** From which pattern the pieces are cut, and where the topline is to end. */
export function LastingCorrect({ desk, pair, onLines }: { readonly desk: Desk; readonly pair: LastPair; readonly onLines: () => void }): ReactElement {
  const { throatDepthMm, backHeightMm, sideHeightMedialMm, sideHeightLateralMm } = pair.lines.settings;
  return (
    <>
      <p className="sentence">
        The topline is to end where you drew it: the throat {mm(throatDepthMm)} behind the toe, the back {mm(backHeightMm)} high, the sides {mm(sideHeightMedialMm)} and {mm(sideHeightLateralMm)}. <button type="button" className="word why" onClick={onLines}>Lines</button>
      </p>
      <WithWhy name="which pattern is cut" spots={[]} why={<CorrectReason />}>
        The pieces are cut from <WordChoice label="from which pattern the pieces are cut" value={pair.job.lasting.correct ? "corrected" : "card"} options={choices} say={(c) => words[c]} onChange={(c) => desk.change(setLasting(desk.job, { correct: c === "corrected" }), "which pattern is cut")} />.
      </WithWhy>
    </>
  );
}

function CorrectReason(): ReactElement {
  return (
    <>
      <p>Leather gives when it is pulled over: a pattern laid flat without that in mind ends lower, and its throat moves toward the toe. The corrected pattern is the flat piece that comes to lie where you drew the lines when these leathers are pulled as said above.</p>
      <p>It is only as good as what is known of the leathers: test strips first. Lay the net card of the corrected pattern beside the other before you cut, and make one trial shoe.</p>
      <p className="source">Common practice, no source, for cutting soft leather 1.5 to 3 % shorter; the correction itself: docs/method/inverse.md.</p>
    </>
  );
}
