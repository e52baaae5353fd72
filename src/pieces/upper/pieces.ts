import type { Chosen } from "../choices.ts";
import type { Draft } from "../draft.ts";
import { edgeLines, skiveLines, type Drawn } from "../edges/edge-lines.ts";
import { edgesOf } from "../edges/places.ts";
import { panelOutline } from "../edges/panel-outline.ts";
import type { CutPanel } from "../edges/cut-panel.ts";
import { seamMarks } from "../edges/seam-marks.ts";
import { pieceLines, type Labels } from "../label-text.ts";
import { readable } from "../labels.ts";
import { onPiece } from "../inside-piece.ts";
import { lastingDrafts } from "../lasting-drafts.ts";
import { foldNotchDepthMm, notchDepthMm } from "../marks.ts";
import { edgePoint } from "../net-upper.ts";
import type { NetPanel } from "../panel.ts";
import type { Parts } from "../parts.ts";
import type { PieceSettings } from "../settings.ts";
import { cutUpperPanels, type CutUpper } from "./allowances.ts";
import { checkUpperCut } from "./check-cut.ts";
import { dogTailPlace } from "./dog-tail-place.ts";
import { upperLabels } from "./labels.ts";
import { backPricks, centreNotches, insideLines, jointNotches, stretchArrow, toplineNotches, toplineTicks, waistNotches, type WidthAt } from "./marks.ts";
import { correctedNotes, upperNotes, type CorrectedFor } from "./notes.ts";
import { upperStrips } from "./tapes.ts";
import { panelWord } from "../words.ts";

/** The net panels before they were corrected for a leather, in the order of the others. */
export interface CardPanels {
  readonly panels: readonly NetPanel[];
  readonly correctedFor: CorrectedFor;
}

export interface UpperInput {
  /** The whole net upper, or what it is cut into, laid flat each by itself. */
  readonly panels: readonly NetPanel[];
  /** Where those were corrected for a leather: card does not stretch, and is cut from these. */
  readonly cards?: CardPanels;
  readonly settings: PieceSettings;
  readonly chosen: Chosen;
  readonly labels: Labels;
}

/** Card and cut piece of every panel of the upper, its pricks still lacking since more may be laid on it, the strips that go with them, and rules that contradict each other. */
export function upperPieces({ panels, cards, settings, chosen, labels }: UpperInput): Parts {
  const cut = cutUpperPanels(panels, settings, chosen);
  const drafts = cut.panels.flatMap((panel, k) => [cards ? plainCard(cards.panels[k]!, labels) : netCard(panels[k]!, labels), cutPiece(panel, k, cut, { settings, chosen, labels, ...(cards && { correctedFor: cards.correctedFor }) })]);
  return { drafts, strips: upperStrips(panels, settings, chosen), findings: checkUpperCut(cut, settings, chosen) };
}

/** The net panel as a card to lay on the leather and to hold against the last. */
export function netCard(panel: NetPanel, labels: Labels, notes: readonly string[] = ["net, no allowance"]): Draft {
  const outline = panelOutline(panel);
  const none: WidthAt = () => 0;
  const corners = panel.edges.map((_, k) => endOf(panel, k));
  const marks = onPiece(outline, [
    ...insideLines(panel, outline),
    ...stretchArrow(panel, outline),
    ...centreNotches(panel, outline, notchDepthMm),
    ...jointNotches(panel, outline, none),
    ...waistNotches(panel, outline, none),
    ...toplineNotches(panel, 0, notchDepthMm),
    ...seamMarks(panel, () => ({ outMm: 0, seen: false })),
    ...backPricks(panel, corners),
  ]);
  const name = `${panelWord(panel)}, net`;
  const lines = pieceLines({ name, material: "card", notes, count: 1, labels });
  return { name, material: "card", net: true, outline, marks, labels: upperLabels(panel, outline, marks, lines), directionDeg: directionOf(marks), ground: panel.name };
}

/** The card of a pattern that is cut smaller for its leather: it lies on the last, which the leather does only once it is pulled. Its sheet is none of those that are cut. */
function plainCard(panel: NetPanel, labels: Labels): Draft {
  const { ground: _, ...card } = netCard(panel, labels, ["net, for the last,", "leather is cut smaller"]);
  return card;
}

const endOf = ({ edges }: NetPanel, k: number): readonly [number, number] => edgePoint(edges[k]!, edges[k]!.arc[edges[k]!.arc.length - 1]!);

function cutPiece(cut: CutPanel, number: number, { panels, margin }: CutUpper, { settings, chosen, labels, correctedFor }: Omit<UpperInput, "panels" | "cards"> & { readonly correctedFor?: CorrectedFor }): Draft {
  const { panel, outline } = cut;
  const within = panelOutline(panel);
  const widthAt: WidthAt = (edge, s) => margin(number, edge)(s);
  const topMm = toplineMm(cut, settings);
  const topDepthMm = Math.min(foldNotchDepthMm, topMm / 2);
  const marks = onPiece(outline, [
    ...edgeLines(cut),
    ...insideLines(panel, outline),
    ...stretchArrow(panel, within),
    ...centreNotches(panel, outline, topDepthMm),
    ...jointNotches(panel, outline, widthAt),
    ...waistNotches(panel, outline, widthAt),
    ...(topMm > 0 ? toplineNotches(panel, topMm, topDepthMm) : toplineTicks(panel)),
    ...seamMarks(panel, (k) => ({ outMm: seamMm(cut, k, settings), seen: cut.edges[k]!.finish === "raw" })),
    ...cut.snips.map(({ at, toward }): Drawn => ({ kind: "notch", name: "snip below the dog-tail", use: "snip", at, toward })),
    ...dogTailPlace(cut, panels, settings),
    ...backPricks(panel, cut.corners),
    ...skiveLines(cut),
  ]);
  const name = panelWord(panel);
  const lines = pieceLines({ name, material: "upper leather", notes: [...upperNotes(cut, chosen), ...(correctedFor ? correctedNotes(panel, correctedFor) : [])], count: 1, labels });
  const grips = lastingDrafts(panel, outline, marks);
  return {
    name,
    material: "upper leather",
    net: false,
    outline,
    marks: [...marks, ...grips.marks],
    labels: [...upperLabels(panel, within, marks, lines), ...grips.labels],
    directionDeg: directionOf(marks),
    ground: panel.name,
  };
}

/** What hides the notches of the topline: its fold or its seam; 0 where it is seen as it was cut. */
function toplineMm({ panel, edges }: CutPanel, { toplineFoldMm, toplineBagMm }: PieceSettings): number {
  const { finish } = edges[edgesOf(panel, "topline")[0] ?? 0]!;
  return finish === "fold" ? toplineFoldMm : finish === "bag" ? toplineBagMm : 0;
}

function seamMm({ edges }: CutPanel, k: number, { seamMm: closed, lapUnderMm, lapFoldMm }: PieceSettings): number {
  const { finish } = edges[k]!;
  return finish === "seam" ? closed : finish === "lap" ? lapUnderMm : finish === "fold" ? lapFoldMm : 0;
}

/** Degrees of the arrow, which has no sense; along the centre line where there is no room for one. */
function directionOf(marks: readonly Drawn[]): number {
  const arrow = marks.find((m) => m.kind === "arrow");
  return arrow?.kind === "arrow" ? readable((Math.atan2(arrow.to[1] - arrow.from[1], arrow.to[0] - arrow.from[0]) * 180) / Math.PI) : 0;
}

