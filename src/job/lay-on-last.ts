import { unwatched } from "#base/watch.ts";
import { nominalSize } from "#last/nominal-size.ts";
import { carriedPanels } from "#lasting/carry.ts";
import { lastingFrom } from "#lasting/settings.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { partsFrom } from "#pieces/choices.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { seamSettingsOf } from "#pieces/rules/seams.ts";
import { beneathFrom, layBeneath } from "#shell/beneath.ts";
import { cutBottom, layBottomFlat } from "#shell/bottom.ts";
import { cutShell, fineTriangles, type CutShell } from "#shell/cut.ts";
import { halvesOf } from "#shell/halves.ts";
import { layFlat, layFree, type FreeLay } from "#shell/lay-flat.ts";
import { layPanels, type PanelCut } from "#shell/panels.ts";
import { refuseImpossible } from "#shell/possible.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import type { FlatShell } from "#shell/shell.ts";
import { judgeShellSettings, judgeTension, toplineAsked } from "#shell/tension.ts";
import { correctedShell } from "./corrected.ts";
import type { Files } from "./files.ts";
import type { Job } from "./job.ts";
import { leathersOf } from "./leathers.ts";
import type { Run } from "./memory.ts";
import { lastOf } from "./read-last.ts";
import type { RunOptions } from "./run-options.ts";

/**
 * The upper of a job on its last, up to where pieces are cut from it: each stage with its key, by which later ones are remembered.
 * @throws Refusal as the stages do
 */
export function layOnLast(stages: Run, job: Job, files: Files, { watch = unwatched, triangles = fineTriangles, follow = false, withoutPieces = false, withPanels = false, onRules, onLast: tellLast }: RunOptions) {
  const read = lastOf(stages, job, files, watch);
  const { last, findings } = read.value;
  tellLast?.({ last, findings });
  const lineRules = lineRulesFor(last);
  const pieceRules = pieceRulesFor(last, job.shell.edge);
  const shellRules = shellRulesFor(last, job.shell);
  onRules?.({ line: lineRules, shell: shellRules, piece: pieceRules });
  const lineSettings = settle(lineRules, job.lines);
  const shellSettings = shellSettingsFrom(shellRules, job.shell);
  const pieceSettings = pieceSettingsFrom(pieceRules, job.pieces);

  const board = stages.make("forme", [read.key], () => drawingBoard(last));
  const bottom = stages.make("bottom", [read.key], () => layBottomFlat(cutBottom(last)));
  const drawn = stages.make("lines", [board.key, lineSettings], () => drawLines(board.value, lineRules, lineSettings));
  const before = follow ? { shell: stages.former<CutShell>("shell"), lay: stages.former<FreeLay>("flatten"), flat: stages.former<FlatShell>("tension") } : undefined;
  const shell = stages.make("shell", [drawn.key, triangles, follow], () => cutShell(board.value, drawn.value, triangles, before?.shell));
  const parts = partsFrom(job.parts);
  const beneathSettings = beneathFrom(pieceSettings, shellSettings, parts.sideLining);
  refuseImpossible(beneathSettings, pieceRules, shellRules);
  const beneath = stages.make("beneath", [shell.key, beneathSettings], () => layBeneath(shell.value, last, beneathSettings));
  const free = stages.make("flatten", [beneath.key], () => layFree(beneath.value.over, before?.lay));
  const { springMm, toplineShorter, halves, edge } = shellSettings;
  const flat = stages.make("tension", [free.key, springMm, toplineShorter], () =>
    layFlat(beneath.value.over, springMm, { onLast: shell.value, toplineMm: toplineAsked(shell.value, toplineShorter), free: free.value, like: before?.flat }),
  );
  // Told where both halves are to share one form; separate, they may differ as they will.
  const shared = halves === "mean" ? stages.make("halves", [flat.key], () => halvesOf(flat.value)).value.findings : [];
  const lasting = lastingFrom(job.lasting);
  const leathers = stages.make("leather", [job.leather, job.log, pieceSettings.upperThicknessMm, pieceSettings.liningThicknessMm, last.name], () => leathersOf(job, pieceSettings, last.name));
  const labels = { title: job.title, size: job.size || `EU ${nominalSize(last).withoutPoint}` };
  const { lines } = drawn.value;
  const cutAlike = { board: board.value, drawn: drawn.value, onLast: shell.value, over: beneath.value.over };
  // While a drag is followed the pieces are those of before: there is nothing to correct.
  const fit = lasting.correct && !follow ? stages.make("correct", [flat.key, leathers.key, lasting, edge], () => correctedShell({ flat: flat.value, last, lines, lasting, leathers: leathers.value, edge })) : undefined;
  const plainPanels =
    parts.cut === "back-seam" || (withoutPieces && !withPanels)
      ? undefined
      : stages.make("panels", [flat.key, parts.cut, seamSettingsOf(pieceSettings)], () => layPanels({ ...cutAlike, cut: parts.cut as PanelCut, seams: pieceSettings, toplineShorter, springMm, flat: flat.value }));
  const panels = plainPanels && fit ? stages.make("parts for the leather", [plainPanels.key, fit.key], () => carriedPanels(fit.value.corrected, plainPanels.value)) : plainPanels;
  return {
    read, board, bottom, drawn, shell, beneath, free, flat, leathers, fit, plainPanels, panels, cutAlike, labels, parts, lasting, lineRules, pieceRules, shellRules, shellSettings, pieceSettings,
    findings: [...findings, ...lines.findings, ...judgeShellSettings(shellRules, shellSettings), ...beneath.value.findings, ...flat.value.findings, ...judgeTension(flat.value, shellSettings), ...shared, ...leathers.value.findings, ...(fit?.value.shown.findings ?? [])],
  };
}

export type LaidUpper = ReturnType<typeof layOnLast>;
