// Cautions and tools of whole plans: what a step handles, it warns of.
import { beforeAll, describe, expect, test } from "vitest";
import { cautionsOf } from "#making/care/cautions.ts";
import type { GoodId } from "#making/goods.ts";
import { hazardIds, type HazardId } from "#making/care/hazards.ts";
import type { Step } from "#making/steps/step.ts";
import { stepsOf } from "#making/steps/steps.ts";
import { toolsAgainst, toolsOf } from "#making/tools/tool-list.ts";
import type { ToolId } from "#making/tools/tools.ts";
import { makingInput } from "../support/making-pairs.ts";

/** What a step handles, and what that can do. Common practice, no source. */
const ofGood: Partial<Record<GoodId, HazardId>> = { "contact cement": "solvent cement", "lasting nails": "hammer and nails", "lasting tacks": "hammer and nails", "heel nails": "hammer and nails", latex: "water-based glue", "water-based cement": "water-based glue", "edge finish": "ink and dye" };
const ofTool: Partial<Record<ToolId, HazardId>> = { "clicking knife": "knife", "skiving knife": "knife", "sewing machine": "sewing machine", "lasting pincers": "lasting pincers", "hair dryer": "heat" };

function unwarned({ id, needs, hazards }: Step): readonly string[] {
  const asked = [...needs.goods.map((good) => [good, ofGood[good]] as const), ...needs.tools.map((tool) => [tool, ofTool[tool]] as const)];
  return asked.flatMap(([what, hazard]) => (hazard === undefined || hazards.includes(hazard) ? [] : [`${id}: ${what}, but no word of ${hazard}`]));
}

describe("whole plans", () => {
  let plans: readonly (readonly Step[])[];
  beforeAll(() => {
    plans = [makingInput(), makingInput({ parts: { cut: "quarters", lining: "one", strap: true, gore: true }, shell: { edge: "bound" } })].map(stepsOf);
  }, 120_000);

  test("a step that takes cement, nails, a knife, the machine, pincers or heat warns of it", () => {
    for (const steps of plans) {
      expect(steps.length).toBeGreaterThan(10);
      expect(steps.flatMap(unwarned)).toEqual([]);
    }
  });

  test("a usual pair meets every hazard once, the foot at the end", () => {
    const met = cautionsOf(plans[0]!).map(({ hazard }) => hazard);
    expect([...met].sort()).toEqual([...hazardIds].sort());
    expect(met[0]).toBe("knife");
    expect(met.at(-1)).toBe("feet");
    for (const { id, needs, hazards } of plans.flat()) if (hazards.includes("solvent cement")) expect(needs.goods, id).toContain("contact cement");
  });

  test("cautions come as the steps meet them and name only steps of the plan that carry them", () => {
    for (const steps of plans) {
      const cautions = cautionsOf(steps);
      const firstAt = cautions.map(({ steps: [first] }) => steps.findIndex(({ id }) => id === first));
      expect(firstAt).toEqual([...firstAt].sort((a, b) => a - b));
      expect(new Set(cautions.map(({ hazard }) => hazard))).toEqual(new Set(steps.flatMap(({ hazards }) => hazards)));
      for (const { hazard, steps: named } of cautions) expect(named).toEqual(steps.filter(({ hazards }) => hazards.includes(hazard)).map(({ id }) => id));
    }
  });

  test("the tool list holds every tool of every step, and what stands against its hazards", () => {
    for (const steps of plans) {
      const list = new Map(toolsOf(steps).map(({ tool, steps: users }) => [tool, users]));
      for (const { id, needs, hazards } of steps) for (const tool of [...needs.tools, ...hazards.flatMap((hazard) => toolsAgainst[hazard])]) expect(list.get(tool), tool).toContain(id);
      const firstAt = [...list.values()].map(([first]) => steps.findIndex(({ id }) => id === first));
      expect(firstAt).toEqual([...firstAt].sort((a, b) => a - b));
    }
  });
});
