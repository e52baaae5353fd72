import { finding } from "#base/findings.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import { carriedLining, carriedPanel, carriedPanels } from "#lasting/carry.ts";
import { lastingFrom } from "#lasting/settings.ts";
import { nominalSize } from "#last/nominal-size.ts";
import { curveLength } from "#last/surface-curve.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import type { LineRules } from "#lines/lines.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { partsFrom } from "#pieces/choices.ts";
import { cutPieces, cutTapedPieces } from "#pieces/cut.ts";
import { Groups } from "#pieces/groups.ts";
import { foldLeftOut, pieceRulesFor, pieceRulesForTape, pieceSettingsFrom } from "#pieces/rules.ts";
import { seamSettingsOf } from "#pieces/rules/seams.ts";
import type { PieceRules, PieceSettings } from "#pieces/settings.ts";
import { tapedPartsFrom } from "#pieces/tape-lacks.ts";
import { beneathFrom, heelLonger, layBeneath } from "#shell/beneath.ts";
import { cutBottom, layBottomFlat } from "#shell/bottom.ts";
import { cutShell, fineTriangles, type CutShell } from "#shell/cut.ts";
import { halvesOf } from "#shell/halves.ts";
import { layPanels, type PanelCut } from "#shell/panels.ts";
import { layHeel, openHeel } from "#shell/panel-heel.ts";
import { layFlat, layFree, layLining, type FreeLay } from "#shell/lay-flat.ts";
import { judgeShellSettings, judgeTension, toplineAsked } from "#shell/tension.ts";
import { refuseImpossible } from "#shell/possible.ts";
import { shellChoices, shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import type { ShellRules, ShellSettings } from "#shell/settings.ts";
import type { FlatShell, ToplineTension } from "#shell/shell.ts";
import type { TapeSaid } from "#tape/said.ts";
import { tapedShell } from "#tape/from-traced.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import { correctedShell } from "./corrected.ts";
import type { Files } from "./files.ts";
import type { Job } from "./job.ts";
import { leathersOf } from "./leathers.ts";
import { Memory, type Run } from "./memory.ts";
import type { LastPair, Pair, TapedPair } from "./pair.ts";
import { traced } from "./pictures.ts";
import { lastOf } from "./read-last.ts";

export interface RunOptions {
  readonly watch?: Watch;
  /** A clock in ms, handed in from outside; without one no times are reported. */
  readonly now?: () => number;
  /** How fine the shell is cut; {@link fineTriangles} unless a drag is being followed. */
  readonly triangles?: number;
  /** A line is being dragged: the shell may be cut and laid flat from the one before, which is much quicker and comes out nearly the same. */
  readonly follow?: boolean;
  /** Gives the pieces of the last full run, or none: they are not looked at while a drag is followed, and cost as much as the rest. */
  readonly withoutPieces?: boolean;
  /** The panels of a cut in panels also where the pieces are left out. */
  readonly withPanels?: boolean;
  /** Told the rules as soon as the last is there, so that they are known also where the job is refused later on. */
  readonly onRules?: (rules: Rules) => void;
  /** Told the last itself likewise: where no pair can be made of it, it can still be looked at and put right. */
  readonly onLast?: (read: Pick<LastPair, "last" | "findings">) => void;
  /** Told each picture of a tape as it is traced: where no pattern can be made of them, they can still be looked at. */
  readonly onTraced?: (picture: TracedPicture) => void;
}

/** What the rules of construction say for one last; a taped pattern has its lines already. */
export interface Rules {
  readonly line?: LineRules;
  readonly shell?: ShellRules;
  readonly piece: PieceRules;
}

/**
 * The one place where the stages meet. Each stage is a pure function; its last result is remembered under what it was made from,
 * so that an edit recomputes only what follows from it. For a job with pictures `readyFor(job)` (pictures.ts) must have been awaited.
 * Throws Refusal for what cannot be used.
 */
export class Pipeline {
  readonly #memory = new Memory();

  run(job: Job, files: Files, options: RunOptions = {}): Pair {
    const { watch = unwatched, now = () => 0 } = options;
    const stages = this.#memory.start(watch, now);
    return job.last.from === "tape" ? onTape(stages, job, job.last.tape, files, options) : onLast(stages, job, files, options);
  }
}

type Cut = ReturnType<typeof cutPieces>;

/** How far the heel's sheet reaches along the feather line: as far as stiffener and heel pocket do, and a little on. */
const heelReach = ({ liningPocketWingMm, liningPocketTopMm }: PieceSettings, { counterInnerMm, counterOuterMm }: ShellSettings) => {
  const pocket = Math.max(liningPocketWingMm, liningPocketTopMm);
  return { medial: Math.max(counterInnerMm, pocket) + beyondHeelMm, lateral: Math.max(counterOuterMm, pocket) + beyondHeelMm };
};
const beyondHeelMm = 12;

/** By how much each half of the lining's topline is shorter on the card than on the last, mm. */
const liningShorter = ({ tension }: FlatShell) => ({ medial: shorterBy(tension.medial), lateral: shorterBy(tension.lateral) });
const shorterBy = ({ onLastMm, overMm, flatMm }: ToplineTension): number => onLastMm * (1 - flatMm / overMm);

/** The pieces of this run, or where they are not looked at those of the last full one. */
const cutOr = (stages: Run, withoutPieces: boolean, anew: () => Cut): Cut => (withoutPieces ? (stages.former<Cut>("pieces") ?? noPieces) : anew());
/** What the pair holds of it. */
const withoutGroups = ({ pieces, strips, grounds, seams, made }: Cut) => ({ pieces, strips, grounds, ...(seams && { seams }), ...(made && { made }) });
const noPieces: Cut = { pieces: [], strips: [], findings: [], grounds: [], groups: new Groups() };

function onLast(stages: Run, job: Job, files: Files, { watch = unwatched, triangles = fineTriangles, follow = false, withoutPieces = false, withPanels = false, onRules, onLast: tellLast }: RunOptions): LastPair {
  const read = lastOf(stages, job, files, watch);
  const { last, findings, ...beside } = read.value;
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
  const corrected = fit?.value.corrected;
  const panels =
    parts.cut === "back-seam" || (withoutPieces && !withPanels)
      ? undefined
      : stages.make("panels", [flat.key, fit?.key, parts.cut, seamSettingsOf(pieceSettings)], () => {
          const laid = layPanels({ ...cutAlike, cut: parts.cut as PanelCut, seams: pieceSettings, toplineShorter, springMm, flat: flat.value });
          return corrected ? carriedPanels(corrected, laid) : laid;
        });
  const cut = cutOr(stages, withoutPieces, () => {
    const lining = stages.make("lining", [flat.key, fit?.key], () => {
      const laid = layLining(shell.value, flat.value, free.value);
      return { flat: corrected ? carriedLining(corrected, laid) : laid, heelLongerMm: heelLonger(beneath.value.rows) };
    });
    const reachMm = heelReach(pieceSettings, shellSettings);
    const opened = stages.make("heel part", [beneath.key, reachMm], () => openHeel({ ...cutAlike, reachMm, beyondMm: beyondHeelMm })).value;
    const heel = stages.make("heel", [lining.key, reachMm], () => {
      // The pocket is drawn together with the lining's topline; a stiffener keeps its own form, and is not pulled.
      const stiffener = layHeel(opened, { on: "onLast" });
      const pocket = layHeel(opened, { on: "onLast", shorterMm: liningShorter(flat.value), like: stiffener });
      return { stiffener, pocket: corrected ? carriedPanel(corrected, pocket) : pocket };
    });
    return stages.make("pieces", [lining.key, panels?.key, heel.key, halves, edge, parts, pieceSettings, shellSettings, labels], () =>
      cutPieces({
        last, lines, flat: corrected?.flat ?? flat.value, ...(panels && { panels: panels.value }), lining: lining.value, heel: heel.value, bottom: bottom.value, halves, edge, parts,
        stiff: shellSettings, settings: pieceSettings, labels, before: stages.former<Cut>("pieces"),
      }),
    ).value;
  });
  return {
    from: "last",
    job,
    labels,
    last,
    ...beside,
    lineRules,
    shellRules,
    shellSettings,
    pieceRules,
    pieceSettings,
    lines,
    shell: shell.value,
    toplineMm: {
      onLast: curveLength(lines.toplineMedial) + curveLength(lines.toplineLateral),
      flat: flat.value.tension.medial.flatMm + flat.value.tension.lateral.flatMm,
    },
    beneath: beneath.value.rows,
    flat: flat.value,
    freeUv: free.value.flat.uv,
    lasting,
    leathers: leathers.value,
    ...(fit && { corrected: fit.value.shown }),
    ...(withPanels && panels && { panels: panels.value }),
    bottom: bottom.value,
    parts,
    ...withoutGroups(cut),
    findings: [...findings, ...lines.findings, ...judgeShellSettings(shellRules, shellSettings), ...beneath.value.findings, ...flat.value.findings, ...judgeTension(flat.value, shellSettings), ...shared, ...leathers.value.findings, ...(fit?.value.shown.findings ?? []), ...foldLeftOut(edge, job.pieces), ...cut.findings],
    timesMs: stages.timesMs,
  };
}

/** The same from a maker's tape: it has its lines and lies flat already. */
function onTape(stages: Run, job: Job, said: TapeSaid, files: Files, { watch = unwatched, withoutPieces = false, onRules, onTraced }: RunOptions): TapedPair {
  const pictures = traced(stages, said.photos, said.barMm === undefined ? {} : { barMm: said.barMm }, files, watch, onTraced);
  const shots = pictures.map(({ value }) => value);
  const tape = stages.make("tape", [said, ...pictures.map(({ key }) => key)], () => tapedShell(shots, said));
  const { edge = shellChoices.edge, springMm = 0 } = job.shell;
  const pieceRules = pieceRulesForTape(tape.value, edge);
  onRules?.({ piece: pieceRules });
  const pieceSettings = pieceSettingsFrom(pieceRules, job.pieces);
  const parts = tapedPartsFrom(job.parts);
  const stiff = shellSettingsFrom(shellRulesFor({ measures: { lastLength: tape.value.length.mm } }, job.shell), job.shell);
  const labels = { title: job.title, size: job.size };
  const cut = cutOr(stages, withoutPieces, () =>
    stages.make("pieces", [tape.key, edge, parts, pieceSettings, stiff, labels], () => cutTapedPieces(tape.value, { settings: pieceSettings, labels, edge, parts, stiff, before: stages.former<Cut>("pieces") })).value,
  );
  const taped = finding("tape-topline", { toplineMm: tape.value.medial.lengths.topline + tape.value.lateral.lengths.topline });
  const idle = [taped, ...(springMm === 0 ? [] : [finding("tape-spring", { springMm })]), ...(Object.keys(job.lines).length === 0 ? [] : [finding("tape-lines", {})])];
  return {
    from: "tape",
    job,
    labels,
    tape: tape.value,
    traced: shots,
    pieceRules,
    pieceSettings,
    parts,
    ...withoutGroups(cut),
    findings: [...shots.flatMap(({ traced: { findings } }) => findings), ...tape.value.findings, ...idle, ...foldLeftOut(edge, job.pieces), ...cut.findings],
    timesMs: stages.timesMs,
  };
}
