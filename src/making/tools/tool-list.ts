import type { HazardId } from "../care/hazards.ts";
import type { Step } from "../steps/step.ts";
import type { ToolNeed } from "./tool-need.ts";
import { toolWords } from "./tool-words.ts";
import type { ToolId } from "./tools.ts";

/** What has to lie ready where something can hurt, whether the step names it or not. */
export const toolsAgainst: Readonly<Record<HazardId, readonly ToolId[]>> = {
  "solvent cement": ["half mask with organic-vapour filters", "goggles", "gloves", "metal bin", "fire extinguisher"],
  "water-based glue": ["goggles", "gloves"],
  "ink and dye": ["gloves", "goggles"],
  knife: ["first aid box", "apron", "cut-resistant glove"],
  "sewing machine": ["goggles"],
  "hammer and nails": ["goggles"],
  "lasting pincers": ["goggles"],
  heat: [],
  dust: ["dust mask", "vacuum cleaner"],
  grinding: ["goggles", "dust mask", "vacuum cleaner"],
  feet: [],
};

/** A step's own tools, then those against its hazards. */
function toolsAt({ needs, hazards }: Pick<Step, "needs" | "hazards">): readonly ToolId[] {
  return [...needs.tools, ...hazards.flatMap((hazard) => toolsAgainst[hazard])];
}

/** Every tool that the steps ask for, in the order of first use; with what stands in for it and what to buy first. */
export function toolsOf(steps: readonly Pick<Step, "id" | "needs" | "hazards">[]): readonly ToolNeed[] {
  const users = new Map<ToolId, string[]>();
  for (const step of steps) {
    for (const tool of new Set(toolsAt(step))) users.set(tool, [...(users.get(tool) ?? []), step.id]);
  }
  return [...users].map(([tool, used]) => ({ tool, ...toolWords[tool], steps: used }));
}

