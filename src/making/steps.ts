import type { MakingInput } from "./input.ts";
import type { Step } from "./step.ts";
import { cuttingSteps } from "./steps/cutting.ts";
import { factsOf } from "./steps/facts.ts";
import { patternSteps } from "./steps/pattern.ts";
import { planned } from "./steps/plan.ts";

/**
 * The plan for one very pair, in an order in which it can be worked through from top to bottom. Steps that the pair's choices do not ask for are
 * left out; ids stay the same for the same work on any pair. What hangs on nothing but a wait says so by `after` alone. docs/guide/the-steps.md.
 */
export function stepsOf(input: MakingInput): readonly Step[] {
  const facts = factsOf(input);
  return planned([...patternSteps(facts), ...cuttingSteps(facts)]);
}
