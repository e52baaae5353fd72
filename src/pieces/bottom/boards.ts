import type { Polyline } from "#plane/outline.ts";
import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import { lineMark } from "../marks.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { behind, behindJoint, closedBehind, inside, straight } from "./bottom-lines.ts";
import { drawnIn, drawnInRing, flatPiece, untitled, type DraftMark } from "./flat-piece.ts";
import type { NetBottom } from "./net-bottom.ts";

/** The insole: the bottom inside the feather line, less room for cement; with the places of the second board and the shank on it. */
export function cutInsole(net: NetBottom, settings: PieceSettings, labels: Labels, shankPlace: readonly DraftMark[] = []): Draft {
  const margin = (): number => -settings.insoleInMm;
  const outline = drawnInRing(net, settings.insoleInMm);
  const front = inside(outline, secondFront(net, settings));
  const place = front ? [lineMark("second board to here", "place", front)] : [];
  return flatPiece(net, { name: "insole", material: "insole board", notes: [drawnIn(settings.insoleInMm), "seen from above"], outline, margin, marks: [...place, ...shankPlace], labels });
}

/** Where the second board ends: parallel to the joint line, behind it. */
const secondFront = (net: NetBottom, { secondBehindMm }: PieceSettings): Polyline => straight(behindJoint(net, secondBehindMm));

/** The board from the heel to behind the joint, its front to be skived; none where it would have no front. */
export function cutSecondBoard(net: NetBottom, settings: PieceSettings, labels: Labels, shankPlace: readonly DraftMark[] = []): readonly Draft[] {
  const margin = (): number => -settings.insoleInMm;
  const part = behind(drawnInRing(net, settings.insoleInMm), secondFront(net, settings));
  if (!part) return [];
  const outline = closedBehind(part);
  const skive = inside(outline, straight(behindJoint(net, settings.secondBehindMm + settings.secondSkiveMm)));
  const marks = [...(skive ? [lineMark("skive to nothing", "skive", skive)] : []), ...shankPlace];
  const nameAt: Xy = [0.7 * net.breastX, 0.4 * net.jointMedialPoint[1]];
  return [flatPiece(net, { name: "second insole board", material: "second board", notes: ["front skived"], outline, margin, marks, nameAt, labels: untitled(labels) })];
}
