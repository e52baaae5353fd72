import type { SockKind } from "../choices.ts";
import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import { edgePoint } from "../net-upper.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import type { Polyline } from "#plane/outline.ts";
import { behind, behindJoint, bowed, closedBehind, squareAt } from "./bottom-lines.ts";
import { drawnIn, drawnInRing, flatPiece } from "./flat-piece.ts";
import { breadthAt } from "./heel-line.ts";
import type { NetBottom } from "./net-bottom.ts";

/** The sock: the insole, a little smaller, so that it lies flat inside the shoe; whole, to behind the joint, or over the heel alone; none where its front does not meet both edges. */
export function cutSock(net: NetBottom, settings: PieceSettings, labels: Labels, kind: SockKind = "full"): readonly Draft[] {
  const inMm = settings.insoleInMm + settings.sockInMm;
  const margin = (): number => -inMm;
  const whole = drawnInRing(net, inMm);
  const part = kind === "full" ? undefined : behind(whole, frontOf(net, settings, kind));
  if (kind !== "full" && !part) return [];
  const length = kind === "full" ? "full length" : kind === "half" ? "half" : "heel alone";
  const nameAt: Xy = [(kind === "heel" ? 0.6 * net.breastX : 0.78 * net.jointMedialPoint[0]), 0.36 * net.jointMedialPoint[1]];
  const notes = [`${length}, ${drawnIn(inMm)}`, "seen from above"];
  return [flatPiece(net, { name: "sock", material: "sock leather", notes, outline: part ? closedBehind(part) : whole, margin, ...(part && { nameAt }), labels })];
}

/** The front edge of a half or heel sock, rounded toward the toe. */
function frontOf(net: NetBottom, { sockBehindMm, sockBeyondMm, sockRoundMm }: PieceSettings, kind: "half" | "heel"): Polyline {
  if (kind === "heel") return bowed(squareAt(net, net.breastX + sockBeyondMm - sockRoundMm), sockRoundMm, breadthAt(net, net.breastX + sockBeyondMm));
  const [a, b] = [edgePoint(net.ring, net.jointMedial), edgePoint(net.ring, net.jointLateral)];
  // The rounding's foremost place is as far behind the joint line as asked.
  return bowed(behindJoint(net, sockBehindMm + sockRoundMm), sockRoundMm, Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2));
}
