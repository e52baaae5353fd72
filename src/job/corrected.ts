import { finding, type Finding } from "#base/findings.ts";
import { correctFlat, type Corrected } from "#lasting/correct.ts";
import type { DraftEnd } from "#lasting/lasted.ts";
import { differenceOf, type Difference } from "#lasting/difference.ts";
import { fabricOf } from "#lasting/fabric.ts";
import type { LastingChoices } from "#lasting/settings.ts";
import { lowestShares, shiftedTopline } from "#lasting/shift.ts";
import type { Last } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import type { FlatShell } from "#shell/shell.ts";
import { tensionOf } from "#shell/tension.ts";
import type { PairLeathers } from "./leathers.ts";

/** The flat upper corrected for its leather, as a pair shows it. */
export interface CorrectedFlat {
  readonly flat: FlatShell;
  readonly difference: Difference;
  /** What of the pulls no stretch answers: friction and tacks carry it, N. */
  readonly balanceN: number;
  readonly findings: readonly Finding[];
}

/** So much of the margin may be taken before it is told, mm (ours). */
const toldMarginMm = 2;

/** Where less of the margin is foretold to show than is added, told of a corrected pattern. */
export function marginTaken(drafts: readonly Pick<DraftEnd, "number" | "name" | "overMm">[]): readonly Finding[] {
  const taken = drafts.filter(({ overMm }) => overMm < -toldMarginMm).map(({ number, name, overMm }) => ({ number, name, byMm: -overMm }));
  return taken.length === 0 ? [] : [finding("corrected-margin", { drafts: taken })];
}

interface Input {
  readonly flat: FlatShell;
  readonly last: Last;
  readonly lines: Lines;
  readonly lasting: LastingChoices;
  readonly leathers: PairLeathers;
  readonly edge: ToplineEdge;
}

/** Level 1 with what is taken up at the topline beside it. Not begun from an earlier one: the same job gives the same bytes. */
export function correctedShell({ flat, last, lines, lasting, leathers, edge }: Input): { readonly corrected: Corrected; readonly shown: CorrectedFlat } {
  const plain = correctFlat(flat, fabricOf(leathers.upper, leathers.lining, lasting, edge), lasting, { last });
  const uv = shiftedTopline(flat.shell, plain.flat.uv, lowestShares(lines), lasting);
  const { medial, lateral } = plain.flat.tension;
  const tension = tensionOf(flat.shell, flat.onLast, uv, { medial: medial.extraMm, lateral: lateral.extraMm });
  const corrected = { ...plain, flat: { ...plain.flat, uv, tension }, difference: differenceOf(flat, uv, last.landmarks) };
  return { corrected, shown: { flat: corrected.flat, difference: corrected.difference, balanceN: plain.balanceN, findings: plain.findings } };
}
