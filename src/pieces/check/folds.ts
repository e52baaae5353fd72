import { finding, type Finding } from "#base/findings.ts";
import { arcLengths, nearestOn, partBetween, pointAt } from "#plane/along.ts";
import { curvatures } from "#plane/curvature.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Draft } from "../draft.ts";
import type { NetPanel } from "../panel.ts";
import type { Mark, Xy } from "../piece.ts";
import { Boxed } from "../boxed.ts";
import { shownAt, type ToCheck } from "./to-check.ts";
import { placeWords } from "./words.ts";

/** Least radius of a hollow that can be folded, mm, and the distance of the snips (common practice, no source). */
const tightestFoldMm = 8;
const snipsMm = 4;
/** A fold stretches its edge by fold over radius; above a tenth leather has to be snipped (common practice, no source). */
const mostStretch = 0.1;
/** Over such steps the bend is taken, mm, and so much is left out at both ends, where corners are made by rule. */
const stepMm = 3;
const endMm = 6;

/** Every folded edge of every piece: whether its hollows can be turned over. */
export function checkFolds(input: ToCheck): readonly Finding[] {
  return input.drafts.flatMap((draft) => {
    const lines = draft.marks.filter((m): m is Extract<Mark, { kind: "line" }> => m.kind === "line" && m.use === "fold");
    if (lines.length === 0) return [];
    const cut = new Boxed(draft.outline);
    return lines.flatMap((mark) => checkFold(input, draft, cut, mark.name.replace(/^fold line of the /, ""), mark.line));
  });
}

function checkFold(input: ToCheck, draft: Draft, cut: Boxed, edge: string, whole: Polyline): readonly Finding[] {
  const arc = arcLengths(whole);
  const end = arc[arc.length - 1]!;
  if (end < 2 * endMm + 4 * stepMm) return [];
  const line = partBetween(whole, arc, endMm, end - endMm);
  const fold = foldOf(line, cut);
  const bends = curvatures(line, stepMm);
  let k = 0;
  // Walked with the fold to the right, a hollow edge bends right.
  for (let i = 1; i < bends.length; i++) if (fold.side * bends[i]! < fold.side * bends[k]!) k = i;
  const radiusMm = -1 / (fold.side * bends[k]!);
  if (!(radiusMm > 0) || fold.mm < 0.1) return [];
  const step = (end - 2 * endMm) / (bends.length + 1);
  const place = pointAt(whole, arc, endMm + (k + 1) * step);
  const where = whereOf(input.panels.find((p) => p.name === (draft.ground ?? "upper")), place);
  const at = shownAt(input, draft.ground, place);
  const neededMm = Math.max(tightestFoldMm, fold.mm);
  const said = { piece: draft.name, edge, where, foldMm: fold.mm, radiusMm };
  if (radiusMm < neededMm) return [finding("fold-too-tight", { ...said, neededMm }, at)];
  return fold.mm / radiusMm > mostStretch ? [finding("fold-needs-notches", { ...said, everyMm: snipsMm }, at)] : [];
}

/** How wide the fold is beyond its line (the middle one of several places), and to which side of the line's way: 1 right, −1 left. */
function foldOf(line: Polyline, cut: Boxed): { readonly mm: number; readonly side: 1 | -1 } {
  const arc = arcLengths(line);
  const end = arc[arc.length - 1]!;
  const found = [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => {
    const [x, y] = pointAt(line, arc, share * end);
    const [ax, ay] = pointAt(line, arc, share * end - 0.5);
    const near = cut.nearest(x, y);
    const right = (x - ax) * (near.y - y) - (y - ay) * (near.x - x) < 0;
    return right ? near.mm : -near.mm;
  });
  const rights = found.filter((mm) => mm > 0).length;
  const mm = found.map(Math.abs).sort((a, b) => a - b)[2]!;
  return { mm, side: rights >= 3 ? 1 : -1 };
}

/** The place in words, where the fold lies on an edge of the panel. */
function whereOf(panel: NetPanel | undefined, [x, y]: Xy): string | undefined {
  const feet = (panel?.edges ?? []).map((e, i) => ({ ...nearestOn(e.line, e.arc, x, y), i }));
  const best = feet.reduce<(typeof feet)[number] | undefined>((a, b) => (a && a.distance <= b.distance ? a : b), undefined);
  return panel && best && best.distance < 1 ? placeWords(panel, best.i, best.s) : undefined;
}
