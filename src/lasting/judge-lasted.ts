import { finding, type Finding } from "#base/findings.ts";
import { placeInWords } from "#last/place-in-words.ts";
import type { Last, Point3 } from "#last/last.ts";
import { halves } from "#lines/feather.ts";
import type { Reached } from "./hands.ts";
import type { DraftEnd, Ends, Trouble } from "./lasted.ts";
import { hasMark, tightN } from "./pulls.ts";
import type { LooseFlank, Pleats } from "./troubles.ts";
import type { Fabric } from "./upper.ts";

export interface ToJudge {
  readonly last: Last;
  readonly fabric: Pick<Fabric, "grainLimit" | "breakLimit" | "tapeN">;
  readonly ends: Ends;
  readonly asked: Ends;
  /** How far the throat stands off the centre plane, above 0 toward +y, on a right last the inner half, mm. */
  readonly asideMm: number;
  readonly drafts: readonly DraftEnd[];
  readonly loose: readonly LooseFlank[];
  readonly pleats: readonly Pleats[];
  readonly stretched: readonly Trouble[];
  readonly reached: Reached;
  readonly tornAt: (vertex: number) => Point3;
}

/**
 * From where on a maker is told, mm. Throat and back 1.0, sides 1.5: what left and right of a pair may differ by (a factory's rule for the
 * first two; the sides are common practice, no source).
 */
export const told = { throatMm: 1, backMm: 1, sideMm: 1.5, asideMm: 1 } as const;
/** Pincers need so much margin beyond the feather line for a grip, mm (common practice, no source). */
const gripMm = 10;
/** More leather than this in the pleats round toe or seat is beyond what is usual, mm: a dozen fine pleats (from memory). */
const usualPleatsMm = 25;
/** A pair of drafts of which one holds so many times what the other does is out of balance, where it is more than a few N. */
const outOfBalance = 2, fewN = 6;
/** From where on a draft is told that stays above its mark, mm: half of what the back may be off. */
const shortOfMarkMm = 0.5;

/** What there is to tell a maker of a lasted upper. */
export function judgeLasted(it: ToJudge): readonly Finding[] {
  const { last, reached } = it;
  const stopped = stoppedFinding(it);
  // Half-way nothing else can be said of where it ends.
  if (reached.stopped && reached.stopped.stage !== "at rest") return stopped;
  const stretched = it.stretched.filter(({ kind }) => kind === "grain").map(({ at, by }) => finding("lasting-grain", { percent: 100 * by, limitPercent: 100 * it.fabric.grainLimit, where: placeInWords(last, at) }, at));
  return [...stopped, ...endFindings(it), ...it.drafts.filter(({ shortMm = 0 }) => shortMm >= shortOfMarkMm).map(shortFinding), ...balanceFindings(it), ...it.loose.map(looseFinding), ...stretched, ...it.pleats.filter(({ takenMm }) => takenMm > usualPleatsMm).map(pleatFinding), ...it.drafts.filter(({ marginMm }) => marginMm < gripMm).map(marginFinding)];
}

function stoppedFinding({ last, fabric, reached: { stopped, moveMm, residualN }, tornAt }: ToJudge): readonly Finding[] {
  if (!stopped) return [];
  if (stopped.what === "torn") {
    const at = tornAt(stopped.vertex);
    return [finding("lasting-tears", { stage: stopped.stage, percent: 100 * (stopped.stretch - 1), breakPercent: 100 * fabric.breakLimit, where: placeInWords(last, at) }, at)];
  }
  return [stopped.what === "astray" ? finding("lasting-astray", { stage: stopped.stage }) : finding("lasting-restless", { stage: stopped.stage, moveMm, residualN })];
}

function endFindings({ last, fabric, ends, asked, drafts }: ToJudge): readonly Finding[] {
  const out: Finding[] = [];
  /** Whether the drafts that answer for a height were only pulled just past tight, so that there is nothing to ease. */
  const tight = (of: DraftEnd["half"]): boolean => drafts.every(({ number, half, pullN }) => half !== of || !hasMark(number) || pullN <= tightN);
  const throat = ends.throatDepthMm - asked.throatDepthMm, back = ends.backHeightMm - asked.backHeightMm;
  if (Math.abs(throat) >= told.throatMm) out.push(finding("lasting-throat", { byMm: throat, taped: fabric.tapeN > 0 }));
  if (Math.abs(back) >= told.backMm) out.push(finding("lasting-back", { byMm: back, tight: tight(undefined) }, last.landmarks.counterPoint));
  for (const half of halves) {
    const side = ends.lowestMm[half] - asked.lowestMm[half];
    if (Math.abs(side) >= told.sideMm) out.push(finding("lasting-side", { half, byMm: side, tight: tight(half) }));
  }
  return out;
}

function balanceFindings({ drafts, asideMm }: ToJudge): readonly Finding[] {
  const pairs = drafts.flatMap((one) => {
    const other = drafts.find(({ number, half }) => number === one.number + 1 && half === "lateral");
    return one.half === "medial" && other ? [[one, other] as const] : [];
  });
  const uneven = pairs.filter(([a, b]) => Math.max(a.heldN, b.heldN) > fewN && Math.max(a.heldN, b.heldN) > outOfBalance * Math.max(0, Math.min(a.heldN, b.heldN)));
  return [
    ...(Math.abs(asideMm) >= told.asideMm ? [finding("lasting-aside", { byMm: Math.abs(asideMm), half: asideMm > 0 ? "medial" : "lateral" })] : []),
    ...uneven.map(([a, b]) => finding("lasting-uneven", { numbers: `${a.number} and ${b.number}`, name: a.name.split(",")[0]!, innerN: a.heldN, outerN: b.heldN }, (a.heldN > b.heldN ? a : b).at)),
  ];
}

const looseFinding = ({ half, by, fromBackMm, spans, at }: LooseFlank): Finding => finding(spans ? "lasting-spans" : "lasting-flank", { half, byMm: by, fromBackMm }, at);
const shortFinding = ({ number, name, pullN: byN, shortMm = 0, at }: DraftEnd): Finding => finding("lasting-short", { number, name, byN, byMm: shortMm }, at);
const pleatFinding = ({ takenMm, by, where, at }: Pleats): Finding => finding("lasting-pleats", { where, takenMm, percent: 100 * by, usualMm: usualPleatsMm }, at);
const marginFinding = ({ number, name, marginMm, at }: DraftEnd): Finding => finding("lasting-margin", { number, name, marginMm, leastMm: gripMm }, at);
