import type { Finding } from "#base/findings.ts";
import type { Calendar } from "./calendar/calendar.ts";
import type { Caution } from "./care/caution.ts";
import type { Cost, ToBuy } from "./money/cost.ts";
import type { Bond, Need } from "./need.ts";
import type { Step } from "./steps/step.ts";
import type { ThreadNeed } from "./thread/thread-need.ts";
import type { ToolNeed } from "./tools/tool-need.ts";

/** All that has to do with making one very pair, or several of it: what to buy, what it costs, the steps. */
export interface Making {
  /** How many pairs the shopping list and the calendar are for. */
  readonly pairs: number;
  /** For one pair. */
  readonly needs: readonly Need[];
  readonly bonds: readonly Bond[];
  readonly thread: ThreadNeed;
  /** For all pairs. */
  readonly toBuy: readonly ToBuy[];
  readonly tools: readonly ToolNeed[];
  readonly cost: Cost;
  readonly steps: readonly Step[];
  /** None where no sessions are said. */
  readonly calendar?: Calendar;
  /** What to take care of, in the order in which the steps meet it. */
  readonly cautions: readonly Caution[];
  readonly findings: readonly Finding[];
}
