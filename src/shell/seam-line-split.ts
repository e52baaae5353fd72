import { must } from "#base/bug.ts";
import { neighbours, nextCorner } from "#mesh/neighbours.ts";
import { SignedLine } from "./seam-line-side.ts";

/** Values a vertex: `width` numbers each. They are carried to new places linearly over the triangle they lie in. */
export interface Layer {
  readonly width: 2 | 3;
  readonly values: Float64Array;
}

/** A plane mesh with what is known at its vertices. */
export interface LayeredMesh {
  readonly plane: Float64Array;
  readonly triangles: Uint32Array;
  readonly layers: readonly Layer[];
}

/** The mesh with a line as a row of its edges; vertices keep their numbers, new ones come last. */
export interface SplitMesh extends LayeredMesh {
  /** Vertices of the line from its first end on; both ends lie on the rim. */
  readonly path: Uint32Array;
  /** Vertices inside that are new or lie elsewhere than before. */
  readonly touched: readonly number[];
}

/** A vertex nearer to the line than this share of an edge across it is moved on to it, so that no slivers are left; less where that would squash triangles. */
const nearShares = [0.3, 0.2, 0.1, 0.02] as const;
/** No triangle may lose more than this share of its area by the moves. */
const mostLost = 0.75;

/**
 * Makes a line that crosses the mesh from rim to rim a row of edges: where it passes close by a vertex that one is moved on to it, elsewhere it
 * cuts triangles in two. On the rim the nearer vertex moves along the rim, so that the rim's rows of vertices stay what they are.
 * Nothing where the line does not cross the rim exactly twice. `kept` vertices (1) do not move.
 */
export function splitAlong(mesh: LayeredMesh, line: Float64Array, kept: Uint8Array): SplitMesh | undefined {
  const { triangles } = mesh;
  const { twin } = neighbours({ positions: new Float64Array((3 * mesh.plane.length) / 2), triangles });
  const side = new SignedLine(line, longestEdge(mesh));
  const at = Float64Array.from({ length: mesh.plane.length / 2 }, (_, v) => side.of(mesh.plane[2 * v]!, mesh.plane[2 * v + 1]!));
  const ends = rimCrossings(triangles, twin, at);
  if (ends.length !== 2) return undefined;
  for (const near of nearShares) {
    const moved = movedOn(mesh, side, at, ends, kept, near);
    if (moved) return dividedAt(mesh, moved, side);
  }
  return undefined;
}

function longestEdge({ plane, triangles }: LayeredMesh): number {
  let square = 0;
  for (let h = 0; h < triangles.length; h++) {
    const a = 2 * triangles[h]!, b = 2 * triangles[nextCorner(h)]!;
    square = Math.max(square, (plane[a]! - plane[b]!) ** 2 + (plane[a + 1]! - plane[b + 1]!) ** 2);
  }
  return Math.sqrt(square);
}

/** From vertex `v` a share of the way to `to`. */
interface Slide {
  readonly v: number;
  readonly to: number;
  readonly share: number;
}

/** Where the line crosses the rim: the nearer end of each crossed rim edge, and how far it must go. */
function rimCrossings(triangles: Uint32Array, twin: Int32Array, at: Float64Array): Slide[] {
  const found: Slide[] = [];
  for (let h = 0; h < triangles.length; h++) {
    if (twin[h] !== -1) continue;
    const a = triangles[h]!, b = triangles[nextCorner(h)]!;
    // A vertex on the line counts as on its + side, so that it is found once.
    if (!(Number.isFinite(at[a]!) && Number.isFinite(at[b]!)) || at[a]! >= 0 === at[b]! >= 0) continue;
    const share = at[a]! / (at[a]! - at[b]!);
    found.push(share <= 0.5 ? { v: a, to: b, share } : { v: b, to: a, share: 1 - share });
  }
  return found;
}

interface Moved {
  readonly plane: Float64Array;
  readonly layers: readonly Layer[];
  /** Signed distances, 0 on the line. */
  readonly at: Float64Array;
  readonly moved: readonly number[];
}

function movedOn(mesh: LayeredMesh, side: SignedLine, given: Float64Array, ends: readonly Slide[], kept: Uint8Array, near: number): Moved | undefined {
  const { triangles } = mesh;
  const plane = mesh.plane.slice(), at = given.slice();
  const layers = mesh.layers.map(({ width, values }) => ({ width, values: values.slice() }));
  for (const { v, to, share } of ends) {
    for (const list of [{ width: 2, values: plane }, ...layers]) for (let d = 0; d < list.width; d++) list.values[list.width * v + d]! += share * (list.values[list.width * to + d]! - list.values[list.width * v + d]!);
    at[v] = 0;
  }
  const moved = inwardMoves(triangles, given, ends, kept, near);
  for (const v of moved) {
    const [x, y] = side.footOf(mesh.plane[2 * v]!, mesh.plane[2 * v + 1]!);
    plane[2 * v] = x;
    plane[2 * v + 1] = y;
    at[v] = 0;
  }
  if (moved.length > 0) carryMoved(mesh, plane, moved, layers);
  const least = near === nearShares[nearShares.length - 1] ? 0 : 1 - mostLost;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    if (at[a] !== 0 && at[b] !== 0 && at[c] !== 0) continue;
    if (!(twiceArea(plane, a, b, c) > least * twiceArea(mesh.plane, a, b, c))) return undefined;
  }
  return { plane, layers, at, moved };
}

/** Inner vertices to be moved on to the line, the nearest first; one whose crossed edges all end on the line by then stays. */
function inwardMoves(triangles: Uint32Array, given: Float64Array, ends: readonly Slide[], kept: Uint8Array, near: number): number[] {
  const on = new Set(ends.map(({ v }) => v));
  const wanted: { readonly v: number; readonly w: number; readonly share: number }[] = [];
  for (let h = 0; h < triangles.length; h++) {
    const a = triangles[h]!, b = triangles[nextCorner(h)]!;
    if (!(given[a]! * given[b]! <= 0)) continue;
    const share = given[a] === given[b] ? 0 : given[a]! / (given[a]! - given[b]!);
    if (share < near) wanted.push({ v: a, w: b, share });
    if (1 - share < near) wanted.push({ v: b, w: a, share: 1 - share });
  }
  wanted.sort((p, q) => p.share - q.share || p.v - q.v);
  const moved: number[] = [];
  for (const { v, w } of wanted) {
    if (kept[v] === 1 || on.has(v) || on.has(w)) continue;
    on.add(v);
    moved.push(v);
  }
  return moved;
}

/** Takes the values of moved vertices from the triangle beside them in which their new place lies deepest. */
function carryMoved({ plane: from, triangles, layers: before }: LayeredMesh, to: Float64Array, moved: readonly number[], layers: readonly Layer[]): void {
  const best = new Map(moved.map((v) => [v, { deep: -Infinity, t: -1, w: [0, 0, 0] as readonly number[] }]));
  for (let h = 0; h < triangles.length; h++) {
    const own = best.get(triangles[h]!);
    if (!own) continue;
    const t = h - (h % 3), v = triangles[h]!;
    const w = weights(from, triangles[t]!, triangles[t + 1]!, triangles[t + 2]!, to[2 * v]!, to[2 * v + 1]!);
    const deep = Math.min(...w);
    if (deep > own.deep) Object.assign(own, { deep, t, w });
  }
  for (const [v, { t, w }] of best) {
    must(t >= 0, "a vertex of the mesh has a triangle");
    layers.forEach(({ width, values }, l) => {
      for (let d = 0; d < width; d++) values[width * v + d] = w.reduce((sum, share, k) => sum + share * before[l]!.values[width * triangles[t + k]! + d]!, 0);
    });
  }
}

function weights(xy: Float64Array, a: number, b: number, c: number, x: number, y: number): [number, number, number] {
  const all = twiceArea(xy, a, b, c);
  const part = (i: number, j: number): number => (xy[2 * i]! - x) * (xy[2 * j + 1]! - y) - (xy[2 * j]! - x) * (xy[2 * i + 1]! - y);
  return [part(b, c) / all, part(c, a) / all, part(a, b) / all];
}

const twiceArea = (xy: Float64Array, a: number, b: number, c: number): number =>
  (xy[2 * b]! - xy[2 * a]!) * (xy[2 * c + 1]! - xy[2 * a + 1]!) - (xy[2 * c]! - xy[2 * a]!) * (xy[2 * b + 1]! - xy[2 * a + 1]!);

/** Cuts every edge that the line still crosses, and the triangles beside it. */
function dividedAt({ triangles }: LayeredMesh, { plane, layers, at, moved }: Moved, side: SignedLine): SplitMesh {
  const out: number[] = [];
  const xy = Array.from(plane), values = layers.map((layer) => Array.from(layer.values));
  const onLine: number[] = [];
  for (let v = 0; v < at.length; v++) if (at[v] === 0) onLine.push(v);
  const made = new Map<string, number>();
  const middle = (a: number, b: number): number => {
    const [low, high] = a < b ? [a, b] : [b, a];
    const key = `${low} ${high}`, known = made.get(key);
    if (known !== undefined) return known;
    const share = side.crossing(plane, low, high, at[low]!, at[high]!);
    const between = (list: ArrayLike<number>, i: number, j: number): number => list[i]! + share * (list[j]! - list[i]!);
    xy.push(between(plane, 2 * low, 2 * high), between(plane, 2 * low + 1, 2 * high + 1));
    layers.forEach(({ width, values: list }, l) => {
      for (let d = 0; d < width; d++) values[l]!.push(between(list, width * low + d, width * high + d));
    });
    const v = xy.length / 2 - 1;
    made.set(key, v);
    onLine.push(v);
    return v;
  };
  for (let t = 0; t < triangles.length; t += 3) divide([triangles[t]!, triangles[t + 1]!, triangles[t + 2]!], at, middle, xy, out);
  const along = new Map(onLine.map((v) => [v, side.along(xy[2 * v]!, xy[2 * v + 1]!)]));
  onLine.sort((a, b) => along.get(a)! - along.get(b)!);
  return {
    plane: Float64Array.from(xy),
    triangles: Uint32Array.from(out),
    layers: layers.map(({ width }, l) => ({ width, values: Float64Array.from(values[l]!) })),
    path: Uint32Array.from(onLine),
    touched: [...moved, ...made.values()],
  };
}

type Corners = readonly [number, number, number];

function divide(corners: Corners, at: Float64Array, middle: (a: number, b: number) => number, xy: readonly number[], out: number[]): void {
  const crossed = [0, 1, 2].filter((k) => at[corners[k]!]! * at[corners[(k + 1) % 3]!]! < 0);
  if (crossed.length === 0) return void out.push(...corners);
  if (crossed.length === 1) {
    const k = crossed[0]!;
    const [a, b, c] = turned(corners, k);
    const m = middle(a, b);
    out.push(a, m, c, m, b, c);
    return;
  }
  // Turned so that the first corner lies alone on its side.
  const lone = [0, 1, 2].find((k) => crossed.includes(k) && crossed.includes((k + 2) % 3))!;
  const [a, b, c] = turned(corners, lone);
  const m = middle(a, b), n = middle(a, c);
  out.push(a, m, n);
  const square = (i: number, j: number): number => (xy[2 * i]! - xy[2 * j]!) ** 2 + (xy[2 * i + 1]! - xy[2 * j + 1]!) ** 2;
  if (square(m, c) < square(n, b)) out.push(m, b, c, m, c, n);
  else out.push(m, b, n, b, c, n);
}

const turned = ([a, b, c]: Corners, k: number): Corners => (k === 0 ? [a, b, c] : k === 1 ? [b, c, a] : [c, a, b]);
