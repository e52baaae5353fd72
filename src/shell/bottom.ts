import { must } from "#base/bug.ts";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Last, SurfaceCurve } from "#last/last.ts";
import { curveLength, pointOn } from "#last/surface-curve.ts";
import { featherHalf } from "#lines/feather.ts";
import { fillOutline } from "#plane/fill.ts";
import { TriangleLocator } from "#plane/triangle-locator.ts";
import { flatten } from "#flatten/flatten.ts";
import type { Bottom, FlatBottom } from "./shell.ts";
import { summarise } from "./strain.ts";

const spacingMm = 2.5;

/** Cuts the bottom off the last along the feather line; triangles counter-clockwise seen from above (through the foot). */
export function cutBottom(last: Last): Bottom {
  const medial = featherHalf(last.feather, "medial"), lateral = featherHalf(last.feather, "lateral");
  const rim: number[] = [];
  const put = (curve: SurfaceCurve, backward: boolean): number => {
    const count = Math.round(curveLength(curve) / spacingMm);
    for (let k = 0; k < count; k++) rim.push(...pointOn(curve, (curveLength(curve) * (backward ? count - k : k)) / count));
    return count;
  };
  const toeIndex = put(medial, false);
  put(lateral, true);
  const n = rim.length / 3;
  // Over the medial side first runs clockwise in plan on a right last.
  const turned = last.side === "right";
  const place = (i: number) => (turned ? (n - i) % n : i);
  const outline = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) outline.set([rim[3 * i]!, rim[3 * i + 1]!], 2 * place(i));
  const filled = fillOutline({ outline, lines: [], spacing: spacingMm });
  const positions = new Float64Array((filled.xy.length / 2) * 3);
  for (let i = 0; i < n; i++) positions.set(rim.slice(3 * i, 3 * i + 3), 3 * place(i));
  const below = undersideOf(last);
  for (let v = n; v < filled.xy.length / 2; v++) {
    const x = filled.xy[2 * v]!, y = filled.xy[2 * v + 1]!;
    const z = below(x, y);
    if (z === undefined) throw new Refusal(finding("bottom-open", { xMm: x }, [x, y, 0]));
    positions.set([x, y, z], 3 * v);
  }
  return { mesh: { positions, triangles: filled.triangles }, loop: Uint32Array.from({ length: n }, (_, i) => place(i)), toeIndex };
}

/** Height of the lowest surface of the last over a place in plan. */
function undersideOf(last: Last): (x: number, y: number) => number | undefined {
  const { positions: p, triangles: t } = last.mesh;
  const plan = new Float64Array((p.length / 3) * 2);
  for (let v = 0; 2 * v < plan.length; v++) {
    plan[2 * v] = p[3 * v]!;
    plan[2 * v + 1] = p[3 * v + 1]!;
  }
  const locator = new TriangleLocator(plan, t);
  return (x, y) => {
    let least: number | undefined;
    for (const { triangle, weights } of locator.all(x, y)) {
      const z = weights[0] * p[3 * t[3 * triangle]! + 2]! + weights[1] * p[3 * t[3 * triangle + 1]! + 2]! + weights[2] * p[3 * t[3 * triangle + 2]! + 2]!;
      if (least === undefined || z < least) least = z;
    }
    return least;
  };
}

/** Lays the bottom flat: seat point at the origin, toe point on +x. */
export function layBottomFlat(bottom: Bottom): FlatBottom {
  const flat = flatten(bottom.mesh);
  const seat = bottom.loop[0]!, toe = bottom.loop[bottom.toeIndex]!;
  const dx = flat.uv[2 * toe]! - flat.uv[2 * seat]!, dy = flat.uv[2 * toe + 1]! - flat.uv[2 * seat + 1]!;
  const size = Math.sqrt(dx * dx + dy * dy);
  must(size > 0, "seat and toe of the flat bottom coincide");
  const uv = new Float64Array(flat.uv.length);
  for (let i = 0; i < uv.length; i += 2) {
    const x = flat.uv[i]! - flat.uv[2 * seat]!, y = flat.uv[i + 1]! - flat.uv[2 * seat + 1]!;
    uv[i] = (x * dx + y * dy) / size + 0;
    uv[i + 1] = (y * dx - x * dy) / size + 0;
  }
  return { bottom, uv, strain: summarise(bottom.mesh, flat.stretchMax, flat.stretchMin) };
}
