import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import { bandOf, type Banding, type Pattern } from "#lasting/band.ts";
import { compensate, type Compensated, type Target } from "#lasting/compensate.ts";
import { fabricOf } from "#lasting/fabric.ts";
import type { Foretold } from "#lasting/foretold.ts";
import type { Lasted } from "#lasting/lasted.ts";
import type { LastingCase } from "#lasting/lasting-case.ts";
import { pullOver } from "#lasting/pull-over.ts";
import { swapped, type Swapped } from "#lasting/swap.ts";
import { turned, type Turned } from "#lasting/turn.ts";
import { panelledUpper, wholeUpper } from "#lasting/upper.ts";
import { leatherFrom } from "#leather/leather-from.ts";
import type { LeatherSaid } from "#leather/leather.ts";
import type { FlatShell } from "#shell/shell.ts";
import type { Files } from "./files.ts";
import type { Job } from "./job.ts";
import type { LastPair } from "./pair.ts";
import { Pipeline } from "./pipeline.ts";

/** How fine the upper is that is pulled over, and how fine for trials of which many are run. */
export const pulledTriangles = 5_000;
const coarseTriangles = 1_000;

/** What was pulled over and how it ended. */
export interface PulledOver {
  readonly lasted: Lasted;
  /** Where the upper lay flat: x0 y0 … of the vertices of its sheet, mm. */
  readonly flat: Float64Array;
}

/**
 * Pulls the uppers of jobs over their lasts. It takes seconds, so it is worked out only when it is asked for; what was pulled over last
 * is remembered. Nothing comes of a taped pattern, which has no last.
 */
export class Laster {
  readonly #pipeline: Pipeline;
  #pulled: { readonly key: string; readonly pair: LastPair; readonly over: PulledOver } | undefined;
  #banded: { readonly over: PulledOver; readonly banding: Banding } | undefined;

  /** With the pipeline that the pair was made in, its last need not be read again. */
  constructor(pipeline = new Pipeline()) {
    this.#pipeline = pipeline;
  }

  /**
   * The upper as it is cut, in its panels, pulled over draft by draft.
   * @throws Refusal as {@link Pipeline.run}, and `lasting-hole` where the last has a hole beneath the upper
   */
  pull(job: Job, files: Files, watch: Watch): PulledOver | undefined {
    const pair = this.#pipeline.run(job, files, { watch: () => watch("laid on", 0), triangles: pulledTriangles, withoutPieces: true, withPanels: true });
    if (pair.from === "tape") return undefined;
    const { last, lines, lasting, pieceSettings: margins } = pair;
    const key = JSON.stringify([job.lasting, job.parts.cut, job.pieces, job.leather, job.log]);
    const known = this.#pulled;
    if (known?.key === key && cutOf(known.pair) === cutOf(pair)) return known.over;
    const cut = pair.panels ? panelledUpper(pair.panels) : wholeUpper(cutFlat(pair));
    const over = { lasted: pullOver({ cut, last, lines, fabric: fabricOf(pair.leathers.upper, pair.leathers.lining, lasting, pair.shellSettings.edge), settings: lasting, margins }, { watch, frames: true }), flat: cut.flat };
    this.#pulled = { key, pair, over };
    return over;
  }

  /** Where the ends lie for leathers like these, from draws on a coarse upper in one piece. */
  band(job: Job, files: Files, watch: Watch): Banding | undefined {
    const over = this.pull(job, files, (stage, fraction) => watch(stage, fraction / 4));
    if (!over) return undefined;
    if (this.#banded?.over !== over) {
      const of = this.#caseOf(job, files)!;
      this.#banded = { over, banding: bandOf(of, patternOf(of, this.#pulled!.pair, over), { watch: (stage, fraction) => watch(stage, (1 + 3 * fraction) / 4) }) };
    }
    return this.#banded.banding;
  }

  /** Corrects the pattern until throat, back and sides end where they are asked; reckoned on an upper in one piece. */
  correct(job: Job, files: Files, watch: Watch, target: Target = {}): Compensated | undefined {
    const of = this.#caseOf(job, files);
    return of && compensate(of, { watch, target });
  }

  /** What turning upper and lining on the skin does to the ends. */
  turn(job: Job, files: Files, watch: Watch): Turned | undefined {
    const over = this.pull(job, files, (stage, fraction) => watch(stage, fraction / 2));
    if (!over) return undefined;
    const of = this.#caseOf(job, files)!;
    return turned(of, patternOf(of, this.#pulled!.pair, over), { watch: (stage, fraction) => watch(stage, (1 + fraction) / 2) });
  }

  /** Another leather for the upper on the same pattern. */
  swap(job: Job, files: Files, to: LeatherSaid, watch: Watch): Swapped | undefined {
    const known = this.band(job, files, (stage, fraction) => watch(stage, fraction / 2));
    if (!known) return undefined;
    const { pair, over } = this.#pulled!, of = this.#caseOf(job, files)!;
    const leather = leatherFrom(to, "upper", pair.pieceSettings.upperThicknessMm);
    return swapped(of, patternOf(of, pair, over), leather, { known, watch: (stage, fraction) => watch(stage, (1 + fraction) / 2) });
  }

  #caseOf(job: Job, files: Files): LastingCase | undefined {
    const run = (triangles: number) => this.#pipeline.run(job, files, { triangles, withoutPieces: true });
    const [fine, coarse] = [run(pulledTriangles), run(coarseTriangles)];
    if (fine.from === "tape" || coarse.from === "tape") return undefined;
    const { last, lines, lasting, leathers, shellSettings, pieceSettings } = fine;
    return { upper: leathers.upper, lining: leathers.lining, edge: shellSettings.edge, settings: lasting, last, lines, margins: pieceSettings, fine: fine.flat, coarse: coarse.flat };
  }
}

/** What the pieces are cut from. */
const cutFlat = ({ flat, corrected }: LastPair): FlatShell => corrected?.flat ?? flat;
const cutOf = (pair: LastPair): unknown => pair.panels ?? cutFlat(pair);

const patternOf = (of: LastingCase, pair: LastPair, { lasted }: PulledOver): Pattern => ({ uv: pair.corrected?.flat.uv ?? of.fine.uv, lasted });

/** Pulls a pair over and draws its band; what cannot be foretold is told as a finding, since the pattern itself can be made. */
export function foretell(laster: Laster, job: Job, files: Files, watch: Watch): { readonly foretold?: Required<Foretold>; readonly findings: readonly Finding[] } {
  try {
    const banding = laster.band(job, files, watch);
    const over = laster.pull(job, files, watch);
    return over && banding ? { foretold: { lasted: over.lasted, banded: banding.banded }, findings: over.lasted.findings } : { findings: [] };
  } catch (error) {
    if (error instanceof Refusal) return { findings: [finding("not-foretold", { why: error.message })] };
    throw error;
  }
}
