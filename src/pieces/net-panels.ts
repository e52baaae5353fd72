import { must } from "#base/bug.ts";
import { finding, type Finding } from "#base/findings.ts";
import { medialSign, type Last, type Side } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import { reversed } from "#plane/along.ts";
import type { Mesh } from "#mesh/mesh.ts";
import type { Polyline } from "#plane/outline.ts";
import type { LaidPanel, PanelEdge } from "#shell/panel.ts";
import type { LaidPanels } from "#shell/panels.ts";
import type { HalvesChoice } from "#shell/settings.ts";
import { edgeLine } from "./carry.ts";
import { evenLine } from "./even.ts";
import { edgeLength, edgeOf, edgePoint, trueBacks, withEnds, type NetUpper } from "./net-upper.ts";
import type { NetEdge, NetPanel, NetPlace } from "./panel.ts";
import { PanelPlaces, quarterNames } from "./panel-places.ts";
import type { Ground, GroundName, Xy } from "./piece.ts";

export interface NetPanels {
  readonly panels: readonly NetPanel[];
  /** By how much the banks of each seam differed before they were made equal, first named less second, mm. */
  readonly seams: readonly { readonly seam: string; readonly differenceMm: number }[];
  readonly findings: readonly Finding[];
}

export interface NetPanelsInput {
  readonly last: Last;
  readonly lines: Lines;
  readonly laid: LaidPanels;
  readonly halves?: HalvesChoice;
}

/**
 * The panels' fair edges, as of a right shoe, with the named places on them. Both banks of each seam are brought to the mean of their
 * lengths from the topline, which stays; what the foot moves by dies away along the feather line.
 */
export function netPanels({ last, lines, laid, halves = "separate" }: NetPanelsInput): NetPanels {
  const sign = medialSign(last.side);
  const raw = laid.panels.map(({ panel, uv }) => panel.edges.map(({ vertices }) => ownLine(uv, vertices, sign)));
  const { banks, seams } = evenBanks(laid.panels, raw);
  const places = new PanelPlaces(last, lines, laid, sign);
  const panels = laid.panels.map(({ panel }, p): NetPanel => {
    const lines = panel.edges.map((edge, k) => banks.get(edge) ?? evenLine(edge.role === "feather" ? betweenBanks(raw[p]!, panel.edges, k, banks) : raw[p]![k]!));
    const edges = panel.edges.map((edge, k) => netEdge(edge, lines[k]!));
    const found = places.on(p, edges);
    const at = (name: "throat" | "toe"): Xy => {
      const place = found.find((one) => one.name === name);
      must(place, "a panel with the centre line has toe and throat");
      return edgePoint(edges[place.edge]!, place.s);
    };
    return { name: panel.name, edges, places: found, ...(panel.centre && { centre: [at("throat"), at("toe")] as const }) };
  });
  return { panels, seams, findings: halves === "mean" ? [finding("mean-halves-whole-only", {})] : [] };
}

/** The mirrored 0 of a left one is made a plain 0, so that both feet's corners are the same numbers. */
const ownLine = (uv: Float64Array, vertices: Uint32Array, sign: 1 | -1): Polyline => ({ xy: edgeLine(uv, vertices, sign).xy.map((v) => v + 0) });

function netEdge({ role, half, seam }: PanelEdge, line: Polyline): NetEdge {
  must(role !== "end", "a panel of the upper has no ends but its seams");
  return { ...edgeOf(line), role, ...(half && { half }), ...(seam !== undefined && { seam }) };
}

interface Bank {
  readonly edge: PanelEdge;
  /** From the foot up to the topline. */
  readonly up: Polyline;
  /** Whether the panel's rim runs that way. */
  readonly upward: boolean;
}

/** Both banks of every seam, faired and made equally long. */
function evenBanks(panels: readonly LaidPanel[], raw: readonly (readonly Polyline[])[]): { readonly banks: ReadonlyMap<PanelEdge, Polyline>; readonly seams: NetPanels["seams"] } {
  const bySeam = new Map<string, Bank[]>();
  panels.forEach(({ panel: { edges } }, p) =>
    edges.forEach((edge, k) => {
      if (edge.seam === undefined) return;
      const upward = edges[(k + edges.length - 1) % edges.length]!.role === "feather";
      const line = raw[p]![k]!;
      bySeam.set(edge.seam, [...(bySeam.get(edge.seam) ?? []), { edge, upward, up: upward ? line : reversed(line) }]);
    }),
  );
  const banks = new Map<PanelEdge, Polyline>();
  const seams = [...bySeam].map(([seam, [a, b, ...more]]) => {
    must(a && b && more.length === 0, "a seam has two banks");
    const even = trueBacks(a.up, b.up);
    banks.set(a.edge, a.upward ? even.medial : reversed(even.medial));
    banks.set(b.edge, b.upward ? even.lateral : reversed(even.lateral));
    return { seam, differenceMm: even.differenceMm };
  });
  return { banks, seams };
}

/** A feather line moved to where the feet of the banks on both its sides have come. */
function betweenBanks(raw: readonly Polyline[], edges: readonly PanelEdge[], k: number, banks: ReadonlyMap<PanelEdge, Polyline>): Polyline {
  const n = edges.length;
  const before = banks.get(edges[(k + n - 1) % n]!), after = banks.get(edges[(k + 1) % n]!);
  must(before && after, "a feather line runs from bank to bank");
  const end = before.xy.length;
  return withEnds(raw[k]!, [before.xy[end - 2]!, before.xy[end - 1]!], [after.xy[0]!, after.xy[1]!]);
}

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
