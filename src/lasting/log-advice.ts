import { finding, type Finding } from "#base/findings.ts";
import type { Side } from "#last/last.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import { pullWord } from "./lasted.ts";
import { movesFor, type AdvisedPulls, type DraftMove } from "./log-moves.ts";
import { thumbEffects, type DraftEffects } from "./log-effects.ts";
import { judgePair, judgeShoe } from "./log-judge.ts";
import { dimensions, leastMarginMm, tolerances, type Dimension } from "./log-tolerances.ts";
import { endNames, type Asked, type EndName, type Measured } from "./log.ts";

/** One draft to ease or to pull on one shoe. */
export interface Advice {
  readonly side: Side;
  readonly move: DraftMove;
  readonly finding: Finding;
}

/** What to change on which shoe, and in words why; what no draft can change is among the findings. */
export interface PairAdvice {
  readonly moves: readonly Advice[];
  readonly findings: readonly Finding[];
}

export interface AdviceOptions {
  readonly pulls: AdvisedPulls;
  /** What was reckoned for this pair; rules of thumb where left out. */
  readonly effects?: DraftEffects;
  /** Shoes whose margin is cemented already. */
  readonly cemented?: Partial<Readonly<Record<Side, boolean>>>;
}

type Shoes = Partial<Readonly<Record<Side, Measured>>>;
type Wanted = { -readonly [K in EndName]?: number };

const sides: readonly Side[] = ["left", "right"];
const other: Readonly<Record<Side, Side>> = { left: "right", right: "left" };

/**
 * Which drafts to ease or to pull, on which shoe, and by how much. Where the two are too far apart, the one farther from what was asked
 * is changed; where one is too far from what was asked, it is changed whatever the other does. Tolerances: `log-tolerances.ts`.
 */
export function adviseDrafts(shoes: Shoes, asked: Asked, { pulls, effects = thumbEffects, cemented = {} }: AdviceOptions): PairAdvice {
  const wanted: Record<Side, Wanted> = { left: {}, right: {} };
  askedMovesInto(wanted, shoes, asked);
  const findings = pairMovesInto(wanted, shoes, asked);
  const moves: Advice[] = [];
  for (const side of sides) {
    const shoe = shoes[side], own = wanted[side];
    if (!shoe || Object.keys(own).length === 0) continue;
    if (cemented[side]) {
      findings.push(...endNames.flatMap((what) => (own[what] === undefined ? [] : [finding("log-cemented", { side, what, byMm: own[what] })])));
      continue;
    }
    const { moves: drafts, left } = movesFor(own, shoe, pulls, effects);
    for (const move of drafts) moves.push({ side, move, finding: sentenceFor(side, move, effects) });
    for (const { draft, marginMm } of drafts.flatMap((move) => thinMargin(shoe, move))) findings.push(finding("log-margin-thin", { side, draft, marginMm, leastMm: leastMarginMm }));
    for (const what of endNames) if (left[what] !== undefined) findings.push(finding("log-not-by-drafts", { side, what, byMm: left[what] }));
  }
  if (moves.length > 0) findings.push(finding("log-your-hand", {}));
  return { moves, findings: [...findings, ...bottomMoves(shoes)] };
}

/** Each shoe too far from what was asked goes there. */
function askedMovesInto(wanted: Record<Side, Wanted>, shoes: Shoes, asked: Asked): void {
  for (const side of sides) {
    for (const { what, verdict, offMm } of judgeShoe(side, shoes[side] ?? {}, asked).rows) if (verdict === "outside" && isEnd(what)) wanted[side][what] = -offMm;
  }
}

/** Of two too far apart that are both where they were asked to be, or of which nothing was asked, the farther one comes to the other. */
function pairMovesInto(wanted: Record<Side, Wanted>, { left, right }: Shoes, asked: Asked): Finding[] {
  if (!left || !right) return [];
  return judgePair(left, right).rows.flatMap(({ what, verdict, offMm }) => {
    if (verdict !== "outside" || !isEnd(what)) return [];
    const want = asked[what], off = { left: left[what]! - (want ?? left[what]!), right: right[what]! - (want ?? left[what]!) };
    const side: Side = Math.abs(off.left) > Math.abs(off.right) ? "left" : "right";
    if (wanted.left[what] === undefined && wanted.right[what] === undefined) wanted[side][what] = side === "left" ? -offMm : offMm;
    return [finding("log-change-which", { what, apartMm: Math.abs(offMm), side, ...(want !== undefined && { offMm: Math.abs(off[side]), otherMm: Math.abs(off[other[side]]) }) })];
  });
}

const isEnd = (what: Dimension | "marginMm"): what is EndName => (endNames as readonly string[]).includes(what);

/** Sole edge and heel are put right on the finished shoe. */
function bottomMoves({ left, right }: Shoes): readonly Finding[] {
  return dimensions.flatMap((what) => {
    if (isEnd(what) || left?.[what] === undefined || right?.[what] === undefined) return [];
    const offMm = left[what] - right[what];
    return Math.abs(offMm) - 0.05 > tolerances[what].mm ? [finding("log-bottom-apart", { what, side: offMm > 0 ? "left" : "right", byMm: Math.abs(offMm) })] : [];
  });
}

function thinMargin(shoe: Measured, { draft, edgeMm }: DraftMove): readonly { draft: number; marginMm: number }[] {
  const margin = shoe.marginsMm?.[String(draft)];
  return margin !== undefined && margin + edgeMm < leastMarginMm ? [{ draft, marginMm: margin + edgeMm }] : [];
}

function sentenceFor(side: Side, { draft, byN, toN, edgeMm, moves }: DraftMove, { from }: DraftEffects): Finding {
  const name = draftOrder.find(({ number }) => number === draft)!.name;
  return finding("log-draft", { side, draft, name, byN, toN, word: pullWord(toN), edgeMm, moves, reckoned: from === "reckoned" });
}
