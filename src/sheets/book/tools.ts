import type { ToolNeed } from "#making/tools/tool-need.ts";
import type { Block } from "./block.ts";
import type { Book } from "./book.ts";
import type { Chapter } from "./flow.ts";
import { upperFirst } from "./numbers.ts";
import { columnsFor, tableBlocks, tickBox, type BookCell } from "./table.ts";
import { heading, lines, small, strong } from "./words.ts";

/** Tools by what the pair cannot be made without, each with what may stand in. */
export function toolsChapter({ input: { making }, room: { width } }: Book): Chapter | undefined {
  const { tools } = making;
  if (tools.length === 0) return undefined;
  const groups = [["Without these the pair cannot be made", tools.filter((t) => t.must)], ["These make the work lighter", tools.filter((t) => !t.must)]] as const;
  return { title: "Tools", blocks: groups.flatMap(([told, of], i) => (of.length === 0 ? [] : [headed(told, width, i > 0), ...toolTable(of, width)])) };
}

const headed = (told: string, width: number, gap: boolean): Block => ({ cells: [{ x: 0, lines: lines(told, width, heading) }], keep: true, gapMm: gap ? 5 : 0 });

function toolTable(tools: readonly ToolNeed[], width: number): readonly Block[] {
  const columns = columnsFor(width, [{ head: "", mm: 7 }, { head: "Tool", mm: 36, letters: strong }, { head: "What for", letters: small }, { head: "What may stand in", letters: small }]);
  return tableBlocks(columns, tools.map((t): readonly BookCell[] => [[tickBox(3.6, "", 4)], upperFirst(t.tool), t.use, standIn(t)]));
}

const standIn = ({ standIn: other, noStandIn, must }: ToolNeed): string => (other ? upperFirst(other) : noStandIn ? (/^nothing/i.test(noStandIn) ? noStandIn : `Nothing: ${noStandIn}`) : must ? "Nothing" : "");
