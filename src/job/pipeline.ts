import { finding } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { curveLength } from "#last/surface-curve.ts";
import { cutTapedPieces } from "#pieces/cut.ts";
import { Groups } from "#pieces/groups.ts";
import { foldLeftOut, pieceRulesForTape, pieceSettingsFrom } from "#pieces/rules.ts";
import { tapedPartsFrom } from "#pieces/tape-lacks.ts";
import { shellChoices, shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { tapedShell } from "#tape/from-traced.ts";
import type { TapeSaid } from "#tape/said.ts";
import { cutLaid, type Cut } from "./cut-laid.ts";
import type { Files } from "./files.ts";
import type { Job } from "./job.ts";
import { layOnLast } from "./lay-on-last.ts";
import { Memory, type Run } from "./memory.ts";
import type { LastPair, Pair, TapedPair } from "./pair.ts";
import { traced } from "./pictures.ts";
import type { RunOptions } from "./run-options.ts";

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

/** The pieces of this run, or where they are not looked at those of the last full one. */
const cutOr = (stages: Run, withoutPieces: boolean, anew: () => Cut): Cut => (withoutPieces ? (stages.former<Cut>("pieces") ?? noPieces) : anew());
/** What the pair holds of it. */
const withoutGroups = ({ pieces, strips, stitching, grounds, seams, made }: Cut) => ({ pieces, strips, stitching, grounds, ...(seams && { seams }), ...(made && { made }) });
const noPieces: Cut = { pieces: [], strips: [], stitching: [], findings: [], grounds: [], groups: new Groups() };

function onLast(stages: Run, job: Job, files: Files, options: RunOptions): LastPair {
  const laid = layOnLast(stages, job, files, options);
  const { shell, beneath, free, flat, leathers, fit, panels, bottom, labels, parts, lasting, lineRules, pieceRules, shellRules, shellSettings, pieceSettings } = laid;
  const { last, findings: _, ...beside } = laid.read.value;
  const { lines } = laid.drawn.value;
  const cut = cutOr(stages, options.withoutPieces ?? false, () => cutLaid(stages, laid));
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
    ...(options.withPanels && panels && { panels: panels.value }),
    bottom: bottom.value,
    parts,
    ...withoutGroups(cut),
    findings: [...laid.findings, ...foldLeftOut(shellSettings.edge, job.pieces), ...cut.findings],
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
