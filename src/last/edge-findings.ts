import { finding, type Finding } from "#base/findings.ts";
import { closedArc } from "./closed-curve.ts";
import type { FeatherLine, Point3 } from "./last.ts";
import { softBelow } from "./ridge.ts";
import { distance, pointAt } from "./vector.ts";

/** Shorter soft stretches are not told, nor are clear ones between two soft ones that are shorter than the second, mm. */
const toldMm = 12;
const bridgedMm = 5;
const mostTold = 4;
/** So far from a point of the maker's a soft edge counts as drawn by her, mm. */
const drawnMm = 60;

/** Softer than this all round there is no feather edge. */
const mostSoft = 0.6;
export const hasEdge = (confidence: Float64Array): boolean => confidence.filter((c) => c < softBelow).length <= mostSoft * confidence.length;

/**
 * What is doubtful about the line: each soft stretch with its place and length, or that there is no edge at all.
 * @param through the maker's points on the line; soft stretches near them are her own
 */
export function edgeFindings(line: FeatherLine, through: readonly Point3[] = []): Finding[] {
  const { points, confidence, toeIndex } = line;
  const n = confidence.length;
  const arc = closedArc(points);
  const step = arc[n]! / n;
  const soft = Array.from(confidence, (c, i) => c < softBelow && !through.some((p) => distance(p, pointAt(points, i)) < drawnMm));
  const share = soft.filter(Boolean).length / n;
  if (share > mostSoft) return [finding("edge-none", { share })];
  const stretches = softStretches(soft, Math.round(bridgedMm / step)).filter(({ count }) => count * step >= toldMm);
  stretches.sort((a, b) => b.count - a.count || a.from - b.from);
  return stretches.slice(0, mostTold).map(({ from, count }) => {
    const place = (i: number): Place => placeOf((i % n) / n, toeIndex / n);
    const where = placeWords(place(from), place(from + count - 1), place(from + (count >> 1)));
    return finding("edge-soft", { lengthMm: count * step, where }, pointAt(points, (from + (count >> 1)) % n));
  });
}

/** Runs of true round a ring, short gaps bridged; `from` their first index, `count` how many. */
function softStretches(soft: readonly boolean[], bridge: number): { from: number; count: number }[] {
  const n = soft.length;
  const start = soft.indexOf(false);
  if (start < 0) return [{ from: 0, count: n }];
  const out: { from: number; count: number }[] = [];
  for (let k = 1; k <= n; k++) {
    const i = (start + k) % n;
    if (!soft[i]) continue;
    const last = out.at(-1);
    const at = start + k;
    if (last && at - (last.from + last.count) <= bridge) last.count = at - last.from + 1;
    else out.push({ from: at, count: 1 });
  }
  return out.map(({ from, count }) => ({ from: from % n, count }));
}

type Place = readonly [part: string, side: "inner" | "outer" | ""];

/** A place of the line in trade words, by its share from the seat point (0) over the medial side, the toe point and back (1). */
function placeOf(at: number, toe: number): Place {
  const medial = at <= toe;
  const fromSeat = medial ? at / toe : (1 - at) / (1 - toe);
  if (fromSeat < 0.08) return ["heel seat", ""];
  if (fromSeat > 0.93) return ["toe", ""];
  const part = fromSeat < 0.22 ? "side of the seat" : fromSeat < 0.58 ? "waist" : fromSeat < 0.82 ? "joint" : "side of the toe";
  return [part, medial ? "inner" : "outer"];
}

const named = ([part, side]: Place): string => (side ? `${side} ${part}` : part);

function placeWords(first: Place, last: Place, middle: Place): string {
  const [a, b, m] = [named(first), named(last), named(middle)];
  if (a === b) return m === a ? `at the ${a}` : `from the ${a} round the ${m} and back to it`;
  if (first[0] === last[0]) return `round the ${m}, from ${a} to ${b}`;
  return `from the ${a} to the ${b}`;
}
