import type { ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import type { Rules } from "#job/pipeline.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Desk } from "../desk.ts";
import { say } from "../state/numbers.ts";
import { kindsOf } from "../state/piece-kinds.ts";
import type { Spot } from "../state/spots.ts";
import { PieceNumber, PieceReason } from "./piece-number.tsx";
import { WithWhy } from "./why.tsx";

type Key = keyof PieceSettings;

interface StationPiecesProps {
  readonly desk: Desk;
  readonly rules: Rules;
  /** Nothing while no pair can be made. */
  readonly pair: Pair | undefined;
  readonly chosen: string | undefined;
  readonly onChoose: (name: string | undefined) => void;
}

/** Allowances as sentences, and the pieces by name. */
export function StationPieces({ desk, rules, pair, chosen, onChoose }: StationPiecesProps): ReactElement {
  const sentence = (name: string, parts: readonly (string | Key)[]): ReactElement => {
    const keys = parts.filter((p): p is Key => p in rules.piece);
    return (
      <WithWhy key={name} name={name} spots={keys.map((key): Spot => `pieces ${key}`)} why={keys.map((key) => <PieceReason key={key} desk={desk} rules={rules} of={key} />)}>
        {parts.map((p) => (p in rules.piece ? <PieceNumber key={p} desk={desk} rules={rules} of={p as Key} /> : <span key={p}>{p}</span>))}
      </WithWhy>
    );
  };
  return (
    <>
      {sentence("lasting margin, forepart", ["Under the feather line the upper reaches ", "lastingToeMm", " at the toe, ", "lastingToeSidesMm", " beside it, ", "lastingForepartMm", " to the joint."])}
      {sentence("lasting margin, waist and heel", ["It reaches ", "lastingOuterWaistMm", " at the outer waist, ", "lastingInnerWaistMm", " at the inner, and ", "lastingHeelMm", " at the heel."])}
      {sentence("topline fold and back seam", ["The topline folds over by ", "toplineFoldMm", "; the back seam takes ", "backSeamMm", " on each edge."])}
      {sentence("thickness", ["The upper is ", "upperThicknessMm", " thick, the lining ", "liningThicknessMm", ", the toe puff ", "toePuffMm", "."])}
      {sentence("lining edges", ["The lining stands ", "liningTrimMm", " above the topline, to be trimmed; it is ", "liningToeInMm", " smaller at the toe, and its lasting margin ", "liningLastingShorterMm", " shorter."])}
      {sentence("lining at the back", ["At the back the lining is taken in by ", "liningBackInTopMm", " at the topline, ", "liningBackInMiddleMm", " halfway and ", "liningBackInFeatherMm", " at the feather line."])}
      {sentence("insole and sock", ["The insole lies ", "insoleInMm", " inside the feather line, the sock ", "sockInMm", " inside the insole."])}
      {sentence("sole edge", ["The sole stands out by ", "soleFinishForepartMm", " at the forepart, ", "soleFinishWaistMm", " at the waist and ", "soleFinishHeelMm", " at the heel, beyond what lies on the last."])}
      {pair && <h3>The pieces of one pair</h3>}
      <ul className="pieces">
        {pair && kindsOf(pair.pieces).map((k) => (
          <li key={k.name}>
            <button type="button" className="row" aria-pressed={chosen === k.name} onClick={() => onChoose(chosen === k.name ? undefined : k.name)}>
              <b>{k.name}</b>{k.net ? ", net" : ""} · {k.count} of {k.material} · {say(k.areaMm2 / 100, 0)} cm² each
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
