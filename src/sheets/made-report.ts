import type { BottomMade } from "#pieces/bottom/made.ts";
import { rounded } from "./report-number.ts";

/** What the bottom is built of, as plain data. How thick the filler is at each corner of the bottom's triangles is left out: they are not in the report. */
export function madeReport({ filler, ...made }: BottomMade) {
  return rounded({ ...made, ...(filler && { filler: { ...filler, ...(filler.depth && { depth: depthOf(filler.depth) }) } }) });
}

type Depth = NonNullable<NonNullable<BottomMade["filler"]>["depth"]>;
const depthOf = ({ volumeMm3, mostMm, mostFromSeatMm }: Depth) => ({ volumeMm3, mostMm, mostFromSeatMm });
