import type { MakingInput } from "./input.ts";
import type { Step } from "./step.ts";
import { bottomPartSteps } from "./steps/bottom-parts.ts";
import { bottomingSteps } from "./steps/bottoming.ts";
import { liningSteps } from "./steps/closing-lining.ts";
import { prepareSteps } from "./steps/closing-prepare.ts";
import { seamSteps } from "./steps/closing-seams.ts";
import { toplineSteps } from "./steps/closing-topline.ts";
import { cuttingSteps } from "./steps/cutting.ts";
import { extraSteps } from "./steps/extras.ts";
import { factsOf } from "./steps/facts.ts";
import { finishingSteps } from "./steps/finishing.ts";
import { heelSteps } from "./steps/heel.ts";
import { lastingSteps } from "./steps/lasting.ts";
import { patternSteps } from "./steps/pattern.ts";
import { planned } from "./steps/plan.ts";

const strands = [
  patternSteps, cuttingSteps, prepareSteps, seamSteps, toplineSteps, extraSteps, liningSteps, bottomPartSteps, lastingSteps, bottomingSteps, heelSteps, finishingSteps,
] as const;

/**
 * The plan for one very pair, in an order in which it can be worked through from top to bottom. Steps that the pair's choices do not ask for are
 * left out; ids stay the same for the same work on any pair. What hangs on nothing but a wait says so by `after` alone. docs/guide/the-steps.md.
 */
export function stepsOf(input: MakingInput): readonly Step[] {
  const facts = factsOf(input);
  return planned(strands.flatMap((steps) => steps(facts)));
}
