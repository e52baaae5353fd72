import type { Point3 } from "#last/last.ts";
import type { FlatBottom } from "#shell/shell.ts";
import type { BottomSurface } from "./bottom-surface.ts";
import { hullHeight } from "./lower-hull.ts";
import type { LastedSection } from "./sections.ts";

/** What fills the hollow between the lasted margins up to the sole. */
export interface FillerRoom {
  readonly volumeMm3: number;
  /** Greatest thickness, square to the insole, and where it is on the last's bottom. */
  readonly mostMm: number;
  readonly mostAt: Point3;
  /** How far the insole stands out between the margins at most, and where; 0 where it does not. */
  readonly proudMm: number;
  readonly proudAt: Point3;
  /** Thickness at each vertex of the flat bottom, square to the insole; 0 under the margins and where nothing is to be filled. */
  readonly thicknessMm: Float64Array;
}

/** Volume by the trapezoid rule over the sections; the thickness of each vertex between the two sections beside it. */
export function fillerRoom(sections: readonly LastedSection[], surface: BottomSurface, { bottom: { mesh } }: FlatBottom, reachMm: number): FillerRoom {
  let volumeMm3 = 0, mostMm = 0, proudMm = 0;
  let mostAt: Point3 = [0, 0, 0], proudAt: Point3 = [0, 0, 0];
  let areaBefore = 0, xBefore: number | undefined;
  for (const { x, sole, free } of sections) {
    let area = 0;
    for (const [i, b] of free.entries()) {
      const thick = b.roomMm * b.level;
      const here = (): Point3 => [x, b.y, hullHeight(sole, b.y) + b.roomMm];
      if (thick > mostMm) [mostMm, mostAt] = [thick, here()];
      if (-thick > proudMm) [proudMm, proudAt] = [-thick, here()];
      const a = free[i - 1];
      if (a) area += ((b.y - a.y) * (Math.max(0, a.roomMm) + Math.max(0, b.roomMm))) / 2;
    }
    if (xBefore !== undefined) volumeMm3 += ((x - xBefore) * (area + areaBefore)) / 2;
    [areaBefore, xBefore] = [area, x];
  }
  return { volumeMm3, mostMm, mostAt, proudMm, proudAt, thicknessMm: thicknessAt(sections, surface, mesh.positions, reachMm) };
}

/** Thickness at a place of the flat bottom, as of a right one: that of its nearest vertex, some millimetre off. */
export function thicknessNear({ uv }: FlatBottom, thicknessMm: Float64Array, sign: 1 | -1): (x: number, y: number) => number {
  return (x, y) => {
    let least = Infinity, found = 0;
    for (let v = 0; v < thicknessMm.length; v++) {
      const square = (uv[2 * v]! - x) ** 2 + (sign * uv[2 * v + 1]! - y) ** 2;
      if (square < least) [least, found] = [square, thicknessMm[v]!];
    }
    return found;
  };
}

function thicknessAt(sections: readonly LastedSection[], { insideMm, level }: BottomSurface, p: Float64Array, reachMm: number): Float64Array {
  const out = new Float64Array(insideMm.length);
  const first = sections[0], last = sections[sections.length - 1];
  if (!first || !last) return out;
  const step = (last.x - first.x) / (sections.length - 1);
  for (let v = 0; v < out.length; v++) {
    if (insideMm[v]! <= reachMm) continue;
    const k = Math.max(0, Math.min(sections.length - 2, Math.floor((p[3 * v]! - first.x) / step)));
    const a = sections[k]!, b = sections[k + 1]!;
    const t = (p[3 * v]! - a.x) / (b.x - a.x);
    const sole = (1 - t) * hullHeight(a.sole, p[3 * v + 1]!) + t * hullHeight(b.sole, p[3 * v + 1]!);
    out[v] = Math.max(0, p[3 * v + 2]! - sole) * level[v]!;
  }
  return out;
}
