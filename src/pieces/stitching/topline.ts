import { lengthOf } from "#plane/measure.ts";
import { isFolded } from "../choices.ts";
import { goreMarks } from "../extras/gore.ts";
import type { NetPanel } from "../panel.ts";
import type { PieceSettings } from "../settings.ts";
import type { Ply, Stitched } from "../stitching.ts";
import { foldedPly, foldTapeThickMm, liningPly, ply, stitched, upperPly } from "./plies.ts";
import { liningNames, upperNames, type ToStitch } from "./to-stitch.ts";
import { lengthInside, rowBeside } from "./ways.ts";

/** Each edge of a wrapped binding strip is turned in by about so much, mm: what is skived of it. */
const wrappedTurnMm = 3.5;

/**
 * The rows along the topline, round the shoe over all panels, less what a gore cuts out of it. Raw or folded: one row through upper and
 * lining. Bagged: the seam with the lining, and one row once it is turned out. Bound: the strip is sewn on, brought over the edge, and caught
 * by a second row that runs close beside the first. Wrapped: one row through both sides of the strip.
 */
export function toplineRows(input: ToStitch): readonly Stitched[] {
  const { settings, chosen } = input;
  const { stitchInMm: inMm, bindingThickMm, bindingWrappedMm } = settings;
  const [upper, lining] = [upperPly(settings), liningPly(settings)];
  const uppers = upperNames(input), all = [...uppers, ...liningNames(input)], bound = [...all, "topline binding"];
  const panels = input.upper.map(({ panel }) => panel);
  const row = (name: string, joins: readonly string[], plies: readonly Ply[], atMm = inMm, use: Stitched["use"] = "topline"): Stitched =>
    stitched({ name, joins, plies, lengthMm: toplineMm(panels, atMm, settings, chosen.gore), use });
  const binding = ply("binding", bindingThickMm);
  // What was turned in lies under the row as well, where it is wide enough.
  const bagged = settings.toplineBagMm > inMm ? 2 : 1;
  switch (chosen.edge) {
    case "bagged":
      return [row("topline seam", all, [upper, lining], 0, "closing"), row("topline", all, [upperPly(settings, bagged), liningPly(settings, bagged)])];
    case "bound":
      return [row("topline binding", [...uppers, "topline binding"], [binding, upper]), row("topline", bound, [upper, binding, lining])];
    case "wrapped":
      return [row("topline", bound, [foldedPly("binding", bindingThickMm), upper, lining, foldedPly("binding", bindingThickMm)], bindingWrappedMm / 2 - wrappedTurnMm - inMm)];
    default:
      return [row("topline", all, [...(isFolded(chosen.edge) && settings.toplineFoldMm > 0 ? folded(settings, chosen.edge === "taped") : [upper]), lining])];
  }
}

const folded = ({ upperThicknessMm }: PieceSettings, taped: boolean): readonly Ply[] => [foldedPly("upper", upperThicknessMm), ...(taped ? [ply("fold tape", foldTapeThickMm)] : [])];

/** Along a row so far inside the net topline, from seam to seam over all panels. */
function toplineMm(panels: readonly NetPanel[], inMm: number, settings: PieceSettings, gore: boolean): number {
  const gores = gore ? goreMarks(panels, settings, 0) : [];
  return panels.reduce((sum, panel, p) => {
    const rows = panel.edges.flatMap((edge, k) => (edge.role === "topline" ? [rowBeside(panel, k, inMm)] : []));
    const cutOut = gores.filter((one) => one.panel === p).map(({ mark }) => (mark.kind === "line" ? mark.line : { xy: new Float64Array() }));
    const out = cutOut.reduce((mm, within) => mm + (inMm === 0 ? settings.goreWideMm : rows.reduce((part, row) => part + lengthInside(within, row), 0)), 0);
    return sum + rows.reduce((mm, row) => mm + lengthOf(row), 0) - out;
  }, 0);
}
