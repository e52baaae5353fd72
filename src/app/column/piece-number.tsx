import type { ReactElement } from "react";
import type { Rules } from "#job/run-options.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Desk } from "../desk.ts";
import { followPieceRule, setPiece } from "../state/edits.ts";
import { pieceLimits } from "../state/piece-limits.ts";
import { RuleNumber, RuleReason } from "./rule-number.tsx";

interface PieceNumberProps {
  readonly desk: Desk;
  readonly rules: Rules;
  readonly of: keyof PieceSettings;
}

/** One number of the pieces, in its sentence. */
export function PieceNumber({ desk, rules, of }: PieceNumberProps): ReactElement {
  return <RuleNumber desk={desk} rule={rules.piece[of]} own={desk.job.pieces[of]} spot={`pieces ${of}`} edit={(v) => setPiece(desk.job, of, v)} limits={pieceLimits(of, rules.piece[of])} />;
}

/** Its why. */
export function PieceReason({ desk, rules, of }: PieceNumberProps): ReactElement {
  return <RuleReason desk={desk} rule={rules.piece[of]} own={desk.job.pieces[of]} follow={() => followPieceRule(desk.job, of)} titled />;
}
