// The tool list: what the steps ask for, in the order of first use, and what may stand in. Facts of the trade: common practice, no source.
import { describe, expect, test } from "vitest";
import type { HazardId } from "#making/care/hazards.ts";
import { toolsAgainst, toolsOf } from "#making/tools/tool-list.ts";
import { toolWords } from "#making/tools/tool-words.ts";
import { toolIds, type ToolId } from "#making/tools/tools.ts";

const step = (id: string, tools: readonly ToolId[], ...hazards: readonly HazardId[]) => ({ id, needs: { goods: [], tools }, hazards });
const protecting = ["half mask with organic-vapour filters", "goggles", "gloves"] as const;

describe("tools of steps", () => {
  test("each once, in the order of first use, with all steps that use it", () => {
    const list = toolsOf([step("cut", ["clicking knife", "awl"]), step("skive", ["skiving knife", "paring stone", "clicking knife"]), step("prick", ["awl"])]);
    expect(list.map(({ tool, steps }) => [tool, steps])).toEqual([
      ["clicking knife", ["cut", "skive"]],
      ["awl", ["cut", "prick"]],
      ["skiving knife", ["skive"]],
      ["paring stone", ["skive"]],
    ]);
    expect(list[0]).toEqual({ tool: "clicking knife", ...toolWords["clicking knife"], steps: ["cut", "skive"] });
    expect(toolsOf([])).toEqual([]);
  });

  test("mask, goggles and gloves come along with solvent cement even where the step forgets them; named twice they are listed once", () => {
    const list = toolsOf([step("fold", ["bone folder"]), step("stick", ["glue brush", "goggles", "goggles"], "solvent cement")]);
    expect(list.slice(0, 3).map(({ tool }) => tool)).toEqual(["bone folder", "glue brush", "goggles"]);
    for (const tool of protecting) expect(list.filter((need) => need.tool === tool).map(({ steps, must }) => [steps, must]), tool).toEqual([[["stick"], true]]);
    expect(toolsOf([step("sand", [], "dust")]).map(({ tool }) => tool)).toEqual(["dust mask", "vacuum cleaner"]);
  });

  test("a pair without solvent cement asks for no mask", () => {
    expect(toolsOf([step("paste", ["paste brush"], "heat"), step("cut", ["clicking knife"], "knife")]).map(({ tool }) => tool)).toEqual(["paste brush", "clicking knife", "first aid box", "apron", "cut-resistant glove"]);
  });

  test("with latex or water-based cement hands and eyes are kept all the same; the mask and the extinguisher belong to solvent", () => {
    expect(toolsOf([step("stick", ["paste brush"], "water-based glue")]).map(({ tool, must }) => [tool, must])).toEqual([["paste brush", false], ["goggles", true], ["gloves", true]]);
    expect(toolsOf([step("ink", [], "ink and dye")]).map(({ tool }) => tool)).toEqual(["gloves", "goggles"]);
  });
});

describe("what is said of tools", () => {
  test("every tool has its use; what may stand in, or that nothing may", () => {
    expect(Object.keys(toolWords).sort()).toEqual([...toolIds].sort());
    expect(new Set(toolIds).size).toBe(toolIds.length);
    for (const tool of toolIds) {
      const { use, standIn, noStandIn } = toolWords[tool];
      expect(use, tool).toMatch(/^[A-Z][^]*[a-z]\.$/);
      expect(Number(standIn !== undefined) + Number(noStandIn !== undefined), tool).toBe(1);
      if (noStandIn) expect(noStandIn, tool).toMatch(/^Nothing/);
      for (const text of [use, standIn ?? noStandIn!]) expect(text.length, text).toBeLessThan(190);
    }
    expect(new Set(toolIds.map((tool) => toolWords[tool].use)).size).toBe(toolIds.length);
  });

  test("nothing stands in for mask filters, goggles and gloves at solvent cement, and all are bought first", () => {
    for (const tool of protecting) {
      expect(toolWords[tool].standIn).toBeUndefined();
      expect(toolWords[tool].noStandIn).toMatch(/^Nothing stands in for (?:it at solvent cement|them: )/);
      expect(toolWords[tool]).toMatchObject({ must: true, buy: "first" });
    }
    expect(toolWords["half mask with organic-vapour filters"].noStandIn).toContain("a dust mask least of all");
  });

  test("what must be there is bought first; what stands against a hazard must be there, but for what only makes it rarer: apron, glove and vacuum cleaner", () => {
    for (const tool of toolIds) if (toolWords[tool].must) expect(toolWords[tool].buy, tool).toBe("first");
    for (const tool of Object.values(toolsAgainst).flat()) if (!["apron", "cut-resistant glove", "vacuum cleaner"].includes(tool)) expect(toolWords[tool].must, tool).toBe(true);
  });

  test("a tile for the paring stone, a jar for the roller, a needle for the awl (common practice, no source)", () => {
    expect(toolWords["paring stone"].standIn).toMatch(/marble/);
    expect(toolWords.roller.standIn).toMatch(/jar/);
    expect(toolWords.awl.standIn).toMatch(/needle/);
    expect(toolWords["hair dryer"].standIn).toMatch(/^Nothing hotter/);
  });
});
