import { curveOf } from "#last/surface-curve.ts";
import type { Last } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { gridMesh } from "./formula-surfaces.ts";

/** A tube of radius r along an axis that rises by `slope`; its skin is cut by every upright plane. */
export const tube = (r: number, slope: number): Mesh => {
  const size = Math.sqrt(1 + slope * slope);
  return gridMesh((s, t) => {
    const a = 2 * Math.PI * s, x = -150 + 300 * t;
    const across = r * Math.cos(a), up = r * Math.sin(a);
    return [(x - slope * up) / size, across, (slope * x + up) / size];
  }, 720, 40);
};

type At = readonly [number, number, number];
/** A topline that passes a place so far behind its throat, where it ends. */
const lineThrough = ([x, y, z]: At, behindMm: number) => curveOf([x - 5, y, z, x, y, z, x + behindMm, y, z]);
export const linesFrom = (inner: At, outer: At, behindMm = 80): Lines => ({ toplineMedial: lineThrough(inner, behindMm), toplineLateral: lineThrough(outer, behindMm) }) as unknown as Lines;

/** What a strap is measured on: half the girth of a tube of radius 35, wherever it begins. */
export const strapOn = (behindMm: number) => ({ last: { mesh: tube(35, 0) } as unknown as Last, lines: linesFrom([0, 35, 0], [0, -35, 0], behindMm) });
