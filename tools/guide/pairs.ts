import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";

/** The example pair in the cuts that the pages on the parts show, each said once by what differs from the usual one. */
const shown = {
  usual: {},
  inner: { parts: { cut: "inner-seam", backTop: "mitre" } },
  lapped: { parts: { cut: "quarters", seam: "lapped", lining: "one" } },
  butted: { parts: { cut: "quarters", seam: "butted", sock: "heel" } },
  // A strap and a gore share the place; so do a notch and a dog-tail.
  added: { parts: { cut: "quarters", seam: "closed", backTop: "notch", sock: "half", strap: true, toeCap: true, backStrip: true, bow: true, sideLining: true } },
  gore: { parts: { backTop: "dog-tail", gore: true } },
  bagged: { shell: { edge: "bagged" } },
  bound: { shell: { edge: "bound" } },
  wrapped: { shell: { edge: "wrapped" } },
} as const satisfies Record<string, Partial<Pick<Job, "parts" | "shell">>>;

export type PairName = keyof typeof shown;
export type Pairs = Readonly<Record<PairName, LastPair>>;

export const isPairName = (word: string): word is PairName => word in shown;

/** All of them, one after the other in one pipeline, so that each makes anew only what differs. */
export function examplePairs(): Pairs {
  const pipeline = new Pipeline();
  return Object.fromEntries(Object.entries(shown).map(([name, own]) => [name, onLast({ ...defaultJob(), ...own })])) as Pairs;

  function onLast(job: Job): LastPair {
    const pair = pipeline.run(job, new Map());
    if (pair.from !== "last") throw new Error("The example pair is made on a last.");
    return pair;
  }
}
