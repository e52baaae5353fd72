import { arcLengths, directionAt, endPart, joined, reversed } from "#plane/along.ts";
import { cutAtCrossing, cutAtFirstCrossing, endReachMm, extendEnd, extendStart, reflect } from "#plane/join.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Xy } from "../piece.ts";
import { firstOf, meetingOf, reachOf, runOn, turned, type Bank, type Corner } from "./bank.ts";
import type { CornerKind } from "./corner-kind.ts";
import { dogTailCorner } from "./dog-tail.ts";

/** Brings two edges to their corner. `foldFirst`: the folded one, or the topline, is the one before the corner. */
export function corner(rule: CornerKind, before: Bank, after: Bank, foldFirst: boolean): Corner {
  if (rule.kind === "run on") return runOnCorner(before, after);
  if (rule.kind === "mitre") return mitredCorner(before, after);
  if (foldFirst) {
    // The same corner walked the other way.
    const made = corner(rule, turned(after), turned(before), false);
    return { ...made, before: turned(made.after), after: turned(made.before) };
  }
  if (rule.kind === "dog-tail") return dogTailCorner(before, after, rule);
  return rule.kind === "snip" ? snippedCorner(before, after) : mirroredCorner(before, after);
}

function runOnCorner(before: Bank, after: Bank): Corner {
  const reach = reachOf(before, after);
  const cut = runOn(before.cut, after.cut, reach);
  return {
    before: { ...before, cut: cut.before, line: runOn(before.line, stopOf(before, after), reach).before },
    after: { ...after, cut: cut.after, line: runOn(stopOf(after, before), after.line, reach).after },
    at: meetingOf(before.rawLine, after.rawLine, reach),
  };
}

/** A line runs to the neighbour's cutting line; the feather line only to its seam, since nothing is lasted beyond. */
const stopOf = (own: Bank, neighbour: Bank): Polyline => (own.finish === "lasting" ? neighbour.rawLine : neighbour.rawCut);

/**
 * Corner of an edge that ends here and a folded one that starts here. Beyond the fold line the first goes on as its own mirror image in
 * it, so that the fold comes down exactly on it and nothing shows; its stitch line does the same.
 */
function mirroredCorner(seam: Bank, fold: Bank): Corner {
  const cut = mirrored(seam.cut, fold.line, fold.cut, fold.widestMm);
  const stitch = mirrored(seam.line, fold.rawLine, fold.rawCut, fold.widestMm);
  return {
    before: { ...seam, cut: cut.seam, line: stitch.seam },
    after: { ...fold, cut: cut.foldEdge, line: cut.foldLine },
    at: meetingOf(seam.rawLine, fold.rawLine, reachOf(seam, fold)),
  };
}

interface Mirrored {
  /** Up to the fold line and on to the tip of the fold. */
  readonly seam: Polyline;
  /** Both from the corner on. */
  readonly foldLine: Polyline;
  readonly foldEdge: Polyline;
}

function mirrored(seam: Polyline, foldLine: Polyline, foldEdge: Polyline, foldMm: number): Mirrored {
  const reach = 3 * foldMm + 12;
  const cut = cutAtCrossing(extendEnd(seam, reach), extendStart(foldLine, reach));
  if (!cut) return { seam, foldLine, foldEdge };
  const tip = cutAtFirstCrossing(imageOf(cut.before, cut.at, foldLine, 4 * foldMm + reach), extendStart(foldEdge, reach));
  if (!tip) return { seam: cut.before, foldLine: cut.after, foldEdge };
  return { seam: joined([cut.before, tip.before]), foldLine: cut.after, foldEdge: tip.after };
}

/** The last `mm` of a line that ends at a fold line, mirrored in it; from the fold line outward. */
function imageOf(line: Polyline, at: Xy, foldLine: Polyline, mm: number): Polyline {
  const along = directionAt(foldLine, arcLengths(foldLine), 0, endReachMm);
  const below = reversed(endPart(line, mm));
  const beyond = new Float64Array(below.xy.length);
  for (let i = 0; i < beyond.length; i += 2) beyond.set(reflect([below.xy[i]!, below.xy[i + 1]!], at, along), i);
  return { xy: beyond };
}

/** The fold ends at the stitch line, as its mirror image; beside it, over the seam, it is snipped out down to the fold line. */
function snippedCorner(seam: Bank, fold: Bank): Corner {
  const reach = 3 * fold.widestMm + 12;
  const edge = cutAtCrossing(extendEnd(seam.cut, reach), extendStart(fold.line, reach));
  const stitch = cutAtCrossing(extendEnd(seam.line, reach), extendStart(fold.line, reach));
  if (!edge || !stitch) return mirroredCorner(seam, fold);
  const image = imageOf(stitch.before, stitch.at, fold.line, 4 * fold.widestMm + reach);
  const tip = cutAtFirstCrossing(image, extendStart(fold.rawCut, reach));
  if (!tip) return mirroredCorner(seam, fold);
  // Along the fold line from the seam's cutting edge to the stitch line: it bends too little there to need its own points.
  return {
    before: { ...seam, cut: joined([edge.before, tip.before]), line: stitch.before },
    after: { ...fold, cut: cutAtFirstCrossing(image, extendStart(fold.cut, reach))?.after ?? tip.after, line: stitch.after },
    at: stitch.at,
  };
}

/** Two folds: each ends where, turned down, it meets the other along the line that halves the corner. */
function mitredCorner(before: Bank, after: Bank): Corner {
  const reach = reachOf(before, after);
  const lines = runOn(before.line, after.line, reach);
  const at = firstOf(lines.after);
  const u = directionAt(lines.before, arcLengths(lines.before), Infinity, endReachMm);
  const v = directionAt(lines.after, arcLengths(lines.after), 0, endReachMm);
  // A hollow corner spreads when its folds are turned, so both may run on.
  if (u[0] * v[1] - u[1] * v[0] <= 1e-6) return runOnCorner(before, after);
  const halving: Xy = [at[0] + v[0] - u[0], at[1] + v[1] - u[1]];
  const ray = (along: Xy): Polyline => {
    const p = reflect(halving, at, along);
    return extendEnd({ xy: Float64Array.of(at[0], at[1], p[0], p[1]) }, 4 * reach);
  };
  const first = cutAtCrossing(extendEnd(before.cut, reach), reversed(ray(u)));
  const second = cutAtCrossing(ray(v), extendStart(after.cut, reach));
  if (!first || !second) return runOnCorner(before, after);
  return {
    before: { ...before, cut: joined([first.before, { xy: Float64Array.of(...at) }]), line: lines.before },
    after: { ...after, cut: joined([{ xy: Float64Array.of(...at) }, second.after]), line: lines.after },
    at,
  };
}

