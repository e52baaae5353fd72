import { must } from "#base/bug.ts";
import type { SurfaceCurve } from "#last/last.ts";
import { curveOf } from "#last/surface-curve.ts";
import type { Half } from "#lines/feather.ts";
import { segmentAt } from "#plane/along.ts";
import { fillOutline } from "#plane/fill.ts";
import { area, signedArea } from "#plane/measure.ts";
import { TriangleLocator } from "#plane/triangle-locator.ts";
import type { FlatShell, ShellEdges } from "./shell.ts";

/** The shell with a place on the flat for each vertex; a {@link FlatShell} is one. */
export type LaidShell = Pick<FlatShell, "shell" | "uv">;

/**
 * A line to be cut along, straight on the flat shell: begins on a feather half, `atMm` along it from the seat point (on the surface),
 * runs over the points `inner` (x0 y0 … on the flat) and ends at the last of them or, if given, at a place of the same half's topline.
 */
export interface SheetLine {
  readonly half: Half;
  readonly atMm: number;
  readonly inner: Float64Array;
  readonly toplineMm?: number;
}

/** A coarse copy of a shell in which the lines are rows of edges: `paths[i]` are the vertices of line i, from the feather edge on. */
export interface Sheet extends LaidShell {
  readonly paths: readonly Uint32Array[];
}

/** A named edge of the shell by running length, on the surface and on the flat. */
export interface EdgeCurve extends SurfaceCurve {
  readonly uv: Float64Array;
}

export function edgeCurve({ shell, uv }: LaidShell, ids: Uint32Array): EdgeCurve {
  const points = new Float64Array(3 * ids.length), flat = new Float64Array(2 * ids.length);
  for (let k = 0; k < ids.length; k++) {
    points.set(shell.mesh.positions.subarray(3 * ids[k]!, 3 * ids[k]! + 3), 3 * k);
    flat.set(uv.subarray(2 * ids[k]!, 2 * ids[k]! + 2), 2 * k);
  }
  return { ...curveOf(points), uv: flat };
}

/** Point and flat place at a running length. */
export function onEdge({ points: p, uv, arc }: EdgeCurve, at: number): { readonly point: readonly [number, number, number]; readonly flat: readonly [number, number] } {
  const i = segmentAt(arc, at), j = i + 1;
  const t = Math.min(1, Math.max(0, (at - arc[i]!) / (arc[j]! - arc[i]!)));
  const between = (list: Float64Array, width: number, d: number) => list[width * i + d]! + t * (list[width * j + d]! - list[width * i + d]!);
  return { point: [between(p, 3, 0), between(p, 3, 1), between(p, 3, 2)], flat: [between(uv, 2, 0), between(uv, 2, 1)] };
}

export const edgeEnd = ({ arc }: SurfaceCurve): number => arc[arc.length - 1]!;

/** Running lengths that divide an edge into even steps of about `spacing`, the marks among them. */
function stations(total: number, marks: readonly number[], spacing: number): number[] {
  const ends = [0, ...[...marks].sort((a, b) => a - b), total];
  const out = [0];
  for (let k = 0; k + 1 < ends.length; k++) {
    const step = ends[k + 1]! - ends[k]!;
    must(step > 0, "lines begin at different places of an edge");
    const count = Math.max(1, Math.round(step / spacing));
    for (let i = 1; i <= count; i++) out.push(ends[k]! + (step * i) / count);
  }
  return out;
}

type EdgeName = keyof ShellEdges;
type Curves = Readonly<Record<EdgeName, EdgeCurve>>;
interface RimPoint {
  readonly edge: EdgeName;
  readonly at: number;
}

/** Once round the rim: seat → toe over the inside, back over the outside, up the outer bank, along the topline, down the inner bank. */
const round = [
  { edge: "featherMedial", backward: false },
  { edge: "featherLateral", backward: true },
  { edge: "backLateral", backward: false },
  { edge: "toplineLateral", backward: false },
  { edge: "toplineMedial", backward: true },
  { edge: "backMedial", backward: true },
] as const satisfies readonly { readonly edge: EdgeName; readonly backward: boolean }[];
const featherOf = (half: Half) => (half === "medial" ? "featherMedial" : "featherLateral");
const toplineOf = (half: Half) => (half === "medial" ? "toplineMedial" : "toplineLateral");

/**
 * Cuts the flat shell up anew into about `triangles` even triangles, with the lines as edges, and lifts them back on to the surface
 * they came from. Inside, points lie on the old triangles; along the rim on the old rim's chords.
 */
export function sheetOf(laid: LaidShell, lines: readonly SheetLine[], triangles: number): Sheet {
  const curves = curvesOf(laid);
  const spacing = Math.sqrt((4 * flatArea(curves)) / (Math.sqrt(3) * triangles));
  const { rim, ends } = rimOf(curves, lines, spacing);
  const n = rim.length;
  const places = rim.map(({ edge, at }) => onEdge(curves[edge], at));
  const turned = signedArea({ xy: Float64Array.from(places.flatMap(({ flat }) => flat)) }) < 0;
  const place = (i: number) => (turned ? (n - i) % n : i);
  const outline = new Float64Array(2 * n);
  places.forEach(({ flat }, i) => outline.set(flat, 2 * place(i)));
  const rimAt = (edge: EdgeName, mm: number): number => place(ends[edge]![indexOf(ends[edge]!.map((i) => rim[i]!), edge, mm, edgeEnd(curves[edge]))]!);

  const centreAt = stations(edgeEnd(curves.centre), [], spacing).slice(1, -1).map((mm) => onEdge(curves.centre, mm));
  const inner: { readonly xy: Float64Array; readonly startsAt: number; readonly endsAt?: number }[] = [
    { xy: Float64Array.from(centreAt.flatMap(({ flat }) => flat)), startsAt: place(ends["featherMedial"]!.at(-1)!), endsAt: place(ends["toplineMedial"]!.at(-1)!) },
    ...lines.map(({ half, atMm, inner: xy, toplineMm }) => ({ xy, startsAt: rimAt(featherOf(half), atMm), ...(toplineMm !== undefined && { endsAt: rimAt(toplineOf(half), toplineMm) }) })),
  ];
  const filled = fillOutline({ outline, lines: inner, spacing });
  const positions = new Float64Array((filled.xy.length / 2) * 3);
  places.forEach(({ point }, i) => positions.set(point, 3 * place(i)));
  centreAt.forEach(({ point }, k) => positions.set(point, 3 * (n + k)));
  liftInto(positions, filled.xy, n + centreAt.length, laid);
  const [centre, ...paths] = pathsOf(inner, n);
  const edges = { ...Object.fromEntries(round.map(({ edge }) => [edge, Uint32Array.from(ends[edge]!.map(place))])), centre: centre! } as unknown as ShellEdges;
  return { shell: { mesh: { positions, triangles: filled.triangles }, edges }, uv: filled.xy, paths };
}

const curvesOf = (laid: LaidShell): Curves => Object.fromEntries(Object.entries(laid.shell.edges).map(([name, ids]) => [name, edgeCurve(laid, ids as Uint32Array)])) as unknown as Curves;

/** Points of the rim in a row, and for each edge their indices in its own direction; neighbours share the point where they meet. */
function rimOf(curves: Curves, lines: readonly SheetLine[], spacing: number): { readonly rim: readonly RimPoint[]; readonly ends: Readonly<Record<string, readonly number[]>> } {
  const marksOn = (edge: EdgeName): number[] =>
    lines.flatMap(({ half, atMm, toplineMm }) => [...(edge === featherOf(half) ? [atMm] : []), ...(toplineMm !== undefined && edge === toplineOf(half) ? [toplineMm] : [])]);
  const rim: RimPoint[] = [];
  const ends: Record<string, number[]> = {};
  for (const { edge, backward } of round) {
    const at = stations(edgeEnd(curves[edge]), marksOn(edge), spacing);
    if (backward) at.reverse();
    const ids = at.map((mm, i) => (i === 0 && rim.length > 0 ? rim.length - 1 : rim.push({ edge, at: mm }) - 1));
    ends[edge] = backward ? ids.reverse() : ids;
  }
  // The last edge ends where the first began.
  rim.pop();
  ends["backMedial"]![0] = 0;
  return { rim, ends };
}

/** Vertices of each line, when the lines' points come one after the other from vertex `from` on. */
function pathsOf(lines: readonly { readonly xy: Float64Array; readonly startsAt: number; readonly endsAt?: number }[], from: number): Uint32Array[] {
  let next = from;
  return lines.map(({ xy, startsAt, endsAt }) => {
    const first = next;
    next += xy.length / 2;
    return Uint32Array.from([startsAt, ...Array.from({ length: xy.length / 2 }, (_, i) => first + i), ...(endsAt === undefined ? [] : [endsAt])]);
  });
}

/** Index, among an edge's rim points, of the one at a running length; the points where edges meet carry their neighbour's name. */
function indexOf(points: readonly RimPoint[], edge: EdgeName, mm: number, total: number): number {
  const off = (p: RimPoint, i: number) => Math.abs((p.edge === edge ? p.at : i === 0 ? 0 : total) - mm);
  const best = points.reduce((b, p, i) => (off(p, i) < off(points[b]!, b) ? i : b), 0);
  must(off(points[best]!, best) < 1e-6, "a line begins at a point of the rim");
  return best;
}

function liftInto(positions: Float64Array, xy: Float64Array, from: number, { shell, uv }: LaidShell): void {
  const { positions: p, triangles: t } = shell.mesh;
  const locator = new TriangleLocator(uv, t);
  for (let v = from; v < xy.length / 2; v++) {
    const found = locator.find(xy[2 * v]!, xy[2 * v + 1]!);
    must(found, "a point inside the flat shell lies on one of its triangles");
    for (let d = 0; d < 3; d++) positions[3 * v + d] = found.weights.reduce((sum, w, k) => sum + w * p[3 * t[3 * found.triangle + k]! + d]!, 0);
  }
}

function flatArea(curves: Curves): number {
  const xy: number[] = [];
  for (const { edge, backward } of round) {
    const { uv } = curves[edge];
    for (let i = 0; i < uv.length; i += 2) {
      const j = backward ? uv.length - 2 - i : i;
      xy.push(uv[j]!, uv[j + 1]!);
    }
  }
  return area({ xy: Float64Array.from(xy) });
}
