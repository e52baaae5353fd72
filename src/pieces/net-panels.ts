import { medialSign, type Side } from "#last/last.ts";
import type { Mesh } from "#mesh/mesh.ts";
import type { LaidPanel } from "#shell/panel.ts";
import { edgeLength, edgePoint, type NetUpper } from "./net-upper.ts";
import type { NetEdge, NetPanel, NetPlace, PlaceName } from "./panel.ts";
import type { Ground, GroundName } from "./piece.ts";

const quarterNames = ["quarter 1/4", "quarter 1/2", "quarter 3/4"] as const satisfies readonly PlaceName[];

/**
 * The net upper that is open at the back, as one panel: feather line, inner bank of the back, topline, outer bank. `name` is the flat
 * sheet it lies in.
 */
export function wholePanel(net: NetUpper, name: GroundName = "upper"): NetPanel {
  const { feather, backMedial, topline, backLateral, places: p } = net;
  const edges: readonly NetEdge[] = [
    { ...feather, role: "feather" },
    { ...backMedial, role: "back", half: "medial", seam: "back" },
    { ...topline, role: "topline" },
    { ...backLateral, role: "back", half: "lateral", seam: "back" },
  ];
  const places: readonly NetPlace[] = [
    { name: "seat", half: "lateral", edge: 0, s: 0 },
    { name: "breast", half: "lateral", edge: 0, s: p.breastLateral },
    { name: "waist", half: "lateral", edge: 0, s: p.waistLateral },
    { name: "joint", half: "lateral", edge: 0, s: p.jointLateral },
    { name: "toe", edge: 0, s: p.toe },
    { name: "joint", half: "medial", edge: 0, s: p.jointMedial },
    { name: "waist", half: "medial", edge: 0, s: p.waistMedial },
    { name: "breast", half: "medial", edge: 0, s: p.breastMedial },
    { name: "seat", half: "medial", edge: 0, s: edgeLength(feather) },
    { name: "back", half: "medial", edge: 2, s: 0 },
    ...p.quarterMedial.map((s, k): NetPlace => ({ name: quarterNames[k]!, half: "medial", edge: 2, s })),
    { name: "lowest", half: "medial", edge: 2, s: p.lowestMedial },
    { name: "throat", edge: 2, s: p.throat },
    ...p.quarterLateral.map((s, k): NetPlace => ({ name: quarterNames[k]!, half: "lateral", edge: 2, s })),
    { name: "lowest", half: "lateral", edge: 2, s: p.lowestLateral },
    { name: "back", half: "lateral", edge: 2, s: edgeLength(topline) },
  ];
  return { name, edges, places, centre: [edgePoint(topline, p.throat), edgePoint(feather, p.toe)] };
}

/** A sheet laid flat as the ground that pieces are drawn in, as of a right one; places are those on the last itself. */
export function groundOf(name: GroundName, side: Side, onLast: Mesh, uv: Float64Array): Ground {
  const sign = medialSign(side);
  return { name, positions: onLast.positions, triangles: onLast.triangles, uv: sign === 1 ? uv : uv.map((v, i) => (i % 2 === 1 ? -v + 0 : v)) };
}

export const panelGround = ({ panel, uv }: LaidPanel, side: Side): Ground => groundOf(panel.name, side, panel.onLast, uv);
