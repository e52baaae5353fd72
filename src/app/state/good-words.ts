import type { GoodId } from "#making/goods.ts";

/** What is bought, as it stands together in a shop. */
export const goodGroups = ["leathers", "stiffening and tapes", "bottom and heel", "thread and card", "cement, nails and finish"] as const;
export type GoodGroup = (typeof goodGroups)[number];

interface GoodWords {
  readonly group: GoodGroup;
  /** How the size of what is bought whole is asked for: "a skin measures". */
  readonly whole: string;
  /** One costs, several cost. */
  readonly several?: true;
}

/** Words for every good. */
export const goodWords: Readonly<Record<GoodId, GoodWords>> = {
  "upper leather": { group: "leathers", whole: "a skin measures" },
  "lining leather": { group: "leathers", whole: "a skin measures" },
  "sock leather": { group: "leathers", whole: "a skin measures" },
  stiffener: { group: "stiffening and tapes", whole: "a piece measures" },
  "toe puff": { group: "stiffening and tapes", whole: "a sheet measures" },
  "side lining": { group: "stiffening and tapes", whole: "a sheet measures" },
  elastic: { group: "stiffening and tapes", whole: "a roll holds" },
  "fold tape": { group: "stiffening and tapes", whole: "a roll holds" },
  "seam tape": { group: "stiffening and tapes", whole: "a roll holds" },
  "flank tape": { group: "stiffening and tapes", whole: "a roll holds" },
  "insole board": { group: "bottom and heel", whole: "a sheet measures" },
  "second board": { group: "bottom and heel", whole: "a sheet measures" },
  shanks: { group: "bottom and heel", whole: "a packet holds", several: true },
  filler: { group: "bottom and heel", whole: "a sheet measures" },
  "sole leather": { group: "bottom and heel", whole: "a piece measures" },
  "lift leather": { group: "bottom and heel", whole: "a piece measures" },
  "top piece leather": { group: "bottom and heel", whole: "a piece measures" },
  thread: { group: "thread and card", whole: "a spool holds" },
  needles: { group: "thread and card", whole: "a packet holds", several: true },
  fastenings: { group: "thread and card", whole: "a packet holds", several: true },
  "pattern card": { group: "thread and card", whole: "a sheet measures" },
  "contact cement": { group: "cement, nails and finish", whole: "a tin holds" },
  "water-based cement": { group: "cement, nails and finish", whole: "a tin holds" },
  latex: { group: "cement, nails and finish", whole: "a bottle holds" },
  paste: { group: "cement, nails and finish", whole: "a packet holds" },
  "insole tacks": { group: "cement, nails and finish", whole: "a box holds", several: true },
  "lasting tacks": { group: "cement, nails and finish", whole: "a box holds", several: true },
  "lasting nails": { group: "cement, nails and finish", whole: "a box holds", several: true },
  "heel nails": { group: "cement, nails and finish", whole: "a box holds", several: true },
  "edge finish": { group: "cement, nails and finish", whole: "a bottle holds" },
};

/** Those that are needed, group by group; groups of which nothing is needed are left out. */
export function byGoodGroup<T extends { readonly good: GoodId }>(of: readonly T[]): readonly { readonly group: GoodGroup; readonly here: readonly T[] }[] {
  return goodGroups.map((group) => ({ group, here: of.filter(({ good }) => goodWords[good].group === group) })).filter(({ here }) => here.length > 0);
}
