import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import { toeReachMm } from "../margins.ts";
import { edgeLength } from "../net-upper.ts";
import type { PieceSettings } from "../settings.ts";
import { inOrder, widthAt } from "../zones.ts";
import { flatPiece, grown } from "./flat-piece.ts";
import { hollowBreast } from "./heel-line.ts";
import type { NetBottom } from "./net-bottom.ts";

/** The outsole: the bottom, what lies between last and sole edge, and what is left for finishing, by zone. */
export function cutOutsole(net: NetBottom, settings: PieceSettings, labels: Labels): Draft {
  const margin = outsoleMargin(net, settings);
  const outline = grown(net, margin);
  return flatPiece(net, {
    name: "outsole", material: "sole leather", notes: ["with finishing margin", "seen from above,", "grain side down"], outline, margin, labels,
    breast: hollowBreast(net, settings.breastHollowMm),
  });
}

/** How far the outsole reaches beyond the feather line at a running length of the bottom. */
export function outsoleMargin(net: NetBottom, settings: PieceSettings): (s: number) => number {
  const under = settings.upperThicknessMm + settings.liningThicknessMm;
  const forepart = under + settings.soleFinishForepartMm;
  const waist = under + settings.soleFinishWaistMm;
  const heel = under + settings.soleFinishHeelMm;
  const stations = inOrder([
    { s: 0, mm: heel },
    { s: net.breastLateral, mm: heel },
    { s: net.waistLateral, mm: waist },
    { s: net.jointLateral, mm: forepart },
    { s: net.toe - toeReachMm, mm: forepart },
    { s: net.toe, mm: forepart + settings.toePuffMm },
    { s: net.toe + toeReachMm, mm: forepart },
    { s: net.jointMedial, mm: forepart },
    { s: net.waistMedial, mm: waist },
    { s: net.breastMedial, mm: heel },
    { s: edgeLength(net.ring), mm: heel },
  ]);
  return (s) => widthAt(stations, s);
}
