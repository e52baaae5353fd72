import type { Half } from "#lines/feather.ts";
import { isFolded, type Chosen } from "../choices.ts";
import { cutNet, evenAllowance, type Allowance } from "../edges/allowance.ts";
import type { CornerKind } from "../edges/corner-kind.ts";
import { cutPanel, type CutPanel } from "../edges/cut-panel.ts";
import { featherWay } from "../edges/feather-way.ts";
import { lastingMargins, toeReachMm } from "../margins.ts";
import type { NetEdge, NetPanel } from "../panel.ts";
import type { PieceSettings } from "../settings.ts";
import { widthsAlong } from "../zones.ts";

/** The upper's panels with their allowances, and the lasting margin by number of panel and edge. */
export interface CutUpper {
  readonly panels: readonly CutPanel[];
  readonly margin: (panel: number, edge: number) => (s: number) => number;
}

/** Adds to every edge of the upper's panels what its role and the maker's choices ask for. */
export function cutUpperPanels(panels: readonly NetPanel[], settings: PieceSettings, chosen: Chosen): CutUpper {
  const margin = lastingMargins(featherWay(panels), settings);
  const cut = panels.map((panel, k) => {
    const allowances = panel.edges.map((_, e) => allowanceOf(panel, e, margin(k, e), settings, chosen));
    return cutPanel(panel, allowances, (corner) => backTop(panel, corner, allowances, settings, chosen));
  });
  return { panels: cut, margin };
}

function allowanceOf(panel: NetPanel, k: number, margin: (s: number) => number, settings: PieceSettings, chosen: Chosen): Allowance {
  const edge = panel.edges[k]!;
  switch (edge.role) {
    case "feather":
      return lasting(panel, k, margin, settings);
    case "topline":
      return topline(edge, settings, chosen);
    case "back":
      return chosen.backSeam === "closed" ? evenAllowance(edge, "seam", settings.backSeamMm, settings.skiveSeamMm) : cutNet(edge);
    case "inner waist":
    case "side":
      return sideSeam(panel, k, settings, chosen);
  }
}

/** The lasting margin, skived about the toe, where its pleats lie. */
function lasting({ edges, places }: NetPanel, k: number, margin: (s: number) => number, { skiveToeMm }: PieceSettings): Allowance {
  const toe = places.find((p) => p.name === "toe" && p.edge === k);
  return {
    finish: "lasting",
    widths: widthsAlong(edges[k]!.arc, margin),
    ...(toe && skiveToeMm > 0 && { skive: { mm: skiveToeMm, between: [toe.s - toeReachMm, toe.s + toeReachMm] as const } }),
  };
}

function topline(edge: NetEdge, settings: PieceSettings, { edge: made }: Chosen): Allowance {
  if (made === "bagged") return evenAllowance(edge, "bag", settings.toplineBagMm);
  return isFolded(made) ? folded(edge, settings.toplineFoldMm, settings) : cutNet(edge);
}

/** A fold, skived over twice its width and a little more; cut net where it is nothing. */
function folded(edge: NetEdge, foldMm: number, { skiveFoldMoreMm }: PieceSettings): Allowance {
  return foldMm > 0 ? evenAllowance(edge, "fold", foldMm, 2 * foldMm + skiveFoldMoreMm) : cutNet(edge);
}

function sideSeam(panel: NetPanel, k: number, settings: PieceSettings, { seam }: Chosen): Allowance {
  const edge = panel.edges[k]!;
  if (seam === "butted") return cutNet(edge);
  if (seam === "closed") return evenAllowance(edge, "seam", settings.seamMm, settings.skiveSeamMm);
  if (!liesOver(panel, k)) return evenAllowance(edge, "lap", settings.lapUnderMm, settings.skiveLapMm);
  const over = settings.lapFoldMm > 0 ? folded(edge, settings.lapFoldMm, settings) : cutNet(edge, settings.skiveRawMm);
  return { ...over, stitchInMm: settings.stitchInMm };
}

/**
 * Which bank of a lapped seam is seen: the one towards the toe, so the vamp over the quarters. Its edge faces the heel, and in walking
 * nothing that comes from the front gets under it (common practice, no source). The bank towards the toe comes after the feather line on
 * the inner half and before it on the outer one.
 */
export function liesOver({ edges }: NetPanel, k: number): boolean {
  const before = edges[(k + edges.length - 1) % edges.length]!;
  return (before.role === "feather") === (edges[k]!.half === "medial");
}

/** The half that carries the dog-tail: the outer one, so that the tongue points to the inside, where it is seen least. */
const dogTailHalf: Half = "lateral";

/** The maker's own corner at the top of a closed back seam; none elsewhere, or where the usual one stands. */
function backTop({ edges }: NetPanel, k: number, allowances: readonly Allowance[], { dogTailLongMm, dogTailWideMm }: PieceSettings, chosen: Chosen): CornerKind | undefined {
  const next = (k + 1) % edges.length;
  const back = [edges[k]!, edges[next]!].find((e) => e.role === "back");
  const onTop = [k, next].find((e) => edges[e]!.role === "topline");
  if (!back || onTop === undefined || chosen.backSeam !== "closed") return undefined;
  const { finish } = allowances[onTop]!;
  if (chosen.backTop === "notch" && finish === "fold") return { kind: "snip" };
  // Turned out with the lining, or under a strip, a tongue has no place.
  if (chosen.backTop === "dog-tail" && finish !== "bag" && !chosen.backStrip && back.half === dogTailHalf) return { kind: "dog-tail", longMm: dogTailLongMm, wideMm: dogTailWideMm };
  return undefined;
}
