import { finding, type Finding } from "#base/findings.ts";
import { halves, type Half } from "#lines/feather.ts";
import { partBetween, reversed } from "#plane/along.ts";
import { offsetEdge } from "#plane/edge-offset.ts";
import { edgeLength, edgeOf, edgePoint, withEnds, type Edge, type NetUpper } from "../net-upper.ts";
import type { NetEdge, NetPanel, NetPlace } from "../panel.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { widthsAlong } from "../zones.ts";
import { awayOnFeather, awayOnTopline, type HeelNet } from "./heel-net.ts";
import type { LiningJoints } from "./joints.ts";
import { flatAt } from "./on-last.ts";
import { jointName, straight, wayLength } from "./panels.ts";

/** The heel pocket's net panel, and where the joint's foot lies on each quarter lining once both are equally long. */
export interface PocketPanel {
  readonly panel: NetPanel;
  readonly quarterFoot: Readonly<Record<Half, Xy>>;
  readonly findings: readonly Finding[];
}

/** More than this between a pocket's edge and its quarter lining is no longer lasted away, mm (our own limit). */
const mostDifferenceMm = 2;

/**
 * The heel pocket out of the heel's own sheet, without a seam. What a seam would take in at the back is taken in at its front edges:
 * `lacking` says how much of it (own.ts), and what the sheet's topline is longer by than the lining's, which is drawn together like the upper's.
 * Both edges of a joint come to their mean length at the feather line.
 */
export function pocketPanel(heel: HeelNet, net: NetUpper, { pocket }: LiningJoints, settings: PieceSettings, lacking: PieceSettings): PocketPanel {
  const findings: Finding[] = [];
  const quarterFoot: Record<Half, Xy> = { medial: [0, 0], lateral: [0, 0] };
  const side = (half: Half): { readonly edge: Edge; readonly foot: number; readonly top: number } => {
    const ends = pocket[half];
    const { scales, back } = heel;
    const topOnSheet = flatAt(scales[half].topline, settings.liningPocketTopMm);
    const onLining = half === "medial" ? ends.top : edgeLength(net.topline) - ends.top;
    const drawnMm = Math.max(0, Math.abs(topOnSheet - back) - onLining);
    const top = topOnSheet - awayOnTopline(half) * (lacking.liningBackInTopMm + drawnMm);
    const foot = flatAt(scales[half].feather, settings.liningPocketWingMm) - awayOnFeather(half) * lacking.liningBackInFeatherMm;
    const bowMm = lacking.liningBackInMiddleMm - (lacking.liningBackInTopMm + lacking.liningBackInFeatherMm) / 2;
    const drawn = bowed(straight([edgePoint(heel.feather, foot), edgePoint(heel.topline, top)]), half, bowMm);
    const [own, other] = [edgeLength(drawn), wayLength(net, ends)];
    if (Math.abs(own - other) > mostDifferenceMm) findings.push(finding("lining-joints-differ", { half, differenceMm: own - other, allowedMm: mostDifferenceMm }));
    const mean = (own + other) / 2;
    quarterFoot[half] = stretchedTo(edgeOf(straight([edgePoint(net.feather, ends.foot), edgePoint(net.topline, ends.top)])), mean);
    const at = stretchedTo(drawn, mean);
    return { edge: edgeOf(withEnds(drawn.line, at, edgePoint(heel.topline, top))), foot, top };
  };
  const [medial, lateral] = halves.map(side) as [ReturnType<typeof side>, ReturnType<typeof side>];
  const footOf = ({ edge: { line: { xy } } }: typeof medial): Xy => [xy[0]!, xy[1]!];
  const below = withEnds(partBetween(heel.feather.line, heel.feather.arc, medial.foot, lateral.foot), footOf(medial), footOf(lateral));
  const edges: readonly NetEdge[] = [
    { ...edgeOf(below), role: "feather" },
    { ...lateral.edge, role: "side", half: "lateral", seam: jointName("pocket", "lateral") },
    { ...edgeOf(partBetween(heel.topline.line, heel.topline.arc, lateral.top, medial.top)), role: "topline" },
    { ...edgeOf(reversed(medial.edge.line)), role: "side", half: "medial", seam: jointName("pocket", "medial") },
  ];
  const places: readonly NetPlace[] = [
    { name: "seat", edge: 0, s: heel.seat - medial.foot },
    { name: "back", edge: 2, s: heel.back - lateral.top },
  ];
  return { panel: { name: "heel", edges, places }, quarterFoot, findings };
}

/** Where the foot of an edge that runs up lies when the edge is stretched, or shortened, to a length from its top; it goes on straight. */
function stretchedTo(edge: Edge, mm: number): Xy {
  const { xy } = edge.line;
  const [ax, ay, bx, by] = [xy[0]!, xy[1]!, xy[2]!, xy[3]!];
  const size = Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2);
  const longer = (mm - edgeLength(edge)) / size;
  return [ax - longer * (bx - ax), ay - longer * (by - ay)];
}

/** A straight edge bowed toward the heel by so much in its middle. */
function bowed(line: Edge["line"], half: Half, mm: number): Edge {
  const edge = edgeOf(line);
  const length = edgeLength(edge);
  // Walking up, the sheet's middle lies to the right on the inner half and to the left on the outer one; widths count to the right.
  const way = half === "medial" ? 1 : -1;
  return mm === 0 ? edge : edgeOf(offsetEdge(line, widthsAlong(edge.arc, (s) => (way * 4 * mm * s * (length - s)) / (length * length))));
}
