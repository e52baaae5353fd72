import { halfName } from "#base/sentences/names.ts";
import { apart, lengthOf } from "#plane/measure.ts";
import type { Polyline } from "#plane/outline.ts";
import { panelOutline } from "../edges/panel-outline.ts";
import { goreMarks } from "../extras/gore.ts";
import { lineOf } from "../extras/shapes.ts";
import type { Xy } from "../piece.ts";
import type { Stitched } from "../stitching.ts";
import { panelWord } from "../words.ts";
import { elasticThickMm, liningPly, ply, stitched, upperPly } from "./plies.ts";
import type { ToStitch } from "./to-stitch.ts";
import { acrossPiece } from "./ways.ts";

/** One row down one leg of each gore and up the other, through the upper, the elastic and the lining, which is cut out alike. */
export function gores({ upper, settings, chosen }: ToStitch): readonly Stitched[] {
  if (!chosen.gore) return [];
  const panels = upper.map(({ panel }) => panel);
  return goreMarks(panels, settings, 0).flatMap(({ panel, mark }) => {
    if (mark.kind !== "line") return [];
    const on = panels[panel]!;
    const row = acrossPiece(panelOutline(on), beside(mark.line, settings.stitchInMm));
    const half = mark.name.endsWith("inside") ? "medial" : "lateral";
    return [stitched({ name: `${halfName(half)} gore`, joins: ["elastic gore", panelWord(on)], plies: [upperPly(settings), ply("elastic", elasticThickMm), liningPly(settings)], lengthMm: lengthOf(row), use: "trimming" })];
  });
}

/** Both legs moved into the leather and, as far below the tip, straight across from one to the other. */
function beside({ xy }: Polyline, mm: number): Polyline {
  const [from, tip, to] = [0, 2, 4].map((i): Xy => [xy[i]!, xy[i + 1]!]) as [Xy, Xy, Xy];
  const middle: Xy = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const deep = apart(middle, tip), half = apart(from, to) / 2;
  if (deep < leastDeepMm) return lineOf(from, to);
  const leg = Math.sqrt(deep * deep + half * half), down: Xy = [(tip[0] - middle[0]) / deep, (tip[1] - middle[1]) / deep];
  // Along the topline from the first leg to the other, so that a slit without width has two sides as well.
  const way = (to[0] - from[0]) * down[1] - (to[1] - from[1]) * down[0] < 0 ? -1 : 1;
  const at = (along: number, below: number): Xy => [middle[0] + way * along * down[1] + below * down[0], middle[1] - way * along * down[0] + below * down[1]];
  const [aside, under] = [half + (mm * leg) / deep, (mm * (leg - half)) / deep];
  return lineOf(at(-aside, 0), at(-under, deep + mm), at(under, deep + mm), at(aside, 0));
}

/** Less deep it is no opening, mm. */
const leastDeepMm = 0.1;
