import { reversed, partBetween, resample } from "#plane/along.ts";
import type { Polyline } from "#plane/outline.ts";
import { apart } from "#plane/measure.ts";
import type { Half } from "#lines/feather.ts";
import { edgeOf, edgeLength, edgePoint, withEnds, type NetUpper, type UpperPlaces } from "../net-upper.ts";
import type { NetEdge, NetPanel, NetPlace, PlaceName } from "../panel.ts";
import type { Xy } from "../piece.ts";
import { jointWay, type JointEnds, type LiningJoints } from "./joints.ts";

/** Names of the lining's joints, as its pieces are told of them. */
export const jointName = (of: "vamp" | "pocket", half: Half): string => `${of === "vamp" ? "vamp lap" : "pocket lap"}, ${half === "medial" ? "inside" : "outside"}`;

/** The straight line between two points in steps, so that it can be moved and turned like any edge. */
export const straight = ([a, b]: readonly [Xy, Xy]): Polyline => resample({ xy: Float64Array.of(...a, ...b) }, 2);

interface Side {
  readonly half: Half;
  readonly of: "vamp" | "pocket";
  /** From the feather line up, or from the topline down. */
  readonly down?: boolean;
  readonly way: readonly [Xy, Xy];
}

export function sideEdge({ half, of, down = false, way }: Side): NetEdge {
  const up = straight(way);
  return { ...edgeOf(down ? reversed(up) : up), role: "side", half, seam: jointName(of, half) };
}

/** The vamp lining: over the toe from one vamp joint to the other. */
export function vampPanel(net: NetUpper, { vamp }: LiningJoints): NetPanel {
  const { feather, topline, places } = net;
  const [fromF, toF] = [vamp.lateral.foot, vamp.medial.foot], [fromT, toT] = [vamp.medial.top, vamp.lateral.top];
  const edges: readonly NetEdge[] = [
    { ...edgeOf(partBetween(feather.line, feather.arc, fromF, toF)), role: "feather" },
    sideEdge({ half: "medial", of: "vamp", way: jointWay(net, vamp.medial) }),
    { ...edgeOf(partBetween(topline.line, topline.arc, fromT, toT)), role: "topline" },
    sideEdge({ half: "lateral", of: "vamp", down: true, way: jointWay(net, vamp.lateral) }),
  ];
  return { name: "lining", edges, places: placesWithin(places, edges, [fromF, fromT]), centre: [edgePoint(topline, places.throat), edgePoint(feather, places.toe)] };
}

/** A quarter lining: from the vamp joint to the heel pocket, whose joint may be a little longer or shorter than straight across (`pocketFoot`). */
export function quarterPanel(net: NetUpper, half: Half, { vamp, pocket }: LiningJoints, pocketFoot: Xy): NetPanel {
  const { feather, topline, places } = net;
  const [v, p] = [vamp[half], pocket[half]];
  const inner = half === "medial";
  const [fromF, toF] = inner ? [v.foot, p.foot] : [p.foot, v.foot];
  const [fromT, toT] = inner ? [p.top, v.top] : [v.top, p.top];
  const pocketWay = [pocketFoot, edgePoint(topline, p.top)] as const;
  const below = partBetween(feather.line, feather.arc, fromF, toF);
  const ends = inner ? ([edgePoint(feather, fromF), pocketFoot] as const) : ([pocketFoot, edgePoint(feather, toF)] as const);
  const up = inner ? sideEdge({ half, of: "pocket", way: pocketWay }) : sideEdge({ half, of: "vamp", way: jointWay(net, v) });
  const down = inner ? sideEdge({ half, of: "vamp", down: true, way: jointWay(net, v) }) : sideEdge({ half, of: "pocket", down: true, way: pocketWay });
  const edges: readonly NetEdge[] = [
    { ...edgeOf(withEnds(below, ...ends)), role: "feather", half },
    up,
    { ...edgeOf(partBetween(topline.line, topline.arc, fromT, toT)), role: "topline", half },
    down,
  ];
  return { name: "lining", edges, places: placesWithin(places, edges, [fromF, fromT]) };
}

/** How a joint lies in the whole lining, from the feather line up; its length. */
export const wayLength = (net: NetUpper, ends: JointEnds): number => apart(...jointWay(net, ends));

const quarterNames = ["quarter 1/4", "quarter 1/2", "quarter 3/4"] as const satisfies readonly PlaceName[];

/** The places of the whole lining that lie on a panel's feather line (edge 0) and topline (edge 2), which begin at these lengths. */
function placesWithin(p: UpperPlaces, edges: readonly NetEdge[], [fromF, fromT]: readonly [number, number]): readonly NetPlace[] {
  const on = (edge: 0 | 2, name: PlaceName, at: number, half?: Half): readonly NetPlace[] => {
    const s = at - (edge === 0 ? fromF : fromT);
    return s > 2 && s < edgeLength(edges[edge]!) - 2 ? [{ name, edge, s, ...(half && { half }) }] : [];
  };
  return [
    ...on(0, "waist", p.waistLateral, "lateral"),
    ...on(0, "joint", p.jointLateral, "lateral"),
    ...on(0, "toe", p.toe),
    ...on(0, "joint", p.jointMedial, "medial"),
    ...on(0, "waist", p.waistMedial, "medial"),
    ...p.quarterMedial.flatMap((s, k) => on(2, quarterNames[k]!, s, "medial")),
    ...on(2, "lowest", p.lowestMedial, "medial"),
    ...on(2, "throat", p.throat),
    ...p.quarterLateral.flatMap((s, k) => on(2, quarterNames[k]!, s, "lateral")),
    ...on(2, "lowest", p.lowestLateral, "lateral"),
  ];
}
