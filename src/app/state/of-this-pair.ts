import type { History, Step } from "./history.ts";
import { sameButMaking } from "./same-but-making.ts";

/** The states since another pair came to the bench, up to now; the first is the pair as it came. Taking other prices makes no other pair. */
export function ofThisPair({ past, now }: Pick<History, "past" | "now">): readonly Step[] {
  const steps = [...past, now];
  const came = steps.findLastIndex(({ brought, job }, i) => brought === true && !sameButMaking(job, steps[i - 1]?.job));
  return steps.slice(Math.max(0, came));
}
