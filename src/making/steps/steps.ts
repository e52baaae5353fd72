import type { MakingInput } from "../input.ts";
import type { Step } from "./step.ts";
import { bottomPartSteps } from "./bottom-parts.ts";
import { bottomingSteps } from "./bottoming.ts";
import { liningSteps } from "./closing-lining.ts";
import { prepareSteps } from "./closing-prepare.ts";
import { seamSteps } from "./closing-seams.ts";
import { toplineSteps } from "./closing-topline.ts";
import { cuttingSteps } from "./cutting.ts";
import { extraSteps } from "./extras.ts";
import { factsOf } from "./facts.ts";
import { finishingSteps } from "./finishing.ts";
import { heelSteps } from "./heel.ts";
import { lastingSteps } from "./lasting.ts";
import { patternSteps } from "./pattern.ts";
import { planned } from "./plan.ts";

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
