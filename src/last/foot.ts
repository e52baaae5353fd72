import { finding, type Finding } from "#base/findings.ts";
import type { Watch } from "#base/watch.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { Sectioner } from "#mesh/section.ts";
import type { FootMeasures } from "./foot-measures.ts";
import { footPoints, footSide, type FootPoints } from "./foot-points.ts";
import { standFoot, type StandingFoot } from "./foot-stand.ts";
import { unusualFoot } from "./foot-usual.ts";
import { girthAt, planLength, tapeGirth } from "./girth.ts";
import type { Placement, Point3, Side } from "./last.ts";
import { unit } from "./vector.ts";

/** One scanned foot, standing: mm, z up from the ground, x from heel to toes, y to the left. */
export interface Foot {
  readonly side: Side;
  readonly mesh: Mesh;
  readonly placement: Placement;
  readonly level: StandingFoot["level"];
  readonly points: FootPoints;
  readonly measures: FootMeasures;
  readonly findings: readonly Finding[];
}

/**
 * Measures a scanned foot. A foot is no last: there is no feather edge, and its findings say so.
 * @param scan cleaned, in the file's own unit and pose
 * @throws Refusal when no unit makes it as long as a foot, or it has no section at its ball
 */
export function measureFoot(scan: Mesh, watch: Watch): Foot {
  watch("foot", 0);
  const { mesh, placement, level, findings } = standFoot(scan);
  watch("foot", 0.5);
  const cutter = new Sectioner(mesh);
  const { side, agree } = footSide(cutter);
  const points = footPoints(cutter, side);
  const { heel, front, innermost, outermost } = points;
  const across: Point3 = unit([innermost[1] - outermost[1], outermost[0] - innermost[0], 0]);
  const measures: FootMeasures = {
    planLength: planLength(mesh),
    planBreadth: extentY(mesh.positions, () => true),
    girthAt70: girthAt(cutter, 0.7),
    footLength: front[0] - heel[0],
    ballLength: innermost[0] - heel[0],
    footBreadth: Math.abs(innermost[1] - outermost[1]),
    ballGirth: settledGirth(cutter, innermost, across),
    heelBreadth: extentY(mesh.positions, (i) => mesh.positions[i]! - heel[0] < 0.25 * (front[0] - heel[0]) && mesh.positions[i + 2]! < 40),
  };
  return { side, mesh, placement, level, points, measures, findings: [finding("is-a-foot", {}), ...findings, ...(agree ? [] : [finding("foot-side-doubtful", { side })]), ...unusualFoot(measures)] };
}

/** Least tape girth of the planes through a level line, from upright to leaning 40 degrees toward the toes. */
function settledGirth(cutter: Sectioner, point: Point3, [nx, ny]: Point3): number {
  const toward = nx < 0 ? -1 : 1;
  let least = Infinity;
  for (let lean = 0; lean < 0.85; lean += 0.05) {
    const girth = tapeGirth(cutter, point, unit([toward * nx, toward * ny, -lean]));
    if (girth > 0 && girth < least) least = girth;
  }
  return least;
}

/** Extent along y of the vertices that count; index is that of x. */
function extentY(p: Float64Array, counts: (i: number) => boolean): number {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < p.length; i += 3) {
    if (!counts(i)) continue;
    low = Math.min(low, p[i + 1]!);
    high = Math.max(high, p[i + 1]!);
  }
  return high > low ? high - low : 0;
}
