import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import type { Last } from "#last/last.ts";
import type { LastMeasurements } from "#last/measured.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import type { LineSettings } from "#lines/lines.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { beneathFrom, layBeneath } from "#shell/beneath.ts";
import { cutShell } from "#shell/cut.ts";
import { layFlat, layFree } from "#shell/lay-flat.ts";
import { layPanels, type LaidPanels, type PanelCut } from "#shell/panels.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { toplineAsked } from "#shell/tension.ts";

export const lastOf = (measures: Partial<LastMeasurements> = {}): Last => lastFromMeasures({ ...demoMeasurements, ...measures }, "example last", () => {});

export type Table = ReturnType<typeof tableOf>;

/** All that panels are laid from, with everything at its rule but what is said. */
export function tableOf(last: Last, { lines = {}, pieces = {}, triangles = 3000 }: { readonly lines?: Partial<LineSettings>; readonly pieces?: Partial<PieceSettings>; readonly triangles?: number } = {}) {
  const rules = lineRulesFor(last);
  const board = drawingBoard(last);
  const drawn = drawLines(board, rules, settle(rules, lines));
  const onLast = cutShell(board, drawn, triangles);
  const seams = pieceSettingsFrom(pieceRulesFor(last), pieces);
  const { toplineShorter, ...rest } = shellSettingsFrom(shellRulesFor(last));
  const { over } = layBeneath(onLast, last, beneathFrom(seams, { ...rest, toplineShorter }));
  const free = layFree(over);
  const flat = layFlat(over, 0, { onLast, free, toplineMm: toplineAsked(onLast, toplineShorter) });
  return { last, board, drawn, onLast, over, seams, toplineShorter, flat };
}

export const layCut = (table: Table, cut: PanelCut, springMm = 0): LaidPanels => layPanels({ ...table, cut, springMm });
