import { finding, type Finding } from "#base/findings.ts";
import type { FeatherLine } from "./last.ts";
import { pointAt } from "./vector.ts";

/** Below this an edge is too soft to be sure of: a bend of less than 35 degrees within 3 mm. */
const softBelow = 0.4;

/** What is doubtful about the line: soft stretches, or no edge at all. */
export function edgeFindings({ points, confidence, toeIndex }: FeatherLine): Finding[] {
  const n = confidence.length;
  let soft = 0;
  let middle = -1;
  let longest = 0;
  let run = 0;
  // Twice round, so that a soft stretch over the seat point counts as one.
  for (let i = 0; i < 2 * n; i++) {
    const isSoft = confidence[i % n]! < softBelow;
    if (isSoft && i < n) soft++;
    run = isSoft ? Math.min(n, run + 1) : 0;
    if (run > longest) {
      longest = run;
      middle = (((i - (run >> 1)) % n) + n) % n;
    }
  }
  const share = soft / n;
  if (share > 0.6) return [finding("edge-none", { share })];
  if (share < 0.03) return [];
  return [finding("edge-soft", { share, where: placeName(middle / n, toeIndex / n) }, pointAt(points, middle))];
}

/** A stretch of the line in trade words, by its place from the seat point (0) over the medial side, the toe point and back (1). */
function placeName(at: number, toe: number): string {
  const medial = at <= toe;
  const fromSeat = medial ? at / toe : (1 - at) / (1 - toe);
  const part = fromSeat < 0.22 ? "seat" : fromSeat < 0.58 ? "waist" : fromSeat < 0.82 ? "joint" : "toe";
  return fromSeat < 0.08 ? "at the back of the seat" : fromSeat > 0.93 ? "at the toe" : `longest at the ${medial ? "medial" : "lateral"} ${part}`;
}
