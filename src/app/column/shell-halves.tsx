import type { ReactElement } from "react";
import type { Proof } from "#job/proof.ts";
import { shellChoices } from "#shell/rules.ts";
import { halvesChoices, type HalvesChoice } from "#shell/settings.ts";
import type { Desk } from "../desk.ts";
import { setShell } from "../state/edits.ts";
import { mm } from "../state/numbers.ts";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

const words: Readonly<Record<HalvesChoice, string>> = { separate: "keep shapes of their own", mean: "share their mean" };

interface ShellHalvesProps {
  readonly desk: Desk;
  readonly proof: Proof | undefined;
  /** The outer half is drawn folded over the inner one on the card. */
  readonly folded: boolean;
  readonly onFolded: (folded: boolean) => void;
}

/** Whether inner and outer half share one form, and how far they differ. */
export function ShellHalves({ desk, proof, folded, onFolded }: ShellHalvesProps): ReactElement {
  const { halves = shellChoices.halves } = desk.job.shell;
  return (
    <>
      <WithWhy name="halves" spots={[]} why={<HalvesReason />}>
        Along the topline and the back, the inner and the outer half <WordChoice label="form of the halves" value={halves} options={halvesChoices} say={(o) => words[o]} onChange={(v) => desk.change(setShell(desk.job, { halves: v }), "the form of the halves")} />.
      </WithWhy>
      {proof && (
        <p className="follows">
          {differWords(proof)} <button type="button" className="word" aria-pressed={folded} onClick={() => onFolded(!folded)}>{folded ? "Fold it back" : "Fold the outer half over on the card"}</button>
        </p>
      )}
    </>
  );
}

function differWords({ halves: { mostDifferent, mostDifferentMm, keepSeparate } }: Proof): string {
  const farther = mostDifferent.differenceMm > 0 ? "inner" : "outer";
  return `They differ most ${mm(mostDifferent.toEndMm, 0)} behind the throat along the topline: there the ${farther} half lies ${mm(Math.abs(mostDifferentMm))} farther in.${keepSeparate ? " That is too much for one form." : ""}`;
}

function HalvesReason(): ReactElement {
  return (
    <>
      <p>The inner side of a last is hollower and its topline stands higher, so the two halves of a pump differ, and each keeps its own shape. One mean form is quicker to cut and to true, and shows on the foot where the halves lie more than 3 mm off it. Each half keeps its own feather edge in either case.</p>
      <p className="source">Common practice, no source, for the 3 mm; halving the distance between both halves by ticks is an old way of the trade.</p>
    </>
  );
}
