import { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { Sectioner } from "#mesh/section.ts";
import type { Outline } from "#plane/outline.ts";
import { arcLengths, pointAt } from "#plane/along.ts";
import { offsetOutline } from "./grid-offset.ts";

/**
 * Silhouettes of a last standing in its frame, from above and from the side: least and greatest y, or z, of its sections at 300 places
 * along x, nearer to each other toward both ends. Independent of how the loft works out its own.
 */
export function silhouettes(mesh: Mesh): { readonly bottom: Outline; readonly side: Outline } {
  const cutter = new Sectioner(mesh);
  let [from, to] = [Infinity, -Infinity];
  for (let i = 0; i < mesh.positions.length; i += 3) [from, to] = [Math.min(from, mesh.positions[i]!), Math.max(to, mesh.positions[i]!)];
  const sections = Array.from({ length: 299 }, (_, i) => {
    const x = from + ((to - from) * (1 - Math.cos((Math.PI * (i + 1)) / 300))) / 2;
    return { x, points: cutter.cut([x, 0, 0], [1, 0, 0]).flatMap((s) => [...s.points]) };
  });
  const along = (axis: 1 | 2): Outline => {
    const range = sections.map(({ x, points }) => {
      const v = points.filter((_, k) => k % 3 === axis);
      return { x, low: Math.min(...v), high: Math.max(...v) };
    });
    return { xy: Float64Array.from([...range.flatMap((r) => [r.x, r.low]), ...range.reverse().flatMap((r) => [r.x, r.high])]) };
  };
  return { bottom: along(1), side: along(2) };
}

export interface Drawing {
  readonly turn: number;
  readonly mirrored: boolean;
  readonly pencilMm: number;
  readonly roughMm: number;
  readonly seed: number;
}

/** The outline as a hand draws it and a camera sees it: half a pencil outside, turned, moved, perhaps mirrored, rough at every half millimetre. */
export function drawn(outline: Outline, { turn, mirrored, pencilMm, roughMm, seed }: Drawing): Outline {
  const outside = pencilMm > 0 ? offsetOutline(outline, pencilMm / 2)[0]! : outline;
  const loop = { xy: Float64Array.from([...outside.xy, outside.xy[0]!, outside.xy[1]!]) };
  const arc = arcLengths(loop);
  const n = Math.round(2 * arc[arc.length - 1]!);
  let state = seed;
  const next = (): number => ((state = (state * 16807) % 2147483647) / 2147483647 - 0.5);
  // Even on ±√3 · rough: root mean square `roughMm` in x and in y.
  const off = (): number => 2 * Math.sqrt(3) * roughMm * next();
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const out = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const [x, y] = pointAt(loop, arc, (arc[arc.length - 1]! * i) / n);
    out[2 * i] = 120 + c * x - s * y + off();
    out[2 * i + 1] = (mirrored ? -1 : 1) * (-60 + s * x + c * y) + off();
  }
  return { xy: out };
}

/** Distances of every vertex of each mesh to the other: mean and greatest, mm. */
export function surfacesApart(a: Mesh, b: Mesh): { readonly mean: number; readonly worst: number } {
  let [sum, count, worst] = [0, 0, 0];
  for (const [from, to] of [[a, b], [b, a]] as const) {
    const closest = new ClosestPoint(to);
    for (let i = 0; i < from.positions.length; i += 3) {
      const { distance } = closest.find([from.positions[i]!, from.positions[i + 1]!, from.positions[i + 2]!]);
      sum += distance;
      count++;
      worst = Math.max(worst, distance);
    }
  }
  return { mean: sum / count, worst };
}
