import { join } from "node:path";
import { cautionWords } from "#making/care/cautions.ts";
import { hazardIds } from "#making/care/hazards.ts";
import type { Limit } from "#making/care/caution.ts";
import { limitOrigin, limits } from "#making/care/limits.ts";
import { restrictions, restrictionWords } from "#making/care/restrictions.ts";
import { roomWords } from "#making/care/room-words.ts";
import { filterFor } from "#making/care/filters.ts";
import { solventIds, solvents } from "#making/care/solvents.ts";
import { toolWords } from "#making/tools/tool-words.ts";
import { toolIds, type ToolId } from "#making/tools/tools.ts";
import { textOf, type Made } from "./make.ts";

/** The two pages for the maker that tell cautions, limits and tools as the program does. */
const pages = [join("docs", "guide", "working-with-care.md"), join("docs", "guide", "bench-tools.md")];

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => "---"), ...rows].map((cells) => `| ${cells.join(" | ")} |`).join("\n");
const list = (items: readonly string[]): string => items.map((item) => `- ${item}`).join("\n");

function cautionsTold(): string {
  return hazardIds
    .map((hazard) => {
      const { title, short, what, care, first, source } = cautionWords[hazard];
      return `## ${title}\n\n**${short}**\n\n${what}\n\n${list(care)}\n\n**${first}** From: ${source}.`;
    })
    .join("\n\n");
}

/** Figures of one limit, as short as they go: "50 (192); 15 min: 100 (384)". */
function shortFigures({ ppm, mgPerM3, short, ceilingPpm }: Limit): string {
  const pair = (of: { readonly ppm: number; readonly mgPerM3?: number }): string => `${of.ppm}${of.mgPerM3 === undefined ? "" : ` (${of.mgPerM3})`}`;
  return [pair({ ppm, mgPerM3 }), ...(short ? [`15 min: ${pair(short)}`] : []), ...(ceilingPpm === undefined ? [] : [`never over ${ceilingPpm}`])].join("; ");
}

/** One row a solvent; beneath it each law or advice once, with where it was read. */
function limitsTold(): string {
  const whose = [...new Set(limits.map((limit) => limit.jurisdiction))];
  const of = (id: string, jurisdiction: string): string => limits.filter((l) => l.substance === id && l.jurisdiction === jurisdiction).map(shortFigures).join("; ") || "–";
  const through = (id: string): string => (limits.some((l) => l.substance === id && l.skin) ? " (goes through the skin too)" : "");
  const origins = [...new Set(limits.map(limitOrigin))].map((origin) => {
    const mine = limits.filter((limit) => limitOrigin(limit) === origin);
    const sources = [...new Set(mine.map(({ source }) => source))].map((source) => `${mine.filter((limit) => limit.source === source).map(({ substance }) => substance).join(", ")}: ${source}`);
    return `${origin} (${mine[0]!.kind}). Read in: ${sources.join("; ")}.`;
  });
  return `${table(["solvent", ...whose], solventIds.map((id) => [`${id}${through(id)}`, ...whose.map((jurisdiction) => of(id, jurisdiction))]))}\n\nWhere each comes from:\n\n${list(origins)}`;
}

function filtersTold(): string {
  return table(["solvent", "number on the data sheet (CAS)", "boils at, °C", "filter (EN 14387)", "boiling point from"], solventIds.map((id) => [id, solvents[id].cas, String(solvents[id].boilsC), filterFor(solvents[id].boilsC), solvents[id].source]));
}

function toolsTold(buy: "first" | "later"): string {
  const row = (tool: ToolId): readonly string[] => {
    const { use, standIn, noStandIn, must } = toolWords[tool];
    return [tool, use, standIn ?? noStandIn ?? "–", must ? "yes" : "no"];
  };
  return table(["tool", "what it is for", "what may stand in", "needed"], toolIds.filter((tool) => toolWords[tool].buy === buy).map(row));
}

function made(what: string): string {
  switch (what) {
    case "cautions": return cautionsTold();
    case "restrictions": return list(restrictions.map(restrictionWords));
    case "limits": return limitsTold();
    case "filters": return filtersTold();
    case "room": return roomWords({ cementG: 55, pairs: 3 }).join("\n\n");
    case "first tools": return toolsTold("first");
    case "later tools": return toolsTold("later");
    default: throw new Error(`Nothing is known of a made block "${what}".`);
  }
}

/** A page with all its made blocks made anew; what stands outside them stays. */
export function careFilled(text: string): string {
  return text.replaceAll(/<!-- made: ([a-z ]+) -->\n[\s\S]*?<!-- end -->/g, (_, what: string) => `<!-- made: ${what} -->\n${made(what)}\n<!-- end -->`);
}

export function carePages(): readonly Made[] {
  return pages.map((path) => ({ path, text: careFilled(textOf(path)!) }));
}
