import { edgeLength, edgePoint } from "../net-upper.ts";
import { lineMark, notchAt, notchDepthMm, outward } from "../marks.ts";
import type { NetEdge, NetPanel } from "../panel.ts";
import type { Drawn } from "./edge-lines.ts";
import { sideWord } from "./places.ts";

/** Half the distance of the two notches that stand together, mm. */
const pairMm = 2;
/** Length of the mark that stands for a notch where the edge stays in sight, mm. */
const tickMm = 4;

/** How a mark is made on an edge: cut in from a cutting line that lies outside the net, or drawn where the edge stays in sight. */
export interface SeamEdge {
  readonly outMm: number;
  readonly seen: boolean;
}

/**
 * Marks by which both banks of a seam are brought together, at the same shares of their length: one at a third from the feather line, two
 * at two thirds, so that neither two seams nor the ends of one can be taken for each other. Where the edge stays in sight they are short
 * lines and nothing is cut.
 */
export function seamMarks({ edges }: NetPanel, made: (edge: number) => SeamEdge): readonly Drawn[] {
  return edges.flatMap((edge, k) => {
    if (edge.role !== "inner waist" && edge.role !== "side") return [];
    const upward = edges[(k + edges.length - 1) % edges.length]!.role === "feather";
    const length = edgeLength(edge);
    const name = `${edge.role === "side" ? "side seam" : "waist seam"}${sideWord(edge.half)}`;
    const { outMm, seen } = made(k);
    return [length / 3, (2 * length) / 3 - pairMm, (2 * length) / 3 + pairMm].map((mm) => {
      const s = upward ? mm : length - mm;
      return seen ? tick(name, edge, s) : notch(name, edge, s, outMm);
    });
  });
}

/** In a narrow allowance a notch goes half-way to the seam. */
const notch = (name: string, edge: NetEdge, s: number, outMm: number): Drawn => notchAt(name, edge, s, outMm, Math.min(notchDepthMm, outMm > 0 ? outMm / 2 : notchDepthMm));

function tick(name: string, edge: NetEdge, s: number): Drawn {
  const [x, y] = edgePoint(edge, s);
  const [nx, ny] = outward(edge, s);
  return lineMark(name, "place", { xy: Float64Array.of(x, y, x - tickMm * nx, y - tickMm * ny) });
}
