import type { GoodId } from "../goods.ts";
import type { HazardId } from "../care/hazards.ts";
import type { ToolId } from "../tools/tools.ts";

/** Stretches of the work, in their order. */
export const phases = ["pattern", "cutting", "closing", "bottom parts", "lasting", "bottoming", "heel", "finishing"] as const;
export type Phase = (typeof phases)[number];

/** Time in which nothing is to be done but to wait, minutes. */
export interface Wait {
  /** 0 where what comes next may follow at once, and only must not come too late. */
  readonly leastMin: number;
  /** As long as a careful maker would wait; what the calendar plans with. */
  readonly wellMin: number;
  /** What comes next must have begun by then (cement that is still open); no end where nothing is said. */
  readonly mostMin?: number;
  /** What happens meanwhile: "the second coat dries". */
  readonly what: string;
  /** Where the times come from. */
  readonly source: string;
}

/** One step of the work on one very pair. */
export interface Step {
  /** Stays the same for the same work on another pair: "close-back-seam". */
  readonly id: string;
  readonly phase: Phase;
  readonly title: string;
  /** What to do, in short sentences with this pair's numbers. */
  readonly todo: readonly string[];
  readonly needs: { readonly goods: readonly GoodId[]; readonly tools: readonly ToolId[] };
  /** How to tell that it is right. */
  readonly right: readonly string[];
  /** Where beginners fail. */
  readonly fails: readonly string[];
  /** Hands-on minutes for one pair, both its shoes, for one who has made some. */
  readonly minutes: number;
  readonly wait?: Wait;
  /** Steps that must be done, their waits over, before this one begins. */
  readonly after: readonly string[];
  /** Whether both shoes are done in one go, or the one right after the other with the same numbers. */
  readonly shoes: "together" | "one after the other";
  /** The shoe, or what is shaped for it, sits on its last: so long no other pair can have that last. */
  readonly onLast?: boolean;
  readonly hazards: readonly HazardId[];
}
