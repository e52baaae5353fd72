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

/** Tries patterns out. It keeps a pipeline of its own, and what it found last, for a change that leaves the shell alone. */
export class Prover {
  readonly #pipeline = new Pipeline();
  #found: { readonly flat: FlatShell; readonly proof: Proof } | undefined;

  /**
   * How the pattern of a job does; nothing for a taped pattern, which has no last to be tried on.
   * @throws Refusal as {@link Pipeline.run}
   */
  prove(job: Job, files: Files, watch: Watch): Proof | undefined {
    const at = (triangles?: number) => this.#pipeline.run(job, files, { watch, withoutPieces: true, ...(triangles && { triangles }) });
    const pair = at();
    if (pair.from === "tape") return undefined;
    const { last, flat, freeUv, shellSettings } = pair;
    if (this.#found?.flat !== flat) {
      const coarse = at(checkTriangles) as LastPair;
      const check = checkOnLast({ last, flat, freeUv, coarse: coarse.flat, toplineShorter: shellSettings.toplineShorter }, watch);
      this.#found = { flat, proof: { check, checkedUv: coarse.flat.uv, relief: reliefOf(flat, watch), halves: halvesOf(flat) } };
    }
    return this.#found.proof;
  }
}
