import { partBetween, resample } from "#plane/along.ts";
import { edgeLength, edgeOf, edgePoint, type NetUpper } from "#pieces/net-upper.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import type { EdgeRole, NetEdge, NetPanel, NetPlace } from "#pieces/panel.ts";
import type { GroundName } from "#pieces/piece.ts";

/** Where a straight seam meets feather line and topline: running lengths of the whole's edges 0 and 2. */
interface Split {
  readonly feather: number;
  readonly topline: number;
}

/**
 * Vamp and quarters as the whole net upper gives them when it is cut straight through on the flat: both edges of a side seam are the same
 * line, and every place keeps its own.
 */
export function quartersOf(net: NetUpper, medial: Split, lateral: Split): readonly [vamp: NetPanel, inner: NetPanel, outer: NetPanel] {
  const whole = wholePanel(net);
  const [featherEnd, toplineEnd] = [edgeLength(net.feather), edgeLength(net.topline)];
  const part = (edge: 0 | 2, from: number, to: number, extra: Partial<NetEdge> = {}): NetEdge => ({ ...edgeOf(partBetween(whole.edges[edge]!.line, whole.edges[edge]!.arc, from, to)), role: edge === 0 ? "feather" : "topline", ...extra });
  const seam = (split: Split, half: "medial" | "lateral", up: boolean): NetEdge => {
    const ends = [edgePoint(net.feather, split.feather), edgePoint(net.topline, split.topline)];
    const line = resample({ xy: Float64Array.from((up ? ends : ends.reverse()).flat()) }, 0.75);
    return { ...edgeOf(line), role: "side" satisfies EdgeRole, half, seam: half === "medial" ? "inner side" : "outer side" };
  };
  const placesIn = (edge: number, as: number, from: number, to: number): readonly NetPlace[] =>
    whole.places.filter((p) => p.edge === edge && p.s >= from - 1e-9 && p.s <= to + 1e-9).map((p) => ({ ...p, edge: as, s: p.s - from }));
  const panel = (name: GroundName, edges: readonly NetEdge[], places: readonly NetPlace[], centre?: NetPanel["centre"]): NetPanel => ({ name, edges, places, ...(centre && { centre }) });
  return [
    panel(
      "vamp",
      [part(0, lateral.feather, medial.feather), seam(medial, "medial", true), part(2, medial.topline, lateral.topline), seam(lateral, "lateral", false)],
      [...placesIn(0, 0, lateral.feather, medial.feather), ...placesIn(2, 2, medial.topline, lateral.topline)],
      whole.centre,
    ),
    panel(
      "inner quarter",
      [part(0, medial.feather, featherEnd, { half: "medial" }), whole.edges[1]!, part(2, 0, medial.topline, { half: "medial" }), seam(medial, "medial", false)],
      [...placesIn(0, 0, medial.feather, featherEnd), ...placesIn(2, 2, 0, medial.topline)],
    ),
    panel(
      "outer quarter",
      [part(0, 0, lateral.feather, { half: "lateral" }), seam(lateral, "lateral", true), part(2, lateral.topline, toplineEnd, { half: "lateral" }), whole.edges[3]!],
      [...placesIn(0, 0, 0, lateral.feather), ...placesIn(2, 2, lateral.topline, toplineEnd)],
    ),
  ];
}
