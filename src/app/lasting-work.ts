import { useMemo, useState, useSyncExternalStore } from "react";
import type { Finding } from "#base/findings.ts";
import type { LastPair } from "#job/pair.ts";
import type { LastingNow, Lastings } from "./lastings.ts";
import { lastedMap, type LastedMap, type LastedMapOf } from "./picture/lasted-map.ts";
import { holdsFor, sameForLasting } from "./state/same-for-lasting.ts";

/** How the maker looks at lasting, shared by the column and the picture. Not part of the work. */
export interface LastingWork {
  readonly lastings: Lastings;
  /** What was found, unless that was on another last. */
  readonly now: LastingNow;
  /** It holds for the work as it is. */
  readonly holds: boolean;
  /** What the pull-over came to, where it holds for the work as it is. */
  readonly found: readonly Finding[];
  readonly map: LastedMap | undefined;
  readonly onMap: (of: LastedMapOf) => void;
}

export function useLastingWork(lastings: Lastings, pair: LastPair | undefined, open: boolean): LastingWork {
  const all = useSyncExternalStore(lastings.listen, lastings.look);
  const [of, onMap] = useState<LastedMapOf>("most");
  const here = pair !== undefined && (all.job === undefined || all.job.last === pair.job.last || JSON.stringify(all.job.last) === JSON.stringify(pair.job.last));
  const now = useMemo((): LastingNow => (here ? all : { job: undefined, busy: all.busy, trouble: all.trouble }), [all, here]);
  // A pattern just corrected is pulled over before the pair itself has been made anew.
  const next = now.busy?.wish.what === "pull" ? now.busy.wish.job : now.job;
  const holds = now.job !== undefined && holdsFor(now.job, pair?.job) && sameForLasting(now.job, next);
  const map = useMemo(() => (open && now.lasted ? lastedMap(now.lasted, of) : undefined), [open, now.lasted, of]);
  const found = useMemo(() => (holds && now.lasted ? now.lasted.findings : []), [holds, now.lasted]);
  return { lastings, now, holds, found, map, onMap };
}
