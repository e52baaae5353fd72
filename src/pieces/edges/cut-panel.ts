import { joined, reversed } from "#plane/along.ts";
import { offsetEdge } from "#plane/edge-offset.ts";
import { cutAtCrossing, extendEnd } from "#plane/join.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { evenedLasting } from "../even.ts";
import type { NetEdge, NetPanel } from "../panel.ts";
import type { Xy } from "../piece.ts";
import type { Allowance, Finish } from "./allowance.ts";
import { reachOf, type Bank } from "./bank.ts";
import { usualCorner, type CornerKind } from "./corner-kind.ts";
import { corner } from "./corners.ts";

/** One edge of a panel as it is cut; all lines in the edge's own direction. */
export interface CutEdge {
  readonly net: NetEdge;
  readonly finish: Finish;
  /** Cutting line between its two corners. */
  readonly cut: Polyline;
  /** Stitch line, fold line, line where another edge is laid, trim line or feather line, from cutting line to cutting line. */
  readonly line: Polyline;
  /** Inner border of what is skived along it. */
  readonly skive?: Polyline;
  /** Where it is stitched down on what lies under it. */
  readonly stitch?: Polyline;
}

/** A panel with its allowances: corner k lies between edge k and the next one. */
export interface CutPanel {
  readonly panel: NetPanel;
  readonly outline: Outline;
  readonly edges: readonly CutEdge[];
  /** Where the lines of both edges meet. */
  readonly corners: readonly Xy[];
  /** Cuts from the cutting line inward that a corner needs before it can be turned. */
  readonly snips: readonly { readonly corner: number; readonly at: Xy; readonly toward: Xy }[];
}

/**
 * Cuts a panel of named edges: each edge is moved outward by its allowance, each corner made by the rule for what meets there, or by
 * `cornerAt` where that says another. The outline starts at the first edge's first corner.
 */
export function cutPanel(panel: NetPanel, allowances: readonly Allowance[], cornerAt: (k: number) => CornerKind | undefined = () => undefined): CutPanel {
  const n = panel.edges.length;
  const banks = panel.edges.map(({ line }, k) => bankOf(line, allowances[k]!));
  const corners: Xy[] = [];
  const snips: CutPanel["snips"][number][] = [];
  for (let k = 0; k < n; k++) {
    const next = (k + 1) % n;
    const [before, after] = [allowances[k]!.finish, allowances[next]!.finish];
    const foldFirst = before === "fold" || (after !== "fold" && panel.edges[k]!.role === "topline");
    const made = corner(cornerAt(k) ?? usualCorner(before, after), banks[k]!, banks[next]!, foldFirst);
    banks[k] = made.before;
    banks[next] = made.after;
    corners.push(made.at);
    if (made.snip) snips.push({ corner: k, at: made.snip[0], toward: made.snip[1] });
  }
  const ring = joined(banks.map(({ cut }) => cut)).xy;
  const edges = panel.edges.map((net, k): CutEdge => {
    const { finish, widths, skive, stitchInMm } = allowances[k]!;
    const { cut, line } = banks[k]!;
    const inside = (out: Float64Array): Polyline => betweenCuts(offsetEdge(net.line, out), banks[(k + n - 1) % n]!, banks[k]!, banks[(k + 1) % n]!);
    const skived = skive && (skive.between ? partOffset(net, widths.map((mm) => mm - skive.mm), skive.between) : inside(widths.map((mm) => mm - skive.mm)));
    return { net, finish, cut, line, ...(skived && { skive: skived }), ...(stitchInMm && { stitch: inside(widths.map(() => -stitchInMm)) }) };
  });
  return { panel, outline: { xy: ring.slice(0, ring.length - 2) }, edges, corners, snips };
}

function bankOf(net: Polyline, { finish, widths, at }: Allowance): Bank {
  const outer = moved(net, widths);
  const cut = finish === "lasting" ? evenedLasting(outer) : outer;
  const line = at ? moved(net, at) : net;
  return { finish, cut, line, rawCut: cut, rawLine: line, widestMm: widths.reduce((most, mm) => Math.max(most, Math.abs(mm)), 0) };
}

const moved = (line: Polyline, widths: Float64Array): Polyline => (widths.every((mm) => mm === 0) ? line : offsetEdge(line, widths));

/** A line beside an edge, from one neighbour's cutting line to the other's. */
function betweenCuts(line: Polyline, before: Bank, own: Bank, after: Bank): Polyline {
  const tail = cutAtCrossing(extendEnd(line, reachOf(own, after)), after.cut)?.before ?? line;
  return reversed(cutAtCrossing(extendEnd(reversed(tail), reachOf(before, own)), before.cut)?.before ?? reversed(tail));
}

/** A line beside the part of an edge between two running lengths; none where that is too short to have a direction. */
function partOffset({ line, arc }: NetEdge, out: Float64Array, [from, to]: readonly [number, number]): Polyline | undefined {
  const [first, end] = [arc.findIndex((s) => s >= from), arc.findLastIndex((s) => s <= to) + 1];
  return end - first < 3 ? undefined : offsetEdge({ xy: line.xy.subarray(2 * first, 2 * end) }, out.subarray(first, end));
}
