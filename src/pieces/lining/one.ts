import type { Draft } from "../draft.ts";
import type { Allowance } from "../edges/allowance.ts";
import { cutPanel } from "../edges/cut-panel.ts";
import { panelOutline } from "../edges/panel-outline.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { lastingMargin, liningToeIn } from "../margins.ts";
import { onPiece } from "../inside-piece.ts";
import { wholePanel } from "../net-panels.ts";
import type { NetEdge } from "../panel.ts";
import { netOutline, type NetUpper } from "../net-upper.ts";
import type { PieceSettings } from "../settings.ts";
import { upperLabels } from "../upper/labels.ts";
import { backPricks, stretchArrow } from "../upper/marks.ts";
import { widthsAlong } from "../zones.ts";
import { liningAllowances } from "./finish.ts";
import { edgeMarks, sharedMarks } from "./marks.ts";
import { lackingOf, type OwnLining } from "./own.ts";
import { backReduction } from "./reduction.ts";

/**
 * The lining in one piece: taken in along the back and at the toe, since it lies inside upper, puff and stiffener; its lasting margin
 * shorter than the upper's; left standing above the topline to be trimmed. Where it was laid flat by itself it is smaller already, and
 * is taken in only by what that lacks of the settings. Drawn like the upper, from outside, which shows its flesh side: its grain lies
 * against the foot.
 */
export function cutLining(upper: NetUpper, asked: PieceSettings, labels: Labels, own?: OwnLining, bagged = false): Draft {
  const net = own?.net ?? upper;
  const settings = own ? lackingOf(asked, upper, own) : asked;
  const panel = wholePanel(net, own ? "lining" : "upper");
  const lasting = lastingMargin(net, settings), toeIn = liningToeIn(net, settings);
  const margin = (s: number): number => lasting(s) - settings.liningLastingShorterMm - toeIn(s);
  const usual = liningAllowances(panel, { marginMm: margin, takenInMm: toeIn }, settings, bagged, () => false);
  const cut = cutPanel(panel, panel.edges.map((edge, k): Allowance => (edge.role === "back" ? backSeam(edge, edge.half === "lateral", settings) : usual[k]!)));
  const marks = onPiece(cut.outline, [...edgeMarks(cut, ""), ...sharedMarks(cut, bagged ? 0 : settings.liningTrimMm, margin), ...stretchArrow(panel, panelOutline(panel)), ...backPricks(panel, cut.corners)]);
  const lines = pieceLines({ name: "lining", material: "lining leather", notes: ["with lasting margin,", bagged ? "back seam and topline," : "back seam and trim,", "flesh side up"], count: 1, labels });
  return { name: "lining", material: "lining leather", net: false, outline: cut.outline, marks, labels: upperLabels(panel, netOutline(net), marks, lines), directionDeg: 0, ground: own ? "lining" : "upper" };
}

/** The back seam with its stitch line taken in. */
function backSeam(edge: NetEdge, down: boolean, settings: PieceSettings): Allowance {
  const taken = backReduction(edge, settings, down);
  return { finish: "seam", widths: widthsAlong(edge.arc, () => settings.backSeamMm).map((mm, i) => mm - taken[i]!), at: taken.map((mm) => -mm) };
}
