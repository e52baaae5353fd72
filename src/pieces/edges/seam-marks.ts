import { edgeLength } from "../net-upper.ts";
import { notchAt, notchDepthMm, tickAt } from "../marks.ts";
import type { NetPanel } from "../panel.ts";
import { edgeWord } from "../words.ts";
import type { Drawn } from "./edge-lines.ts";

/** Half the distance of the two notches that stand together, mm. */
const pairMm = 2;

/** How a mark is made on an edge: cut in from a cutting line that lies outside the net, or drawn where the edge stays in sight. */
export interface SeamEdge {
  readonly outMm: number;
  readonly seen: boolean;
}

/** Marks of every seam but that at the back. */
export function seamMarks(panel: NetPanel, made: (edge: number) => SeamEdge): readonly Drawn[] {
  return panel.edges.flatMap((edge, k) => (edge.role === "inner waist" || edge.role === "side" ? meetingMarks(panel, k, edgeWord(edge), made(k)) : []));
}

/**
 * Marks by which both banks of a seam are brought together, at the same shares of their length: one at a third from the feather line, two
 * at two thirds, so that neither two seams nor the ends of one can be taken for each other. Where the edge stays in sight they are short
 * lines and nothing is cut.
 */
export function meetingMarks({ edges }: NetPanel, k: number, name: string, { outMm, seen }: SeamEdge): readonly Drawn[] {
  const edge = edges[k]!;
  const upward = edges[(k + edges.length - 1) % edges.length]!.role === "feather";
  const length = edgeLength(edge);
  // In a narrow allowance a notch goes half-way to the seam.
  const depthMm = Math.min(notchDepthMm, outMm > 0 ? outMm / 2 : notchDepthMm);
  return [length / 3, (2 * length) / 3 - pairMm, (2 * length) / 3 + pairMm].map((mm) => {
    const s = upward ? mm : length - mm;
    return seen ? tickAt(name, edge, s) : notchAt(name, edge, s, outMm, depthMm);
  });
}
