import type { Finding } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import type { LastPair, Pair, TapedPair } from "#job/pair.ts";
import type { Rules } from "#job/run-options.ts";
import type { Proof } from "#job/proof.ts";
import type { Foretold } from "#lasting/foretold.ts";
import type { SheetFile } from "#sheets/sheet-file.ts";
import type { LastingAsked, LastingFound } from "./lasting-talk.ts";
import type { PrintedPage } from "./state/page-drawing.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";

/**
 * What the page asks of the worker. Scans are sent once, under the name that the job uses. A draft is worked out on a coarser
 * shell, to follow a finger.
 */
export type ToWorker =
  | { readonly say: "file"; readonly name: string; readonly bytes: Uint8Array }
  | { readonly say: "forget"; readonly name: string }
  | { readonly say: "run"; readonly id: number; readonly job: Job; readonly draft: boolean }
  | { readonly say: "sheets"; readonly id: number; readonly job: Job; readonly foretold?: Foretold }
  | { readonly say: "prove"; readonly id: number; readonly job: Job }
  | { readonly say: "last"; readonly id: number; readonly job: Job; readonly asked: LastingAsked };

/** Parts of a pair that are large and rarely change. */
const heavy = ["last", "other", "bottom", "pieces", "grounds", "corrected"] as const;
type Heavy = (typeof heavy)[number];

/** A pair on its way to the page; heavy parts that are the very ones sent before are left out, and named. */
export type Parcel = (Omit<LastPair, Heavy> & Partial<Pick<LastPair, Heavy>> & { readonly leftOut: readonly Heavy[] }) | TapedPair;

/** A last that no pair could be made of, with what was found on it. */
export type ReadLast = Pick<LastPair, "last" | "findings">;

/** All files of a pair, and the pages of those that are printed, by the file's name. */
export interface MadeSheets {
  readonly files: readonly SheetFile[];
  readonly printed: ReadonlyMap<SheetFile["name"], readonly PrintedPage[]>;
}

export type FromWorker =
  | { readonly say: "progress"; readonly id: number; readonly stage: string; readonly fraction: number }
  | { readonly say: "pair"; readonly id: number; readonly parcel: Parcel }
  | { readonly say: "sheets"; readonly id: number; readonly made: MadeSheets }
  | { readonly say: "proof"; readonly id: number; readonly proof: Proof | undefined }
  | { readonly say: "lasting"; readonly id: number; readonly found: LastingFound }
  | { readonly say: "refused"; readonly id: number; readonly finding: Finding; readonly rules: Rules | undefined; readonly last: ReadLast | undefined; readonly traced: readonly TracedPicture[] }
  | { readonly say: "broke"; readonly id: number; readonly why: string };

export function pack(pair: Pair, before: Pair | undefined): Parcel {
  if (pair.from === "tape") return pair;
  const known = onLast(before);
  const leftOut = heavy.filter((part) => known && isSame(part, pair, known));
  const parcel: Partial<LastPair> = { ...pair };
  for (const part of leftOut) delete (parcel as { -readonly [K in Heavy]?: unknown })[part];
  return { ...(parcel as LastPair), leftOut };
}

/** Held against each other anew or not, two lasts are the same when their comparison is. */
const isSame = (part: Heavy, pair: LastPair, known: LastPair): boolean =>
  pair[part] !== undefined && (part === "other" ? pair.other?.comparison === known.other?.comparison : pair[part] === known[part]);

/** Puts a parcel together with what was sent before; the worker never leaves out what it has not sent. */
export function unpack(parcel: Parcel, before: Pair | undefined): Pair {
  if (parcel.from === "tape") return parcel;
  const known = onLast(before);
  const { leftOut, ...rest } = parcel;
  const kept = Object.fromEntries(leftOut.map((part) => [part, known?.[part]]));
  if (Object.values(kept).includes(undefined)) throw new Error("a parcel came without what was sent before");
  return { ...rest, ...kept } as LastPair;
}

const onLast = (pair: Pair | undefined): LastPair | undefined => (pair?.from === "last" ? pair : undefined);
