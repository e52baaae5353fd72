import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { Measure } from "#lasting/difference.ts";
import type { Desk } from "../desk.ts";
import type { LastingWork } from "../lasting-work.ts";
import { setLasting } from "../state/lasting-edits.ts";
import { mm, sayFixed, signed } from "../state/numbers.ts";
import { Fold } from "./fold.tsx";
import { LastingNumber, LastingReason } from "./lasting-number.tsx";
import { LastingReach } from "./lasting-reach.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const choices = ["card", "corrected"] as const;
const words: Readonly<Record<(typeof choices)[number], string>> = { card: "the card as it was laid flat", corrected: "the pattern corrected for these leathers" };
const shifts = ["throatShiftMm", "backShiftMm", "innerShiftMm", "outerShiftMm"] as const;

interface LastingCorrectProps {
  readonly desk: Desk;
  readonly pair: LastPair;
  readonly work: LastingWork;
  readonly onLines: () => void;
}

/** Where the topline is to end, and from which pattern the pieces are cut for that. */
export function LastingCorrect({ desk, pair, work, onLines }: LastingCorrectProps): ReactElement {
  const { throatDepthMm, backHeightMm, sideHeightMedialMm, sideHeightLateralMm } = pair.lines.settings;
  const corrected = desk.job.lasting.correct ?? false;
  return (
    <>
      <p className="sentence">
        The topline is to end where you drew it: the throat {mm(throatDepthMm)} behind the toe, the back {mm(backHeightMm)} high, the sides {mm(sideHeightMedialMm)} and {mm(sideHeightLateralMm)}.{" "}
        <button type="button" className="word why" aria-label="change where it is to end, at the station Lines" onClick={onLines}>change</button>
      </p>
      <WithWhy name="which pattern is cut" spots={[]} why={<CorrectReason />}>
        The pieces are cut from <WordChoice label="from which pattern the pieces are cut" value={corrected ? "corrected" : "card"} options={choices} say={(c) => words[c]} onChange={(c) => desk.change(setLasting(desk.job, { correct: c === "corrected" }), "which pattern is cut")} />.
      </WithWhy>
      {corrected && (
        <WithWhy name="what is cut farther out" spots={shifts.map((s) => `lasting ${s}` as const)} why={shifts.map((s) => <LastingReason key={s} desk={desk} of={s} />)}>
          On top of it the throat is cut <LastingNumber desk={desk} of="throatShiftMm" /> farther from the toe, the back <LastingNumber desk={desk} of="backShiftMm" /> higher, the inner side <LastingNumber desk={desk} of="innerShiftMm" /> and the outer side <LastingNumber desk={desk} of="outerShiftMm" /> higher.
        </WithWhy>
      )}
      {corrected && <Differs corrected={pair.corrected} />}
      <LastingReach desk={desk} pair={pair} work={work} />
    </>
  );
}

/** What the correction changes about the flat upper. */
function Differs({ corrected }: { readonly corrected: LastPair["corrected"] | undefined }): ReactElement | null {
  if (!corrected) return null;
  const { lengthMm, widthMm, throatDepthMm, backHeightMm, toplineMm, featherMm, mostMm } = corrected.difference;
  const rows: readonly (readonly [string, Measure])[] = [
    ["toe to back", lengthMm],
    ["joint to joint", widthMm],
    ["throat depth", throatDepthMm],
    ["back edge", backHeightMm],
    ["topline, inner half", toplineMm.medial],
    ["topline, outer half", toplineMm.lateral],
    ["feather edge, inner half", featherMm.medial],
    ["feather edge, outer half", featherMm.lateral],
  ];
  return (
    <Fold name="What the correction changes" holds={`the outline moves by ${mm(mostMm)} at most`}>
      <table className="figures">
        <caption>The flat upper, net, mm</caption>
        <thead><tr><th scope="col">measure</th><th scope="col">card</th><th scope="col">corrected</th><th scope="col">differs</th></tr></thead>
        <tbody>{rows.map(([name, { before, after }]) => <tr key={name}><th scope="row">{name}</th><td>{sayFixed(before)}</td><td>{sayFixed(after)}</td><td>{signed(after - before)}</td></tr>)}</tbody>
      </table>
    </Fold>
  );
}

function CorrectReason(): ReactElement {
  return (
    <>
      <p>Leather gives when it is pulled over, so a pattern laid flat without that in mind ends elsewhere than it was drawn. The corrected pattern is smaller where the pulls stretch it, by as much as they do.</p>
      <p>It is only as good as what is known of the leathers: test strips first. Lay the net card of the corrected pattern beside the other before you cut, and make one trial shoe.</p>
      <p className="source">Makers cut soft leather 1.5 to 3 % shorter: common practice, no source. How the correction is worked out: docs/method/inverse.md and compensation.md.</p>
    </>
  );
}
