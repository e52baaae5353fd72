import { useMemo, useState } from "react";
import type { Pair } from "#job/pair.ts";
import { followed as follow, type Followed } from "./follow.ts";
import { comparedWith, variantOf, type Compared, type Variant } from "./variant.ts";

/** How the maker looks at her pieces, shared by the column and the picture. Not part of the work. */
export interface PieceWork {
  /** Name of the piece that is looked at. */
  readonly chosen: string | undefined;
  readonly onChoose: (name: string | undefined) => void;
  /** What the last edit brought about; until the next. */
  readonly followed: Followed | undefined;
  /** The state that the one at hand is held against. */
  readonly kept: Variant | undefined;
  /** Nothing while the state at hand is A itself. */
  readonly compared: Compared | undefined;
  /** Keeps a pair as A, or lets A go. */
  readonly onKeep: (pair: Pair | undefined) => void;
}

export function usePieceWork(pair: Pair | undefined, draft: boolean): PieceWork {
  const [chosen, onChoose] = useState<string>();
  const [kept, keep] = useState<Variant>();
  const [before, setBefore] = useState<Pair>();
  const [followed, setFollowed] = useState<Followed>();
  if (pair && !draft && pair !== before) {
    setBefore(pair);
    if (before?.job !== pair.job) setFollowed(before && before.job.last === pair.job.last ? follow(before, pair) : undefined);
  }
  const compared = useMemo(() => (kept && pair && !draft && kept.job !== pair.job ? comparedWith(kept, variantOf(pair)) : undefined), [kept, pair, draft]);
  return useMemo(() => ({ chosen, onChoose, followed, kept, compared, onKeep: (p) => keep(p && variantOf(p)) }), [chosen, followed, kept, compared]);
}
