import { reversed } from "#plane/along.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { usualParts } from "./choices.ts";
import type { Draft } from "./draft.ts";
import { cutPanel } from "./edges/cut-panel.ts";
import type { Drawn } from "./edges/edge-lines.ts";
import type { Labels } from "./label-text.ts";
import type { LabelBlock } from "./labels.ts";
import { lineMark } from "./marks.ts";
import { wholePanel } from "./net-panels.ts";
import type { NetUpper } from "./net-upper.ts";
import type { Xy } from "./piece.ts";
import type { PieceSettings } from "./settings.ts";
import { upperLabels as labelsOf } from "./upper/labels.ts";
import * as marks from "./upper/marks.ts";
import { netCard, upperPieces } from "./upper/pieces.ts";
import { evenAllowance } from "./edges/allowance.ts";
import { widthsAlong } from "./zones.ts";

// What is drawn from a whole net upper by itself: card and piece of a whole-cut with its back seam closed, and the parts that a lining
// in one shares with it.

export const netUpperCard = (net: NetUpper, labels: Labels): Draft => netCard(wholePanel(net), labels);

/** The whole-cut with all choices as usual; its topline is raw where nothing is folded. */
export function cutUpper(net: NetUpper, settings: PieceSettings, labels: Labels): Draft {
  const edge = settings.toplineFoldMm > 0 ? "taped" : "raw";
  return upperPieces({ panels: [wholePanel(net)], settings, chosen: { ...usualParts, edge }, labels }).drafts[1]!;
}

/** A trimmed whole: outward from the feather at its running length; outward from back edges and stitch lines, one width a point. */
export interface Allowances {
  readonly margin: (s: number) => number;
  readonly backMedial: Float64Array;
  readonly backLateral: Float64Array;
  readonly stitchMedial: Float64Array;
  readonly stitchLateral: Float64Array;
  readonly toplineMm: number;
  readonly folded?: false;
}

/** A stitch line from cutting edge to cutting edge, seat first, and where it crosses the topline. */
export interface Seam {
  readonly line: Polyline;
  readonly backPoint: Xy;
}

export interface CutEdges {
  readonly outline: Outline;
  /** Where it is trimmed. */
  readonly foldLine: Polyline;
  readonly seamMedial: Seam;
  readonly seamLateral: Seam;
}

/** The whole with its back seam closed and its topline trimmed after sewing. */
export function allowancesAdded(net: NetUpper, { margin, backMedial, backLateral, stitchMedial, stitchLateral, toplineMm }: Allowances): CutEdges {
  const { outline, edges, corners } = cutPanel(wholePanel(net), [
    { finish: "lasting", widths: widthsAlong(net.feather.arc, margin) },
    { finish: "seam", widths: backMedial, at: stitchMedial },
    evenAllowance(net.topline, "trim", toplineMm),
    { finish: "seam", widths: backLateral, at: stitchLateral },
  ]);
  return {
    outline,
    foldLine: edges[2]!.line,
    seamMedial: { line: edges[1]!.line, backPoint: corners[1]! },
    seamLateral: { line: reversed(edges[3]!.line), backPoint: corners[2]! },
  };
}

export function seamLines({ seamMedial, seamLateral }: CutEdges): readonly Drawn[] {
  return [lineMark("back seam, inside", "stitch", seamMedial.line), lineMark("back seam, outside", "stitch", seamLateral.line)];
}

export const insideLines = (net: NetUpper, within: Outline, cut: Outline): readonly Drawn[] => [...marks.insideLines(wholePanel(net), cut), ...marks.stretchArrow(wholePanel(net), within)];

export const centreNotches = (net: NetUpper, outline: Outline, throatDepthMm: number): readonly Drawn[] => marks.centreNotches(wholePanel(net), outline, throatDepthMm);

export function featherNotches(net: NetUpper, cut: Outline, margin: (s: number) => number): readonly Drawn[] {
  const widthAt: marks.WidthAt = (_, s) => margin(s);
  return [...marks.jointNotches(wholePanel(net), cut, widthAt), ...marks.waistNotches(wholePanel(net), cut, widthAt)];
}

export const toplineNotches = (net: NetUpper, outMm: number, depthMm: number): readonly Drawn[] => marks.toplineNotches(wholePanel(net), outMm, depthMm);

/** Back points and seats on both stitch lines. */
export interface BackPoints {
  readonly backMedial: Xy;
  readonly backLateral: Xy;
  readonly seatMedial: Xy;
  readonly seatLateral: Xy;
}

export function backPricks({ backMedial, backLateral, seatMedial, seatLateral }: BackPoints): readonly Drawn[] {
  const prick = (name: string, at: Xy): Drawn => ({ kind: "prick", name, at });
  return [prick("back point, inside", backMedial), prick("back point, outside", backLateral), prick("seat, inside", seatMedial), prick("seat, outside", seatLateral)];
}

export const upperLabels = (net: NetUpper, within: Outline, drawn: readonly Drawn[], lines: LabelBlock["lines"]): readonly LabelBlock[] => labelsOf(wholePanel(net), within, drawn, lines);
