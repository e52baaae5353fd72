import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import { checkOnLast, type LastCheck } from "#shell/check.ts";
import { checkTriangles } from "#shell/check-card.ts";
import { halvesOf, type Halves } from "#shell/halves.ts";
import { reliefOf, type Relief } from "#shell/relief.ts";
import type { FlatShell } from "#shell/shell.ts";
import type { Files } from "./files.ts";
import type { Job } from "./job.ts";
import type { LastPair } from "./pair.ts";
import { Pipeline } from "./pipeline.ts";

/** What is tried out on a pattern beside the pair itself. It takes a second or two, so it is worked out only when it is asked for. */
export interface Proof {
  readonly check: LastCheck;
  /** Where the card that was laid back lies flat: x0 y0 … for each vertex of the check's mesh, in the flat shell's frame. */
  readonly checkedUv: Float64Array;
  readonly relief: Relief;
  readonly halves: Halves;
}

/** Tries patterns out. It remembers what it found last, for a change that leaves the shell alone. */
export class Prover {
  readonly #pipeline: Pipeline;
  #found: { readonly flat: FlatShell; readonly advisedFor: string; readonly proof: Proof } | undefined;

  /** With the pipeline that the pair was made in, its last need not be read again. */
  constructor(pipeline = new Pipeline()) {
    this.#pipeline = pipeline;
  }

  /**
   * How the pattern of a job does; nothing for a taped pattern, which has no last to be tried on.
   * @throws Refusal as {@link Pipeline.run}
   */
  prove(job: Job, files: Files, watch: Watch): Proof | undefined {
    const pair = this.#pipeline.run(job, files, { watch, withoutPieces: true });
    if (pair.from === "tape") return undefined;
    const { last, flat, freeUv } = pair;
    // Another leather or edge may leave the flat as it is, but not what may be advised.
    const advisedFor = `${pair.shellSettings.leather} ${pair.shellSettings.edge}`;
    if (this.#found?.flat !== flat || this.#found.advisedFor !== advisedFor) {
      // Its stages are those of the pair once more, so they are told as the beginning of what they are for.
      const coarse = this.#pipeline.run(job, files, { watch: () => watch("wrap", 0), withoutPieces: true, triangles: checkTriangles }) as LastPair;
      const check = checkOnLast({ last, flat, freeUv, coarse: coarse.flat, asked: { lines: pair.lines.settings, shell: pair.shellSettings }, rules: { lines: pair.lineRules, shell: pair.shellRules } }, watch);
      this.#found = { flat, advisedFor, proof: { check, checkedUv: coarse.flat.uv, relief: reliefOf(flat, watch), halves: halvesOf(flat) } };
    }
    return this.#found.proof;
  }
}

/**
 * Tries a pattern out and says what there is to say of it; halves that differ are told with the pair, where they are to share one form.
 * A pattern that can be made is not lost where it cannot be tried out: that is told as a finding.
 */
export function tryOut(prover: Pick<Prover, "prove">, job: Job, files: Files, watch: Watch): { readonly proof?: Proof; readonly findings: readonly Finding[] } {
  try {
    const proof = prover.prove(job, files, watch);
    return proof ? { proof, findings: [...proof.check.findings, ...proof.relief.findings] } : { findings: [] };
  } catch (error) {
    if (error instanceof Refusal) return { findings: [finding("not-tried", { why: error.message })] };
    throw error;
  }
}
