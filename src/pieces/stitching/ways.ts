import { evenWidth, offsetEdge } from "#plane/edge-offset.ts";
import { reversed } from "#plane/along.ts";
import { cutAtCrossing, extendEnd, extendStart } from "#plane/join.ts";
import { lengthOf } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { linesInside } from "../inside-piece.ts";
import type { NetPanel } from "../panel.ts";

/** Far enough for a line to run on to its neighbour or out of its piece, mm. */
const reachMm = 40;

/** A row so far inside an edge of a panel, between the net lines of its neighbours: where their seams are, it goes on in the next panel. */
export function rowBeside({ edges }: NetPanel, k: number, inMm: number): Polyline {
  const { line } = edges[k]!;
  if (inMm === 0) return line;
  const n = edges.length;
  const [before, after] = [edges[(k + n - 1) % n]!.line, edges[(k + 1) % n]!.line];
  const row = offsetEdge(line, evenWidth(line, -inMm));
  const reach = 3 * inMm + 12;
  const tail = cutAtCrossing(extendEnd(row, reach), extendStart(after, reach))?.before ?? row;
  return reversed(cutAtCrossing(extendEnd(reversed(tail), reach), reversed(extendEnd(before, reach)))?.before ?? reversed(tail));
}

/** A line run on straight at both ends as far as it lies in a piece; the longest part where there are several, the line itself where there is none. */
export function acrossPiece(within: Outline, line: Polyline): Polyline {
  const parts = linesInside(within, extendEnd(extendStart(line, reachMm), reachMm));
  return parts.reduce<Polyline | undefined>((best, part) => (!best || lengthOf(part) > lengthOf(best) ? part : best), undefined) ?? line;
}

/** How much of a line lies in an outline, mm. */
export const lengthInside = (within: Outline, line: Polyline): number => linesInside(within, line).reduce((sum, part) => sum + lengthOf(part), 0);

export const mean = (a: number, b: number): number => (a + b) / 2;
