import type { FlatShell } from "#shell/shell.ts";
import { vertexMeans } from "#shell/strain.ts";

/** What the map shows: how far the leather must give or gather from the flat piece to the last, or how far the card laid back on it stands off. */
export type MapOf = "give" | "gather" | "stand-off";

/** Signed stretch at each vertex as a share (+0.02: must give 2 %), by the same mean as the figures of the shell's summary. */
export function stretchAtVertices({ shell, stretchMax, stretchMin }: FlatShell, of: "give" | "gather"): Float64Array {
  return vertexMeans(shell.mesh, (of === "give" ? stretchMax : stretchMin).map((s) => s - 1));
}

/** Vertex where the map is farthest from zero in its own direction, and the value there. */
export function worstOf(stretch: Float64Array, of: MapOf): { readonly vertex: number; readonly value: number } {
  let vertex = 0;
  for (let v = 1; v < stretch.length; v++) if (of === "gather" ? stretch[v]! < stretch[vertex]! : stretch[v]! > stretch[vertex]!) vertex = v;
  return { vertex, value: stretch[vertex] ?? 0 };
}

/** End of the scale, a round share that takes in nearly all of the piece: 0.02, 0.04, 0.06, 0.1, 0.2 or 0.4. */
export function scaleEnd(stretch: Float64Array): number {
  const sorted = Float64Array.from(stretch, Math.abs).sort();
  const most = sorted[Math.floor(sorted.length * 0.99)] ?? 0;
  return [0.02, 0.04, 0.06, 0.1, 0.2].find((end) => most <= end) ?? 0.4;
}

/** The same for what stands off: 1, 2, 4 or 8 mm. */
export function scaleEndMm(standOff: Float64Array): number {
  const most = standOff.reduce((a, b) => Math.max(a, b), 0);
  return [1, 2, 4].find((end) => most <= end) ?? 8;
}

/** Levels of the numbered lines: a quarter of the scale apart, zero left out (it would run wild where nothing stretches). */
export function levelsFor(end: number): readonly number[] {
  const step = end / 4;
  return [-4, -3, -2, -1, 1, 2, 3, 4].map((k) => k * step);
}

/** A point on an edge of the mesh: `a` + t·(`b` − `a`), so that it can be laid on the last and on the card alike. */
export interface EdgePoint {
  readonly a: number;
  readonly b: number;
  readonly t: number;
}
export interface LevelLine {
  readonly level: number;
  readonly points: readonly EdgePoint[];
}

/** Where points on edges lie, given where the vertices do: `size` numbers for each, as in `from`. */
export function lay(points: readonly EdgePoint[], from: Float64Array, size: 2 | 3): Float64Array {
  const out = new Float64Array(points.length * size);
  points.forEach(({ a, b, t }, i) => {
    for (let k = 0; k < size; k++) out[i * size + k] = from[a * size + k]! * (1 - t) + from[b * size + k]! * t;
  });
  return out;
}

/** Lines of equal stretch across a triangle mesh, chained; each level by marching over the triangles. */
export function levelLines(triangles: Uint32Array, value: Float64Array, levels: readonly number[]): LevelLine[] {
  return levels.flatMap((level) => chain(crossings(triangles, value, level)).map((points) => ({ level, points })));
}

function crossings(triangles: Uint32Array, value: Float64Array, level: number): (readonly [EdgePoint, EdgePoint])[] {
  const found: (readonly [EdgePoint, EdgePoint])[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const ends: EdgePoint[] = [];
    for (let k = 0; k < 3; k++) {
      const p = triangles[t + k]!;
      const q = triangles[t + ((k + 1) % 3)]!;
      if (value[p]! < level === value[q]! < level) continue;
      const [a, b] = p < q ? [p, q] : [q, p];
      ends.push({ a, b, t: (level - value[a]!) / (value[b]! - value[a]!) });
    }
    if (ends.length === 2) found.push([ends[0]!, ends[1]!]);
  }
  return found;
}

function chain(segments: readonly (readonly [EdgePoint, EdgePoint])[]): EdgePoint[][] {
  const key = (p: EdgePoint): string => `${p.a} ${p.b}`;
  const at = new Map<string, number[]>();
  segments.forEach((s, i) => s.forEach((p) => at.set(key(p), [...(at.get(key(p)) ?? []), i])));
  const used = new Uint8Array(segments.length);
  const walk = (from: EdgePoint): EdgePoint[] => {
    const line: EdgePoint[] = [];
    const unused = (p: EdgePoint): number | undefined => at.get(key(p))?.find((i) => used[i] === 0);
    let here = from;
    for (let next = unused(here); next !== undefined; next = unused(here)) {
      used[next] = 1;
      const [p, q] = segments[next]!;
      here = key(p) === key(here) ? q : p;
      line.push(here);
    }
    return line;
  };
  const lines: EdgePoint[][] = [];
  segments.forEach(([start], i) => {
    if (used[i]) return;
    const forth = walk(start);
    const back = walk(start);
    lines.push([...back.reverse(), start, ...forth]);
  });
  return lines;
}
