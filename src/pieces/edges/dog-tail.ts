import { arcLengths, directionAt, joined } from "#plane/along.ts";
import { cutAtCrossing, endReachMm, extendEnd, extendStart } from "#plane/join.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Xy } from "../piece.ts";
import { firstOf, reachOf, runOn, type Bank, type Corner } from "./bank.ts";
import type { DogTail } from "./corner-kind.ts";

/** Radius of the tongue's lower corner, mm: a sharp one lifts. */
const tipRadiusMm = 3;

/**
 * A tongue at the end of a sewn edge, in line with the folded edge that starts there: it reaches `longMm` beyond the stitch line and
 * `wideMm` down from the fold line, and keeps the fold. The seam's allowance ends at its lower edge, where a snip frees it.
 */
export function dogTailCorner(seam: Bank, fold: Bank, { longMm, wideMm }: DogTail): Corner {
  const reach = reachOf(seam, fold) + longMm;
  const meeting = runOn(seam.rawLine, fold.rawLine, reach);
  const at = firstOf(meeting.after);
  const [dx, dy] = directionAt(meeting.after, arcLengths(meeting.after), 0, endReachMm);
  const [sx, sy] = firstOf(seam.rawLine);
  // Which side of the folded edge the seam comes from, since corners are walked either way.
  const side = (sy - at[1]) * dx - (sx - at[0]) * dy > 0 ? 1 : -1;
  // `out` along the folded edge's start beyond the seam, `down` from it into the piece.
  const place = (out: number, down: number): Xy => [at[0] - out * dx - side * down * dy, at[1] - out * dy + side * down * dx];
  const round = roundedCorner(place, longMm, wideMm);
  const lower: Polyline = { xy: Float64Array.of(...place(-reach, wideMm), ...place(longMm - tipRadiusMm, wideMm)) };
  const end: Polyline = { xy: Float64Array.of(...place(longMm, wideMm - tipRadiusMm), ...place(longMm, -fold.widestMm - wideMm)) };
  const edge = cutAtCrossing(extendEnd(seam.cut, reach), lower);
  const stitch = cutAtCrossing(extendEnd(seam.line, reach), lower);
  const tip = cutAtCrossing(end, extendStart(fold.cut, reach));
  const foldLine = cutAtCrossing(end, extendStart(fold.line, reach));
  // On an edge so short or so bent that the tongue finds no hold there is none.
  if (!edge || !stitch || !tip || !foldLine) return { before: seam, after: fold, at };
  return {
    before: { ...seam, cut: joined([edge.before, round, tip.before]), line: stitch.before },
    after: { ...fold, cut: tip.after, line: foldLine.after },
    at,
    snip: [edge.at, stitch.at],
  };
}

/** From the tongue's lower edge round to its end. The circle by a rational parameter, which needs no sine. */
function roundedCorner(place: (out: number, down: number) => Xy, longMm: number, wideMm: number): Polyline {
  const points = Array.from({ length: 9 }, (_, k) => {
    const t = k / 8;
    const size = 1 + t * t;
    return place(longMm - tipRadiusMm + (tipRadiusMm * 2 * t) / size, wideMm - tipRadiusMm + (tipRadiusMm * (1 - t * t)) / size);
  });
  return { xy: Float64Array.from(points.flat()) };
}
