import { reversed } from "#plane/along.ts";
import { offsetEdge } from "#plane/edge-offset.ts";
import { cutAtCrossing } from "#plane/join.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Draft } from "../draft.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { lastingMargin, liningToeIn } from "../margins.ts";
import { lineMark } from "../marks.ts";
import { netOutline, type NetUpper } from "../net-upper.ts";
import type { Xy } from "../piece.ts";
import { allowancesAdded, backPricks, centreNotches, featherNotches, insideLines, seamLines, toplineNotches, upperLabels } from "../upper.ts";
import type { PieceSettings } from "../settings.ts";
import { widthsAlong } from "../zones.ts";
import { lackingOf, type OwnLining } from "./own.ts";
import { backReduction } from "./reduction.ts";

/**
 * The lining in one piece: taken in along the back and at the toe, since it lies inside upper, puff and stiffener; its lasting margin
 * shorter than the upper's; left standing above the topline to be trimmed. Where it was laid flat by itself it is smaller already, and
 * is taken in only by what that lacks of the settings. Drawn like the upper, from outside, which shows its flesh side: its grain lies
 * against the foot.
 */
export function cutLining(upper: NetUpper, asked: PieceSettings, labels: Labels, own?: OwnLining): Draft {
  const net = own?.net ?? upper;
  const settings = own ? lackingOf(asked, upper, own) : asked;
  return drawLining(net, settings, labels);
}

function drawLining(net: NetUpper, settings: PieceSettings, labels: Labels): Draft {
  const upper = lastingMargin(net, settings);
  const toeIn = liningToeIn(net, settings);
  const margin = (s: number): number => upper(s) - settings.liningLastingShorterMm - toeIn(s);
  const medial = backReduction(net.backMedial, settings, false);
  const lateral = backReduction(net.backLateral, settings, true);
  const cut = allowancesAdded(net, {
    margin,
    backMedial: medial.map((mm) => settings.backSeamMm - mm),
    backLateral: lateral.map((mm) => settings.backSeamMm - mm),
    stitchMedial: medial.map((mm) => -mm),
    stitchLateral: lateral.map((mm) => -mm),
    toplineMm: settings.liningTrimMm,
    folded: false,
  });
  const within = netOutline(net);
  const { outline, foldLine, seamMedial, seamLateral } = cut;
  const trimNotchMm = Math.min(1.5, settings.liningTrimMm / 2);
  const feather = featherBetween(offsetEdge(net.feather.line, widthsAlong(net.feather.arc, (s) => -toeIn(s))), seamMedial.line, seamLateral.line);
  const marks = [
    lineMark("topline: trim here", "net", foldLine),
    lineMark("feather line", "net", feather.line),
    ...seamLines(cut),
    ...insideLines(net, within, outline),
    ...centreNotches(net, outline, trimNotchMm),
    ...featherNotches(net, outline, margin),
    ...toplineNotches(net, settings.liningTrimMm, trimNotchMm),
    ...backPricks({ ...feather, backMedial: seamMedial.backPoint, backLateral: seamLateral.backPoint }),
  ];
  const lines = pieceLines({ name: "lining", material: "lining leather", notes: ["with lasting margin,", "back seam and trim,", "flesh side up"], count: 1, labels });
  return { name: "lining", material: "lining leather", net: false, outline, marks, labels: upperLabels(net, within, marks, lines), directionDeg: 0 };
}

/** The feather line between the two seams, which cut it off at the lining's own seats. It runs from the outer one. */
function featherBetween(line: Polyline, medial: Polyline, lateral: Polyline): { readonly line: Polyline; readonly seatMedial: Xy; readonly seatLateral: Xy } {
  const inner = cutAtCrossing(line, medial)?.before ?? line;
  const { xy } = reversed(cutAtCrossing(reversed(inner), lateral)?.before ?? reversed(inner));
  return { line: { xy }, seatMedial: [xy[xy.length - 2]!, xy[xy.length - 1]!], seatLateral: [xy[0]!, xy[1]!] };
}
