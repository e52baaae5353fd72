import { calendarOf } from "./calendar/calendar-of.ts";
import { lastsOf } from "./calendar/lasts.ts";
import { cautionsOf } from "./care/cautions.ts";
import type { MakingInput } from "./input.ts";
import type { Making } from "./making.ts";
import { moneyOf } from "./money/money.ts";
import { needsOf } from "./needs/needs.ts";
import { stepsOf } from "./steps/steps.ts";
import { threadFor } from "./thread/thread.ts";
import { toolsOf } from "./tools/tool-list.ts";

/** What a pair takes, what it costs and how it is made; from its pieces, and from what the maker wrote. Method: docs/method/making.md. */
export function makingOf(input: MakingInput): Making {
  const { said } = input;
  const thread = threadFor(input.stitching);
  const { needs, bonds, findings: needed } = needsOf(input, thread);
  const steps = stepsOf(input);
  const { pairs, toBuy, cost, findings: paid } = moneyOf({ needs, steps, said });
  const { calendar, findings: planned } = calendarOf({ steps, pairs, said });
  return {
    pairs, needs, bonds, thread, toBuy, tools: toolsOf(steps), cost, steps, ...(calendar && { calendar }), cautions: cautionsOf(steps, needs.find(({ good }) => good === "contact cement")?.gross, lastsOf(said, pairs)),
    findings: [...needed, ...paid, ...planned],
  };
}
