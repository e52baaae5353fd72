import type { Mesh } from "#mesh/mesh.ts";
import { Sectioner } from "#mesh/section.ts";
import { standFoot } from "./foot-stand.ts";
import { toeTips } from "./foot-toes.ts";
import { planLength } from "./girth.ts";
import type { Last } from "./last.ts";

/** A comb is some three times as long as wide; a leg cut across is nearly round. */
const roundLeg = 1.8;

/**
 * Whether what was read as a last is a foot: its feather edge is soft or missing, and either its toes stand apart or its top is a leg cut off.
 * A worn last stays a last. Our own limits, no source.
 * @param scan the cleaned scan it was read from
 */
export function isFoot(scan: Mesh, last: Last): boolean {
  if (!last.findings.some((f) => f.code === "edge-none" || f.code === "edge-soft")) return false;
  const { mesh, level } = standFoot(scan);
  const cutter = new Sectioner(mesh);
  if (level === "cut") return topAspect(cutter) < roundLeg;
  const halfBreadth = mesh.positions.reduce((most, v, i) => (i % 3 === 1 ? Math.max(most, Math.abs(v)) : most), 0);
  return ([1, -1] as const).some((outward) => toeTips(cutter, planLength(mesh), halfBreadth, outward) !== undefined);
}

/** Length over breadth of the level cut 4 mm under the top. */
function topAspect(cutter: Sectioner): number {
  const top = cutter.mesh.positions.reduce((most, v, i) => (i % 3 === 2 ? Math.max(most, v) : most), -Infinity);
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { points } of cutter.cut([0, 0, top - 4], [0, 0, 1]))
    for (let i = 0; i < points.length; i += 3) {
      [x0, x1] = [Math.min(x0, points[i]!), Math.max(x1, points[i]!)];
      [y0, y1] = [Math.min(y0, points[i + 1]!), Math.max(y1, points[i + 1]!)];
    }
  const [a, b] = [x1 - x0, y1 - y0];
  return Math.max(a, b) / Math.min(a, b);
}
