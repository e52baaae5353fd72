import type { ReactElement } from "react";
import type { Rules } from "#job/pipeline.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Desk } from "../desk.ts";
import { followPieceRule, setPiece } from "../state/edits.ts";
import { fieldOf } from "../state/measure-field.ts";
import { NumberField } from "./number-field.tsx";
import { Reason } from "./why.tsx";

interface PieceNumberProps {
  readonly desk: Desk;
  readonly rules: Rules;
  readonly of: keyof PieceSettings;
}

/** One number of the pieces, in its sentence. */
export function PieceNumber({ desk, rules, of }: PieceNumberProps): ReactElement {
  const rule = rules.piece[of];
  return (
    <NumberField
      label={rule.name}
      value={desk.job.pieces[of] ?? rule.value}
      field={fieldOf(rule)}
      desk={desk}
      spot={`pieces ${of}`}
      edit={(v) => setPiece(desk.job, of, v)}
      what={lower(rule.name)}
    />
  );
}

/** Its why. */
export function PieceReason({ desk, rules, of }: PieceNumberProps): ReactElement {
  const rule = rules.piece[of];
  return (
    <>
      <p><b>{rule.name}</b></p>
      <Reason rule={rule} value={desk.job.pieces[of] ?? rule.value} onRule={() => desk.change(followPieceRule(desk.job, of), `the rule for ${lower(rule.name)}`)} />
    </>
  );
}

const lower = (s: string): string => s.charAt(0).toLowerCase() + s.slice(1);
