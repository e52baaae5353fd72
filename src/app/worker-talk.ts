import type { Finding } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import type { LastPair, Pair, TapedPair } from "#job/pair.ts";
import type { Rules } from "#job/pipeline.ts";
import type { SheetFile } from "#sheets/sheet-file.ts";

/**
 * What the page asks of the worker. Scans are sent once, under the name that the job uses. A draft is worked out on a coarser
 * shell, to follow a finger.
 */
export type ToWorker =
  | { readonly say: "file"; readonly name: string; readonly bytes: Uint8Array }
  | { readonly say: "forget"; readonly name: string }
  | { readonly say: "run"; readonly id: number; readonly job: Job; readonly draft: boolean }
  | { readonly say: "sheets"; readonly id: number; readonly job: Job };

/**
 * A pair on its way to the page. The last and the bottom are large and rarely change: they are left out when they are the very
 * ones that were sent before.
 */
export type Parcel = (Omit<LastPair, "last" | "bottom"> & Partial<Pick<LastPair, "last" | "bottom">>) | TapedPair;

export type FromWorker =
  | { readonly say: "progress"; readonly id: number; readonly stage: string; readonly fraction: number }
  | { readonly say: "pair"; readonly id: number; readonly parcel: Parcel }
  | { readonly say: "sheets"; readonly id: number; readonly files: readonly SheetFile[] }
  | { readonly say: "refused"; readonly id: number; readonly finding: Finding; readonly rules: Rules | undefined }
  | { readonly say: "broke"; readonly id: number; readonly why: string };

export function pack(pair: Pair, before: Pair | undefined): Parcel {
  if (pair.from === "tape") return pair;
  const { last, bottom, ...rest } = pair;
  const known = onLast(before);
  return {
    ...rest,
    ...(known?.last === last ? {} : { last }),
    ...(known?.bottom === bottom ? {} : { bottom }),
  };
}

/** Puts a parcel together with what was sent before; the worker never leaves out what it has not sent. */
export function unpack(parcel: Parcel, before: Pair | undefined): Pair {
  if (parcel.from === "tape") return parcel;
  const known = onLast(before);
  const last = parcel.last ?? known?.last;
  const bottom = parcel.bottom ?? known?.bottom;
  if (!last || !bottom) throw new Error("a parcel came without its last");
  return { ...parcel, last, bottom };
}

const onLast = (pair: Pair | undefined): LastPair | undefined => (pair?.from === "last" ? pair : undefined);
