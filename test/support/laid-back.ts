import type { Last } from "#last/last.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import type { LineSettings } from "#lines/lines.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { beneathFrom, layBeneath } from "#shell/beneath.ts";
import { checkTriangles } from "#shell/check-card.ts";
import type { CheckInput } from "#shell/check-input.ts";
import { cutShell } from "#shell/cut.ts";
import { layFlat, layFree } from "#shell/lay-flat.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import type { ShellSettings } from "#shell/settings.ts";
import { toplineAsked } from "#shell/tension.ts";

/** How a card is asked for besides the defaults. */
export interface Asked {
  readonly shell?: Partial<ShellSettings>;
  readonly lines?: Partial<LineSettings>;
}

/** What the check needs of one last, made as the pipeline makes it; `triangles` of what is cut and of what is wrapped. */
export function readyToCheck(last: Last, { shell = {}, lines = {} }: Asked = {}, triangles = { cut: 5_000, wrapped: checkTriangles }): CheckInput {
  const board = drawingBoard(last);
  const lineRules = lineRulesFor(last);
  const drawn = drawLines(board, lineRules, settle(lineRules, lines));
  const shellRules = shellRulesFor(last, shell);
  const settings = shellSettingsFrom(shellRules, shell);
  const beneath = beneathFrom(pieceSettingsFrom(pieceRulesFor(last, settings.edge)), settings);
  const lay = (count: number) => {
    const onLast = cutShell(board, drawn, count);
    const { over } = layBeneath(onLast, last, beneath);
    const free = layFree(over);
    return { free, flat: layFlat(over, settings.springMm, { onLast, toplineMm: toplineAsked(onLast, settings.toplineShorter), free }) };
  };
  const cut = lay(triangles.cut);
  return {
    last,
    flat: cut.flat,
    freeUv: cut.free.flat.uv,
    coarse: lay(triangles.wrapped).flat,
    asked: { lines: drawn.lines.settings, shell: settings },
    rules: { lines: lineRules, shell: shellRules },
  };
}
