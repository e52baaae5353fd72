import { nearestOn } from "#plane/along.ts";
import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import { toeReachMm } from "../margins.ts";
import { acrossAt } from "../marks.ts";
import { edgeLength } from "../net-upper.ts";
import type { PieceSettings } from "../settings.ts";
import { inOrder, widthAt, type Station } from "../zones.ts";
import { flatPiece, grown } from "./flat-piece.ts";
import { hollowBreast } from "./heel-line.ts";
import { capFromX, type LastedExtras } from "./margin-under.ts";
import type { NetBottom } from "./net-bottom.ts";

/** The outsole: the bottom, what lies between last and sole edge, and what is left for finishing, by zone. */
export function cutOutsole(net: NetBottom, settings: PieceSettings, labels: Labels, extras: LastedExtras = noExtras): Draft {
  const margin = outsoleMargin(net, settings, extras);
  const outline = grown(net, margin);
  return flatPiece(net, {
    name: "outsole", material: "sole leather", notes: ["with finishing margin", "seen from above,", "grain side down"], outline, margin, labels,
    breast: hollowBreast(net, settings.breastHollowMm),
  });
}

const noExtras: LastedExtras = { toeCap: false, backStrip: false, sideLining: false };
/** Over this length, but before the joint, what a cap or a back strip adds comes to nothing beyond its edge, mm: shorter and the edge of the sole wavers there. */
const runOutMm = 30;

/** How far the outsole reaches beyond the feather line at a running length of the bottom: what lies between last and sole edge, and what is left for finishing. */
export function outsoleMargin(net: NetBottom, settings: PieceSettings, extras: LastedExtras = noExtras): (s: number) => number {
  const under = settings.upperThicknessMm + settings.liningThicknessMm;
  const side = extras.sideLining ? settings.sideLiningMm : 0;
  const forepart = under + settings.soleFinishForepartMm;
  const waist = under + settings.soleFinishWaistMm + side;
  const heel = under + settings.soleFinishHeelMm;
  const stations = inOrder([
    { s: 0, mm: heel },
    { s: net.breastLateral, mm: heel },
    { s: net.waistLateral, mm: waist },
    { s: net.jointLateral, mm: forepart + side },
    { s: net.toe - toeReachMm, mm: forepart },
    { s: net.toe, mm: forepart + settings.toePuffMm },
    { s: net.toe + toeReachMm, mm: forepart },
    { s: net.jointMedial, mm: forepart + side },
    { s: net.waistMedial, mm: waist },
    { s: net.breastMedial, mm: heel },
    { s: edgeLength(net.ring), mm: heel },
  ]);
  const over = overLasted(net, settings, extras);
  return (s) => widthAt(stations, s) + over.reduce((sum, of) => sum + widthAt(of, s), 0);
}

/** The upper's leather once more, where a toe cap or a back strip is lasted under with it. */
function overLasted(net: NetBottom, settings: PieceSettings, { toeCap, backStrip }: LastedExtras): readonly (readonly Station[])[] {
  const thick = settings.upperThicknessMm, whole = edgeLength(net.ring);
  const ends = toeCap ? acrossAt(net.outline, capFromX(net, settings)) : undefined;
  const cap = ends?.map(([x, y]) => nearestOn(net.ring.line, net.ring.arc, x, y).s);
  const half = settings.backStripFeatherMm / 2;
  return [
    ...(cap ? [inOrder([{ s: Math.max(cap[0]! - runOutMm, net.jointLateral), mm: 0 }, { s: cap[0]!, mm: thick }, { s: cap[1]!, mm: thick }, { s: Math.min(cap[1]! + runOutMm, net.jointMedial), mm: 0 }])] : []),
    ...(backStrip ? [inOrder([{ s: 0, mm: thick }, { s: half, mm: thick }, { s: half + runOutMm, mm: 0 }, { s: whole - half - runOutMm, mm: 0 }, { s: whole - half, mm: thick }, { s: whole, mm: thick }])] : []),
  ];
}
