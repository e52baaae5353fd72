import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { boundaryLoops, neighbours } from "#mesh/neighbours.ts";
import { hullGirth, sectionLength, type Sectioner } from "#mesh/section.ts";
import type { Last } from "./last.ts";
import type { Pose } from "./pose.ts";

/**
 * Refuses shapes that are no last, by proportions every last and foot keeps with room to spare (our own limits, no source), and
 * tells where the pose is doubtful. `cutter` cuts the mesh lying in its pose, mm.
 * @throws Refusal that says what is wrong and what to do
 */
export function refuseNoLast(cutter: Sectioner, pose: Pose, lengthMm: number): readonly Finding[] {
  const width = pose.width / pose.length;
  const height = pose.height / pose.length;
  const share = (v: number): string => v.toFixed(2);
  if (height < 0.12) refuse(`it is flat, only ${share(height)} of its length high (a last is about a third)`);
  if (width > 0.62) refuse(`it is ${share(width)} of its length wide (a last is about a third)`);
  if (width < 0.2) refuse(`it is only ${share(width)} of its length wide (a last is about a third)`);
  if (height > 1.4) refuse(`it stands ${share(height)} of its length high (a last is about a third)`);
  if (pose.fall < 0.04) refuse("its top does not fall from heel to toe");
  refuseShell(cutter, lengthMm);
  refuseWideTop(cutter, lengthMm);
  return pose.margin < 0.03 ? [finding("pose-doubtful", {})] : [];
}

/** A ball narrower than this share of the seat is none: of lasts it is 1.2 to 1.5 times as wide, of feet at least as wide. Our own limit. */
const leastBall = 0.95;

/**
 * Refuses a smooth round body, such as a bottle, that passes by its proportions: it has no feather edge most of the way round and
 * does not widen from the heel to the ball. Widths that rest on the maker's own points are not judged.
 * @throws Refusal
 */
export function refuseNoBall({ findings, measures, placed }: Last): void {
  const own = (["jointMedial", "jointLateral", "seatMedial", "seatLateral"] as const).some((name) => placed.includes(name));
  const bare = findings.find((f) => f.code === "edge-none");
  if (!bare || own || measures.ballWidth >= leastBall * measures.seatWidth) return;
  const { share } = bare.data as { share: number };
  refuse(`it has no feather edge on ${(100 * share).toFixed(0)} % of the way round, and where the ball should be it is ${measures.ballWidth.toFixed(0)} mm wide, narrower than the ${measures.seatWidth.toFixed(0)} mm behind (a last is widest at the ball)`);
}

function refuse(why: string): never {
  throw new Refusal(finding("not-a-last", { why }));
}

/** A last is solid: cut across, its outline is as long as a tape round it. A shoe is cut twice, inside and out, or is open. */
function refuseShell(cutter: Sectioner, lengthMm: number): void {
  let [cut, tape] = [0, 0];
  for (const share of [0.12, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8]) {
    const sections = cutter.cut([share * lengthMm, 0, 0], [1, 0, 0]);
    const points = sections.flatMap((s) => [...s.points]);
    if (points.length < 9) continue;
    cut += sections.reduce((sum, s) => sum + sectionLength(s), 0);
    tape += hullGirth(Float64Array.from(points), [1, 0, 0]);
  }
  if (tape === 0) refuse("a cut across it finds no surface");
  if (cut > 1.35 * tape) throw new Refusal(finding("looks-like-shoe", { why: `cut across, it has ${(cut / tape).toFixed(1)} times the outline of a solid body, so it is hollow or in several layers` }));
  const open = widestOpening(cutter);
  if (open.lengthMm > 0.55 * lengthMm && open.lowMm < 0.3 * lengthMm)
    throw new Refusal(finding("looks-like-shoe", { why: `it is open along ${open.lengthMm.toFixed(0)} mm of its ${lengthMm.toFixed(0)} mm length` }));
}

/**
 * A shoe whose mouth was closed over has a broad top where a last or a foot narrows to a ridge: at 30 and 40 % of the length the
 * top sixth of a last is about 0.6 as wide as the whole there, of a foot up to 0.65, of a shoe 0.85 and more.
 */
function refuseWideTop(cutter: Sectioner, lengthMm: number): void {
  const fullness = [0.3, 0.4].map((share) => topWidth(cutter, share * lengthMm)).reduce((a, b) => a + b, 0) / 2;
  if (fullness > 0.78) throw new Refusal(finding("looks-like-shoe", { why: `behind its middle the top is ${(100 * fullness).toFixed(0)} % as wide as the whole, as the mouth of a shoe is (a last narrows to about 60 %)` }));
}

/** Width of the top 15 % of the height in the cut at x, as a share of the width of the whole cut. */
function topWidth(cutter: Sectioner, x: number): number {
  const points = cutter.cut([x, 0, 0], [1, 0, 0]).flatMap((s) => [...s.points]);
  const range = (axis: 1 | 2, above: number): readonly [number, number] => {
    let [low, high] = [Infinity, -Infinity];
    for (let i = 0; i < points.length; i += 3) {
      if (points[i + 2]! < above) continue;
      low = Math.min(low, points[i + axis]!);
      high = Math.max(high, points[i + axis]!);
    }
    return [low, high];
  };
  const [bottom, top] = range(2, -Infinity);
  const [left, right] = range(1, -Infinity);
  const [topLeft, topRight] = range(1, bottom + 0.85 * (top - bottom));
  return right > left ? (topRight - topLeft) / (right - left) : 0;
}

/** The opening that reaches farthest along x: how far, and the height of its lowest point. */
function widestOpening({ mesh }: Sectioner): { lengthMm: number; lowMm: number } {
  const { positions: p, triangles } = mesh;
  let best = { lengthMm: 0, lowMm: Infinity };
  for (const loop of boundaryLoops(neighbours(mesh).twin)) {
    let [from, to, low] = [Infinity, -Infinity, Infinity];
    for (const h of loop) {
      const v = 3 * triangles[h]!;
      from = Math.min(from, p[v]!);
      to = Math.max(to, p[v]!);
      low = Math.min(low, p[v + 2]!);
    }
    if (to - from > best.lengthMm) best = { lengthMm: to - from, lowMm: low };
  }
  return best;
}
