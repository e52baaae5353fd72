import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lastFromScan } from "#last/from-scan.ts";
import type { Last } from "#last/last.ts";
import { curveLength } from "#last/surface-curve.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import type { LineRules } from "#lines/lines.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { cleanScan } from "#mesh/clean.ts";
import { readScan } from "#mesh/read.ts";
import { cutPieces } from "#pieces/cut.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceRules } from "#pieces/settings.ts";
import { cutBottom, layBottomFlat } from "#shell/bottom.ts";
import { cutShell, fineTriangles } from "#shell/cut.ts";
import { flatLength, layFlat, layFree } from "#shell/lay-flat.ts";
import { digest } from "./digest.ts";
import { fileOf, type Files } from "./files.ts";
import type { Job, LastSource } from "./job.ts";
import { Memory } from "./memory.ts";
import type { Pair } from "./pair.ts";

export interface RunOptions {
  readonly watch?: Watch;
  /** A clock in ms, handed in from outside; without one no times are reported. */
  readonly now?: () => number;
  /** How fine the shell is cut; {@link fineTriangles} unless a drag is being followed. */
  readonly triangles?: number;
  /** Gives the pieces of the last full run, or none: they are not looked at while a drag is followed, and cost as much as the rest. */
  readonly withoutPieces?: boolean;
  /** Told the rules as soon as the last is there, so that they are known also where the job is refused later on. */
  readonly onRules?: (rules: Rules) => void;
}

/** What the rules of construction say for one last; a taped pattern has its lines already. */
export interface Rules {
  readonly line?: LineRules;
  readonly piece: PieceRules;
}

/**
 * The one place where the stages meet. Each stage is a pure function; its last result is remembered under what it was made from,
 * so that an edit recomputes only what follows from it. Throws Refusal for what cannot be used.
 */
export class Pipeline {
  readonly #memory = new Memory();

  run(job: Job, files: Files, { watch = unwatched, now = () => 0, triangles = fineTriangles, withoutPieces = false, onRules }: RunOptions = {}): Pair {
    const stages = this.#memory.start(watch, now);
    const lastKey = JSON.stringify(job.last) + (job.last.from === "scan" ? digest(fileOf(job.last.file, files)) : job.title);
    const last = stages.make("last", [lastKey], () => readLast(job, files, watch));
    const lineRules = lineRulesFor(last.value);
    const pieceRules = pieceRulesFor(last.value);
    onRules?.({ line: lineRules, piece: pieceRules });
    const lineSettings = settle(lineRules, job.lines);
    const pieceSettings = pieceSettingsFrom(pieceRules, job.pieces);

    const board = stages.make("forme", [last.key], () => drawingBoard(last.value));
    const bottom = stages.make("bottom", [last.key], () => layBottomFlat(cutBottom(last.value)));
    const drawn = stages.make("lines", [board.key, lineSettings], () => drawLines(board.value, lineRules, lineSettings));
    const shell = stages.make("shell", [drawn.key, triangles], () => cutShell(board.value, drawn.value, triangles));
    const free = stages.make("flatten", [shell.key], () => layFree(shell.value));
    const flat = stages.make("spring", [free.key, job.springMm], () => layFlat(shell.value, job.springMm, free.value));
    const labels = { title: job.title, size: job.size || nominalSize(last.value) };
    const cutAnew = () => stages.make("pieces", [flat.key, pieceSettings, labels], () =>
      cutPieces({ last: last.value, lines: drawn.value.lines, flat: flat.value, bottom: bottom.value, settings: pieceSettings, labels }),
    ).value;
    const cut = withoutPieces ? (stages.former<ReturnType<typeof cutPieces>>("pieces") ?? { pieces: [], findings: [] }) : cutAnew();
    const { lines } = drawn.value;
    return {
      from: "last",
      job,
      labels,
      last: last.value,
      lineRules,
      pieceRules,
      pieceSettings,
      lines,
      shell: shell.value,
      toplineMm: {
        onLast: curveLength(lines.toplineMedial) + curveLength(lines.toplineLateral),
        flat: flatLength(flat.value, shell.value.edges.toplineMedial) + flatLength(flat.value, shell.value.edges.toplineLateral),
      },
      flat: flat.value,
      bottom: bottom.value,
      pieces: cut.pieces,
      findings: [...last.value.findings, ...lines.findings, ...flat.value.findings, ...cut.findings],
      timesMs: stages.timesMs,
    };
  }
}

/** The first stage alone: the last of a job, with what was repaired and what is doubtful. */
export function readLast({ last, title }: Job, files: Files, watch: Watch): Last {
  if (last.from === "measures") return lastFromMeasures(last.measures, title, watch);
  if (last.from === "tape") throw new Refusal(finding("tape-has-no-last", {}));
  const { mesh, repairs } = cleanScan(readScan(last.file, fileOf(last.file, files)).mesh, watch);
  const found = lastFromScan(mesh, scanName(last), watch);
  return { ...found, findings: [...repairs, ...found.findings] };
}

const scanName = ({ file, said }: LastSource & { from: "scan" }) => ({ name: file, ...said });

/** The nominal size of a last: its stick length in Paris points of 20/3 mm (ISO/TS 19407:2015), to the half size. */
function nominalSize({ measures }: Last): string {
  return `EU ${Math.round((measures.stickLength * 3) / 10) / 2}`;
}
