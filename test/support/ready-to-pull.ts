import type { KnownLeather } from "#leather/leather.ts";
import { leatherFrom } from "#leather/leather-from.ts";
import { mirrorLast } from "#last/mirror.ts";
import { fabricOf } from "#lasting/fabric.ts";
import type { PullInput } from "#lasting/pull-input.ts";
import { lastingFrom, type LastingChoices } from "#lasting/settings.ts";
import { panelledUpper, wholeUpper } from "#lasting/upper.ts";
import { layCut, lastOf, tableOf, type Table } from "./laid-panels.ts";

/** So coarse that a pull-over takes a second or two; ends come within half a millimetre of those on four times as many. */
export const coarseTriangles = 800;

const tables = new Map<number, Table>();
export function exampleTable(triangles = coarseTriangles): Table {
  const known = tables.get(triangles) ?? tableOf(lastOf(), { triangles });
  tables.set(triangles, known);
  return known;
}

export interface Asked {
  readonly upper?: KnownLeather;
  readonly settings?: Partial<LastingChoices>;
  readonly cut?: "whole" | "quarters" | "inner-seam";
  readonly triangles?: number;
}

/** The example last's upper, ready to be pulled over it, with usual leathers and everything at its rule but what is said. */
export function readyToPull({ upper = "goat", settings = {}, cut = "whole", triangles = coarseTriangles }: Asked = {}): PullInput {
  const table = exampleTable(triangles), choices = lastingFrom(settings);
  const fabric = fabricOf(leatherFrom({ known: upper }, "upper", 0.9), leatherFrom(undefined, "lining", 0.8), choices, "taped");
  return { cut: cut === "whole" ? wholeUpper(table.flat) : panelledUpper(layCut(table, cut)), last: table.last, lines: table.drawn.lines, fabric, settings: choices, margins: table.seams };
}

export const leftLast = () => mirrorLast(exampleTable().last);
