import { capital } from "#base/listed.ts";
import type { ToolNeed } from "#making/tools/tool-need.ts";
import type { Block, Line } from "./block.ts";
import type { Book } from "./book.ts";
import { halfOf, inTwoColumns } from "./entries.ts";
import type { Chapter } from "./flow.ts";
import { tickBox } from "./table.ts";
import { fine, heading, labelled, lines, small, together } from "./words.ts";

const boxMm = 5;

/** Tools by what the pair cannot be made without, each with what may stand in. */
export function toolsChapter({ input: { making }, room: { width } }: Book): Chapter | undefined {
  const { tools } = making;
  if (tools.length === 0) return undefined;
  const intro = "Behind each tool what it is for, and what may stand in for it. Tick what lies ready.";
  const groups = [["Without these the pair cannot be made", tools.filter((t) => t.must)], ["These make the work lighter", tools.filter((t) => !t.must)]] as const;
  const blocks = groups.flatMap(([told, of]) => (of.length === 0 ? [] : [headed(told, width), ...inTwoColumns(of.map((t) => toolLines(t, halfOf(width))), width, 1.2)]));
  return { title: "Tools", joins: true, blocks: [{ cells: [{ x: 0, lines: lines(intro, width, small) }], keep: true }, ...blocks] };
}

const headed = (told: string, width: number): Block => ({ cells: [{ x: 0, lines: lines(told, width, heading) }], keep: true, gapMm: 3 });

function toolLines(tool: ToolNeed, width: number): readonly Line[] {
  const told = together(labelled(`${capital(tool.tool)}.`, [tool.use, standIn(tool)].filter(Boolean).join(" "), width - boxMm, fine), boxMm);
  const box = tickBox(3.2);
  return [{ ...told, ink: (ink, x, top) => [box, told].forEach((l) => l.ink(ink, x, top)) }];
}

/** "Instead: a thick needle in a cork." */
function standIn({ standIn: other, noStandIn, must }: ToolNeed): string {
  if (other) return `Instead: ${other.charAt(0).toLowerCase()}${other.slice(1)}`;
  return noStandIn ? (/^nothing/i.test(noStandIn) ? noStandIn : `Nothing stands in: ${noStandIn}`) : must ? "Nothing stands in for it." : "";
}
