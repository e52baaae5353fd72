/// <reference lib="webworker" />
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import type { Job } from "#job/job.ts";
import { Laster, type CorrectedPattern } from "#job/lasting.ts";
import type { Pair } from "#job/pair.ts";
import { readyFor } from "#job/pictures.ts";
import { Pipeline } from "#job/pipeline.ts";
import type { Rules, RunOptions } from "#job/run-options.ts";
import { Prover } from "#job/proof.ts";
import { sheetsFor } from "#job/sheets-for.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import type { CorrectedFor, LastingAsked, LastingFound } from "./lasting-talk.ts";
import { printedPages } from "./printed-pages.ts";
import { pack, type FromWorker, type ReadLast, type ToWorker } from "./worker-talk.ts";

/** The bench behind the page: keeps the pipeline with its memory, the scans, and which pair was sent last. */
const scope = self as unknown as DedicatedWorkerGlobalScope;
const pipeline = new Pipeline();
const prover = new Prover(pipeline);
const laster = new Laster(pipeline);
const files = new Map<string, Uint8Array>();
/** Coarse enough to follow a finger, fine enough that lengths on the card stay within a few tenths of a millimetre. */
const draftTriangles = 5000;
let sent: Pair | undefined;

const tell = (message: FromWorker): void => scope.postMessage(message);

/** Says where the work is, but not so often that telling costs more than working. */
function watchFor(id: number): (stage: string, fraction: number) => void {
  let told = 0;
  let toldStage = "";
  return (stage, fraction) => {
    const now = performance.now();
    if (stage === toldStage && now - told < 80) return;
    told = now;
    toldStage = stage;
    tell({ say: "progress", id, stage, fraction });
  };
}

function make(job: Job, id: number, draft: boolean, tell: Pick<RunOptions, "onRules" | "onLast" | "onTraced"> = {}): Pair {
  return pipeline.run(job, files, {
    watch: watchFor(id),
    now: () => performance.now(),
    ...tell,
    ...(draft ? { triangles: draftTriangles, follow: true, withoutPieces: true } : {}),
  });
}

/** What of lasting was asked for; nothing on a taped pattern. The pull-over itself is told with each, it is remembered. */
function lastingFound(job: Job, asked: LastingAsked, watch: Watch): LastingFound {
  const part = ((): LastingFound => {
    if (asked.what === "pull") return some("throat", laster.throatForetold(job, files, watch));
    if (asked.what === "band") return { ...some("banding", laster.band(job, files, watch)), ...some("throat", laster.throatForetold(job, files, watch)) };
    if (asked.what === "correct") return some("corrected", correctedFor(laster.correct(job, files, watch)));
    if (asked.what === "turn") return some("turned", laster.turn(job, files, watch));
    if (asked.what === "drafts") return some("effects", laster.draftEffects(job, files, watch));
    if (asked.what === "swap") return { ...some("swapped", laster.swap(job, files, { known: asked.other }, watch)), other: asked.other };
    return {};
  })();
  return { ...part, ...some("lasted", laster.pull(job, files, watch)?.lasted) };
}

function correctedFor(found: CorrectedPattern | undefined): CorrectedFor | undefined {
  if (!found) return undefined;
  const { shift, aimed, uncorrected, rounds, reached, findings, advice } = found;
  return { shift, aimed, uncorrected, rounds, reached, findings, advice };
}

const some = <K extends keyof LastingFound>(key: K, found: LastingFound[K] | undefined): LastingFound => (found === undefined ? {} : { [key]: found });

async function answer(message: ToWorker): Promise<void> {
  if (message.say === "file") {
    files.set(message.name, message.bytes);
    return;
  }
  if (message.say === "forget") {
    files.delete(message.name);
    return;
  }
  const { id } = message;
  let rules: Rules | undefined;
  let last: ReadLast | undefined;
  const traced: TracedPicture[] = [];
  try {
    await readyFor(message.job);
    if (message.say === "run") {
      const pair = make(message.job, id, message.draft, { onRules: (known) => (rules = known), onLast: (read) => (last = read), onTraced: (picture) => traced.push(picture) });
      tell({ say: "pair", id, parcel: pack(pair, sent) });
      sent = pair;
    } else if (message.say === "last") {
      tell({ say: "lasting", id, found: lastingFound(message.job, message.asked, watchFor(id)) });
    } else if (message.say === "prove") {
      tell({ say: "proof", id, proof: prover.prove(message.job, files, watchFor(id)) });
    } else {
      // The pipeline remembers the pair, unless this worker took the place of one that was stopped.
      const files = await sheetsFor(make(message.job, id, false), watchFor(id), undefined, message.foretold);
      const printed = files.filter(({ mime }) => mime === "application/pdf").map(async ({ name, bytes }) => [name, await printedPages(bytes)] as const);
      tell({ say: "sheets", id, made: { files, printed: new Map(await Promise.all(printed)) } });
    }
  } catch (error) {
    if (error instanceof Refusal) tell({ say: "refused", id, finding: error.finding, rules, last, traced });
    else tell({ say: "broke", id, why: error instanceof Error ? error.message : String(error) });
  }
}

/** One message after the other: a run must not start while the sheets of the pair before it are being made. */
let turn: Promise<void> = Promise.resolve();
scope.addEventListener("message", (event: MessageEvent<ToWorker>) => {
  turn = turn.then(() => answer(event.data));
});
