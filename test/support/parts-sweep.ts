import { explain, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Files } from "#job/files.ts";
import type { Job } from "#job/job.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";
import { completeMeasures, type SaidMeasures } from "#last/measures-by-size.ts";
import { liningCuts, upperCuts, type PartChoices } from "#pieces/choices.ts";
import { pieceKeys } from "#pieces/rules.ts";
import { possible } from "#shell/possible.ts";
import type { ShellNumbers } from "#shell/settings.ts";

/** Fields of a job that a sweep changes. */
export type Own = Partial<Pick<Job, "pieces" | "shell" | "parts" | "last">>;
export type Outcome = { readonly pair: LastPair } | { readonly refused: Finding } | { readonly broke: string };

/** A bench on one last with a coarse shell: its edges are cut as those of a fine one, in a fraction of the time. */
export class SweepBench {
  readonly #pipeline = new Pipeline();
  readonly #last: Own;

  constructor(said?: SaidMeasures) {
    this.#last = said ? { last: { from: "measures", measures: completeMeasures(said).measures } } : {};
  }

  /** A pair, a refusal in words, or in place of both what broke. */
  run(own: Own): Outcome {
    try {
      return { pair: this.#pipeline.run({ ...defaultJob(), ...this.#last, ...own }, {} as Files, { triangles: 700 }) as LastPair };
    } catch (error) {
      if (error instanceof Refusal) return explain(error.finding) ? { refused: error.finding } : { broke: "a refusal without words" };
      return { broke: error instanceof Error ? error.message : String(error) };
    }
  }
}

/** What can be added together: a strap and a gore are in each other's way. */
export const extraSets: readonly Partial<PartChoices>[] = [
  {},
  { strap: true, toeCap: true, backStrip: true, sideLining: true },
  { gore: true, bow: true, toeCap: true, sideLining: true },
  { strap: true, gore: true, bow: true, backStrip: true },
];

/** Every cut with every lining and set of extras. */
export const partSets: readonly Partial<PartChoices>[] = upperCuts.flatMap((cut) => liningCuts.flatMap((lining) => extraSets.map((extras) => ({ cut, lining, ...extras }))));

const shellNumbers: readonly (keyof ShellNumbers)[] = ["springMm", "toplineShorter", "counterMm", "counterBelowMm", "counterInnerMm", "counterOuterMm", "puffReachMm", "skiveMm", "skiveFeatherMm"];

/** The most that may be asked of a number at all. */
const most = (key: string): number => (key in possible ? possible[key as keyof typeof possible][1] : key === "toplineShorter" ? 0.1 : key === "springMm" ? 60 : 100);

/** Every number of pieces and shell at nothing, half of its most and its most. */
export const extremes: readonly { readonly what: string; readonly own: Own }[] = [...pieceKeys.map((key) => ({ key, at: "pieces" as const })), ...shellNumbers.map((key) => ({ key, at: "shell" as const }))].flatMap(({ key, at }) =>
  [0, 0.5, 1].map((share) => ({ what: `${key} ${share * most(key)}`, own: { [at]: { [key]: share * most(key) } } })),
);

const bottomNames = ["insole", "second insole board", "shank", "shank bend", "bottom filler", "outsole", "split lift", "lift 1", "top piece"];

/** The names of all pieces that a choice should bring on the example, one shoe's. */
export function namesOf({ cut, lining, sock, backStrip, toeCap, strap, gore, bow, sideLining }: PartChoices): readonly string[] {
  const upper = cut === "quarters" ? ["vamp", "inner quarter", "outer quarter"] : ["upper"];
  return [
    ...upper,
    ...upper.map((name) => `${name}, net`),
    ...(lining === "three" ? ["vamp lining", "inner quarter lining", "outer quarter lining", "heel pocket"] : ["lining"]),
    ...(backStrip && cut !== "inner-seam" ? ["back strip"] : []),
    ...(toeCap ? ["toe cap"] : []),
    ...(strap ? ["instep strap", "strap lining"] : []),
    ...(gore ? ["elastic gore"] : []),
    ...(bow ? ["bow", "bow stay", "bow knot"] : []),
    ...(sideLining ? ["inner side lining", "outer side lining"] : []),
    "stiffener", "toe puff",
    ...bottomNames,
    sock === "full" ? "sock" : `${sock} sock`,
  ];
}
