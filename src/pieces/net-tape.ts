import { joined, nearestOn, pointAt, reversed } from "#plane/along.ts";
import { heelShare } from "#tape/joint.ts";
import { lowestHeight } from "#tape/judge.ts";
import type { TapedBottom, TapedHalf, TapedShell } from "#tape/taped-shell.ts";
import { netBottomOf, type NetBottom } from "./bottom/net-bottom.ts";
import { evenLine, evenLoop } from "./even.ts";
import { edgeLength, edgeOf, trueBacks, withEnds, withWaists, type Edge, type NetUpper } from "./net-upper.ts";
import type { Xy } from "./piece.ts";

/** Where the heel breast usually lies along the feather edge from the seat point, as a share of the length along the bottom (clean lasts: 0.31 to 0.33). */
const usualBreast = 0.318;

/** The bottom that was traced, as bottoms of lasts are drawn. */
export function netTapedBottom({ edge, toePoint, jointMedial, jointLateral, lengthMm }: TapedBottom): NetBottom {
  return netBottomOf({ outline: evenLoop(edge), toePoint, jointMedialPoint: jointMedial, jointLateralPoint: jointLateral, lengthMm });
}

/**
 * The net upper of a taped pattern: both halves laid to one centre line, met half way where they differ at toe and throat, and
 * their backs made equal. Quarters of the topline are quarters of its length here, for there is no last to take shares of.
 */
export function netTapedUpper(tape: TapedShell, bottom: NetBottom | undefined): NetUpper {
  const { medial, lateral } = tape;
  const toe = between(endOf(medial.feather), endOf(lateral.feather));
  const throat = between(endOf(medial.topline), endOf(lateral.topline));
  const backs = trueBacks(medial.back, lateral.back);
  const feather = edgeOf(evenLine(joined([withEnds(lateral.feather, backs.seatLateral, toe), reversed(withEnds(medial.feather, backs.seatMedial, toe))])));
  const topline = edgeOf(evenLine(joined([withEnds(medial.topline, startOf(medial.topline), throat), reversed(withEnds(lateral.topline, startOf(lateral.topline), throat))])));
  return {
    feather,
    backMedial: edgeOf(backs.medial),
    topline,
    backLateral: edgeOf(reversed(backs.lateral)),
    places: placesOf(tape, bottom, feather, topline, toe, throat),
    // Held against the limits of a taped pattern already.
    backDifferenceMm: 0,
  };
}

const startOf = ({ xy }: { readonly xy: Float64Array }): Xy => [xy[0]!, xy[1]!];
const endOf = ({ xy }: { readonly xy: Float64Array }): Xy => [xy[xy.length - 2]!, xy[xy.length - 1]!];
/** Half way along the centre, and on it. */
const between = (a: Xy, b: Xy): Xy => [(a[0] + b[0]) / 2, 0];

function placesOf({ medial, lateral, length, bottom: traced }: TapedShell, bottom: NetBottom | undefined, feather: Edge, topline: Edge, toe: Xy, throat: Xy): NetUpper["places"] {
  const on = (edge: Edge, p: Xy): number => nearestOn(edge.line, edge.arc, p[0], p[1]).s;
  const along = (edge: Edge, line: TapedHalf["feather"], s: number): number => on(edge, pointAt(line, edgeOf(line).arc, s));
  const grown = ({ half, lengths }: TapedHalf): number => (traced ? heelShare(lengths.feather, traced.halves[half].toToe) : 1);
  const breast = (half: TapedHalf): number => {
    const asTraced = bottom && grown(half) * (half.half === "medial" ? edgeLength(bottom.ring) - bottom.breastMedial : bottom.breastLateral);
    return along(feather, half.feather, asTraced ?? usualBreast * length.mm);
  };
  const quarters = ({ topline: line, lengths }: TapedHalf): readonly number[] => [0.25, 0.5, 0.75].map((share) => along(topline, line, share * lengths.topline));
  return withWaists({
    toe: on(feather, toe),
    jointMedial: along(feather, medial.feather, medial.jointAlong),
    jointLateral: along(feather, lateral.feather, lateral.jointAlong),
    breastMedial: breast(medial),
    breastLateral: breast(lateral),
    throat: on(topline, throat),
    quarterMedial: quarters(medial),
    quarterLateral: quarters(lateral),
    lowestMedial: along(topline, medial.topline, lowestHeight(medial).along),
    lowestLateral: along(topline, lateral.topline, lowestHeight(lateral).along),
  });
}
