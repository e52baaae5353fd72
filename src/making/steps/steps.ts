import type { MakingInput } from "../input.ts";
import { toolsAgainst } from "../tools/tool-list.ts";
import type { ToolId } from "../tools/tools.ts";
import { glueHazards } from "./cement.ts";
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

/** What is put on: told at every step that wants it. */
const worn: readonly ToolId[] = ["half mask with organic-vapour filters", "goggles", "gloves", "dust mask"];

/** The hazards of the glues that a step takes, and what is worn against all its hazards: so that none can be forgotten. */
function cared(step: Step): Step {
  const hazards = [...new Set([...glueHazards(step.needs.goods), ...step.hazards])];
  const against = hazards.flatMap((hazard) => toolsAgainst[hazard]).filter((tool) => worn.includes(tool));
  return { ...step, needs: { ...step.needs, tools: [...new Set([...step.needs.tools, ...against])] }, hazards };
}

/** From the first step to the last one between which the last is taken, whatever is done meanwhile. */
const lastsTaken = ["block-boards", "slip-lasts"] as const;

function onLasts(steps: readonly Step[]): readonly Step[] {
  const [from, to] = lastsTaken.map((id) => steps.findIndex((step) => step.id === id)) as [number, number];
  return steps.map((step, k) => (k >= from && k <= to ? { ...step, onLast: true } : step));
}

/**
 * The plan for one very pair, in an order in which it can be worked through from top to bottom. Steps that the pair's choices do not ask for are
 * left out; ids stay the same for the same work on any pair. What hangs on nothing but a wait says so by `after` alone. docs/guide/the-steps.md.
 */
export function stepsOf(input: MakingInput): readonly Step[] {
  const facts = factsOf(input);
  return onLasts(planned(strands.flatMap((steps) => steps(facts))).map(cared));
}
