import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import { bandOf, coarseTrial, tenthMore, type Banding } from "#lasting/band.ts";
import { compensate, type Compensated, type Target } from "#lasting/compensate.ts";
import { draftEffects, type PulledPattern } from "#lasting/draft-effects.ts";
import { fabricOf } from "#lasting/fabric.ts";
import type { Foretold } from "#lasting/foretold.ts";
import type { Lasted } from "#lasting/lasted.ts";
import type { LastingCase } from "#lasting/lasting-case.ts";
import type { DraftEffects } from "#lasting/log-effects.ts";
import type { EndsByName, ThroatForetold } from "#lasting/log.ts";
import { trueMechanics } from "#lasting/mechanics.ts";
import { pullOver } from "#lasting/pull-over.ts";
import { whatHelps, type Honest } from "#lasting/remedies.ts";
import { swapped, type Swapped } from "#lasting/swap.ts";
import { turned, type Turned } from "#lasting/turn.ts";
import { panelledUpper, wholeUpper } from "#lasting/upper.ts";
import { leatherFrom } from "#leather/leather-from.ts";
import type { LeatherSaid } from "#leather/leather.ts";
import type { FlatShell } from "#shell/shell.ts";
import { marginTaken } from "./corrected.ts";
import type { Files } from "./files.ts";
import type { Job } from "./job.ts";
import type { LastPair } from "./pair.ts";
import { Pipeline } from "./pipeline.ts";

/** In how many triangles an upper is pulled over, and in how many for trials of which many are run. */
export interface PulledSizes {
  readonly pulled: number;
  readonly coarse: number;
}
export const usualSizes: PulledSizes = { pulled: 5_000, coarse: 850 };

/** What was pulled over and how it ended. */
export interface PulledOver {
  readonly lasted: Lasted;
  /** Where the upper lay flat: x0 y0 … of the vertices of its sheet, mm. */
  readonly flat: Float64Array;
}

/** A pattern that ends where it is asked, and what helps where the pattern alone does not. */
export interface CorrectedPattern extends Compensated {
  readonly advice: Honest;
}

/** A pull-over with what it was worked out from. */
interface Pulled {
  readonly key: string;
  readonly pair: LastPair;
  readonly over: PulledOver;
}

/**
 * Pulls the uppers of jobs over their lasts. It takes seconds, so it is worked out only when it is asked for; what was pulled over last
 * is remembered. Nothing comes of a taped pattern, which has no last.
 */
export class Laster {
  readonly #pipeline: Pipeline;
  readonly #sizes: PulledSizes;
  #pulled: Pulled | undefined;
  #tenth: { readonly over: PulledOver; readonly perTenth: EndsByName } | undefined;
  #banded: { readonly over: PulledOver; readonly banding: Banding } | undefined;

  /** With the pipeline that the pair was made in, its last need not be read again. */
  constructor(pipeline = new Pipeline(), sizes = usualSizes) {
    this.#pipeline = pipeline;
    this.#sizes = sizes;
  }

  /**
   * The upper as it is cut, in its panels, pulled over draft by draft.
   * @throws Refusal as {@link Pipeline.run}, and `lasting-hole` where the last has a hole beneath the upper
   */
  pull(job: Job, files: Files, watch: Watch): PulledOver | undefined {
    return this.#pull(job, files, watch)?.over;
  }

  /** Where the ends lie for leathers like these, from draws on a coarse upper in one piece. */
  band(job: Job, files: Files, watch: Watch): Banding | undefined {
    const pulled = this.#pull(job, files, part(watch, 0, 0.25));
    if (!pulled) return undefined;
    const known = this.#knownBand(pulled);
    if (known) return known;
    const of = this.#caseOf(job, files, watch)!;
    const banding = bandOf(of, patternOf(of, pulled), { watch: part(watch, 0.25, 1) });
    this.#banded = { over: pulled.over, banding };
    return banding;
  }

  /** What a shoe's throat is held against when it is measured: the pull-over, and two more on a coarse upper for how it moves with the leather. */
  throatForetold(job: Job, files: Files, watch: Watch): ThroatForetold | undefined {
    const pulled = this.#pull(job, files, part(watch, 0, 0.8));
    if (!pulled) return undefined;
    const perTenth = this.#knownBand(pulled)?.perTenth ?? this.#perTenth(job, files, pulled, part(watch, 0.8, 1));
    return { throatDepthMm: pulled.over.lasted.ends.throatDepthMm, perTenthMm: perTenth.throatDepthMm, factor: pulled.pair.leathers.learned.factor };
  }

  /** Corrects the pattern until throat, back and sides end where they are asked; reckoned on an upper in one piece. Says what helps where that is not enough; a band counts where it was drawn before. */
  correct(job: Job, files: Files, watch: Watch, target: Target = {}): CorrectedPattern | undefined {
    const pair = this.#pairOf(job, files, watch), of = this.#caseOf(job, files, watch);
    if (!pair || !of) return undefined;
    const found = compensate(of, { watch: part(watch, 0, 0.8), target });
    const known = this.#knownFor(pair);
    return { ...found, advice: whatHelps(of, { ...found, target }, known && this.#knownBand(known), { watch: part(watch, 0.8, 1) }) };
  }

  /** What turning upper and lining on the skin does to the ends. */
  turn(job: Job, files: Files, watch: Watch): Turned | undefined {
    const pulled = this.#pull(job, files, part(watch, 0, 0.5));
    if (!pulled) return undefined;
    const of = this.#caseOf(job, files, watch)!;
    return turned(of, patternOf(of, pulled), { watch: part(watch, 0.5, 1) });
  }

  /** What one more newton at each draft does: for the advice to a pair that was measured. */
  draftEffects(job: Job, files: Files, watch: Watch): DraftEffects | undefined {
    const pulled = this.#pull(job, files, part(watch, 0, 0.5));
    if (!pulled) return undefined;
    const of = this.#caseOf(job, files, watch)!;
    return draftEffects(of, patternOf(of, pulled), { watch: part(watch, 0.5, 1) });
  }

  /** Another leather for the upper on the same pattern. */
  swap(job: Job, files: Files, to: LeatherSaid, watch: Watch): Swapped | undefined {
    const known = this.band(job, files, part(watch, 0, 0.5));
    if (!known) return undefined;
    const pulled = this.#pulled!, of = this.#caseOf(job, files, watch)!;
    const leather = leatherFrom(to, "upper", pulled.pair.pieceSettings.upperThicknessMm);
    return swapped(of, patternOf(of, pulled), leather, { known, watch: part(watch, 0.5, 1) });
  }

  /** How the ends move for an upper that gives a tenth more, mm. */
  #perTenth(job: Job, files: Files, pulled: Pulled, watch: Watch): EndsByName {
    if (this.#tenth?.over === pulled.over) return this.#tenth.perTenth;
    const of = this.#caseOf(job, files, watch)!, trial = coarseTrial(of, patternOf(of, pulled), trueMechanics);
    let done = 0;
    const { perTenth } = tenthMore(of, (making) => trial(making, part(watch, done / 2, ++done / 2)));
    this.#tenth = { over: pulled.over, perTenth };
    return perTenth;
  }

  #pull(job: Job, files: Files, watch: Watch): Pulled | undefined {
    const pair = this.#pairOf(job, files, watch);
    if (!pair) return undefined;
    const known = this.#knownFor(pair);
    if (known) return known;
    const { last, lines, lasting, leathers, shellSettings, pieceSettings: margins } = pair;
    const cut = pair.panels ? panelledUpper(pair.panels) : wholeUpper(cutFlat(pair));
    const lasted = pullOver({ cut, last, lines, fabric: fabricOf(leathers.upper, leathers.lining, lasting, shellSettings.edge), settings: lasting, margins }, { watch, frames: true });
    this.#pulled = { key: keyOf(pair), pair, over: { lasted, flat: cut.flat } };
    return this.#pulled;
  }

  #pairOf(job: Job, files: Files, watch: Watch): LastPair | undefined {
    const pair = this.#pipeline.run(job, files, { watch: beforehand(watch), triangles: this.#sizes.pulled, withoutPieces: true, withPanels: true });
    return pair.from === "tape" ? undefined : pair;
  }

  #knownFor(pair: LastPair): Pulled | undefined {
    const known = this.#pulled;
    return known?.key === keyOf(pair) && cutOf(known.pair) === cutOf(pair) ? known : undefined;
  }

  #knownBand({ over }: Pulled): Banding | undefined {
    return this.#banded?.over === over ? this.#banded.banding : undefined;
  }

  #caseOf(job: Job, files: Files, watch: Watch): LastingCase | undefined {
    // Neither sheet is the corrected one: that is what the loop works out.
    const plain = { ...job, lasting: { ...job.lasting, correct: false } };
    const run = (triangles: number) => this.#pipeline.run(plain, files, { watch: beforehand(watch), triangles, withoutPieces: true });
    const [fine, coarse] = [run(this.#sizes.pulled), run(this.#sizes.coarse)];
    if (fine.from === "tape" || coarse.from === "tape") return undefined;
    const { last, lines, lasting, leathers, shellSettings, pieceSettings } = fine;
    return { upper: leathers.upper, lining: leathers.lining, edge: shellSettings.edge, settings: lasting, last, lines, margins: pieceSettings, fine: fine.flat, coarse: coarse.flat };
  }
}

/** A part of the work, told as a share of the whole. */
const part = (watch: Watch, from: number, to: number): Watch => (stage, fraction) => watch(stage, from + fraction * (to - from));
/** The stages of the pipeline come before the work itself begins, but it can be stopped there as well. */
const beforehand = (watch: Watch): Watch => () => watch("laid on", 0);

/** All that a pull-over follows from besides its cut, last and lines, which go with the cut. */
const keyOf = ({ lasting, leathers, shellSettings, pieceSettings }: LastPair): string => JSON.stringify([lasting, leathers.upper, leathers.lining, shellSettings.edge, pieceSettings]);

/** What the pieces are cut from. */
const cutFlat = ({ flat, corrected }: LastPair): FlatShell => corrected?.flat ?? flat;
const cutOf = (pair: LastPair): unknown => pair.panels ?? cutFlat(pair);

const patternOf = (of: LastingCase, { pair, over: { lasted } }: Pulled): PulledPattern => ({ uv: pair.corrected?.flat.uv ?? of.fine.uv, lasted });

/** The job with what is to be cut farther in or out so that the topline ends at its marks; as it was, with a finding, where that cannot be worked out. */
export function correctedToMarks(laster: Laster, job: Job, files: Files, watch: Watch): { readonly job: Job; readonly findings: readonly Finding[] } {
  try {
    const made = laster.correct(job, files, watch);
    return made ? { job: { ...job, lasting: { ...job.lasting, ...rounded(made.shift), correct: true } }, findings: [...made.findings, ...made.advice.findings] } : { job, findings: [] };
  } catch (error) {
    if (error instanceof Refusal) return { job, findings: [finding("not-foretold", { why: error.message })] };
    throw error;
  }
}

/** As a maker would say it: to a tenth of a millimetre. */
const rounded = <K extends string>(shift: Readonly<Record<K, number>>): Readonly<Record<K, number>> => Object.fromEntries(Object.entries<number>(shift).map(([key, mm]) => [key, Math.round(10 * mm) / 10])) as Record<K, number>;

/** Pulls a pair over and draws its band; what cannot be foretold is told as a finding, since the pattern itself can be made. */
export function foretell(laster: Laster, job: Job, files: Files, watch: Watch): { readonly foretold?: Required<Foretold>; readonly findings: readonly Finding[] } {
  try {
    const banding = laster.band(job, files, watch);
    const over = laster.pull(job, files, watch);
    return over && banding ? { foretold: { lasted: over.lasted, banded: banding.banded }, findings: [...over.lasted.findings, ...banding.findings, ...(job.lasting.correct ? marginTaken(over.lasted.drafts) : [])] } : { findings: [] };
  } catch (error) {
    if (error instanceof Refusal) return { findings: [finding("not-foretold", { why: error.message })] };
    throw error;
  }
}
