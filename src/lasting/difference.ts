import type { Landmarks } from "#last/last.ts";
import { flatLength } from "#shell/edge-length.ts";
import type { FlatShell, Shell } from "#shell/shell.ts";
import type { ByHalf } from "#shell/tension.ts";

/** A measure of the flat upper without and with the correction, mm (areas mm²). */
export interface Measure {
  readonly before: number;
  readonly after: number;
}

/** What the correction for the leather changes about the flat upper. */
export interface Difference {
  /** Toe to the tops of the back, along the centre line. */
  readonly lengthMm: Measure;
  /** Between the two joints at the feather line. */
  readonly widthMm: Measure;
  /** Toe to throat. */
  readonly throatDepthMm: Measure;
  /** Length of the back edges, the mean of both. */
  readonly backHeightMm: Measure;
  readonly toplineMm: ByHalf<Measure>;
  readonly featherMm: ByHalf<Measure>;
  readonly areaMm2: Measure;
  /** Vertices once round the outline (inner feather line from the seat, outer one back, outer back, outer topline, inner topline, inner back), and how far each moves: dx0 dy0 … mm. */
  readonly outline: { readonly vertices: Uint32Array; readonly moves: Float64Array };
  /** The farthest that a place of the outline moves. */
  readonly mostMm: number;
}

/** Compares two flat shapes of one shell in the same frame (toe point at the origin, throat → toe along +x). */
export function differenceOf({ shell, onLast, uv: before }: Pick<FlatShell, "shell" | "onLast" | "uv">, after: Float64Array, landmarks: Pick<Landmarks, "jointMedial" | "jointLateral">): Difference {
  const { edges: e } = shell;
  const both = (of: (uv: Float64Array) => number): Measure => ({ before: of(before), after: of(after) });
  const length = (ids: Uint32Array): Measure => both((uv) => flatLength({ uv }, ids));
  const tops = [e.backMedial, e.backLateral].map(lastOf), throat = lastOf(e.centre);
  const joints = [nearest(onLast, e.featherMedial, landmarks.jointMedial), nearest(onLast, e.featherLateral, landmarks.jointLateral)];
  const vertices = outlineOf(e), moves = new Float64Array(2 * vertices.length);
  let most = 0;
  vertices.forEach((v, k) => {
    const dx = after[2 * v]! - before[2 * v]!, dy = after[2 * v + 1]! - before[2 * v + 1]!;
    moves[2 * k] = dx;
    moves[2 * k + 1] = dy;
    most = Math.max(most, dx * dx + dy * dy);
  });
  const [ma, la] = [length(e.backMedial), length(e.backLateral)];
  return {
    lengthMm: both((uv) => -0.5 * (uv[2 * tops[0]!]! + uv[2 * tops[1]!]!)),
    widthMm: both((uv) => flatLength({ uv }, Uint32Array.from(joints))),
    throatDepthMm: both((uv) => -uv[2 * throat]!),
    backHeightMm: { before: 0.5 * (ma.before + la.before), after: 0.5 * (ma.after + la.after) },
    toplineMm: { medial: length(e.toplineMedial), lateral: length(e.toplineLateral) },
    featherMm: { medial: length(e.featherMedial), lateral: length(e.featherLateral) },
    areaMm2: both((uv) => flatArea(uv, shell.mesh.triangles)),
    outline: { vertices, moves },
    mostMm: Math.sqrt(most),
  };
}

const lastOf = (ids: Uint32Array): number => ids[ids.length - 1]!;

function outlineOf(e: Shell["edges"]): Uint32Array {
  const rows = [e.featherMedial, e.featherLateral.toReversed(), e.backLateral, e.toplineLateral, e.toplineMedial.toReversed(), e.backMedial.toReversed()];
  return Uint32Array.from(rows.flatMap((row) => Array.from(row.subarray(0, row.length - 1))));
}

function nearest({ mesh: { positions: p } }: Shell, ids: Uint32Array, [x, y, z]: readonly [number, number, number]): number {
  let best = ids[0]!, least = Infinity;
  for (const v of ids) {
    const square = (p[3 * v]! - x) ** 2 + (p[3 * v + 1]! - y) ** 2 + (p[3 * v + 2]! - z) ** 2;
    if (square < least) [best, least] = [v, square];
  }
  return best;
}

function flatArea(uv: Float64Array, triangles: Uint32Array): number {
  let sum = 0;
  for (let k = 0; k < triangles.length; k += 3) {
    const [a, b, c] = [2 * triangles[k]!, 2 * triangles[k + 1]!, 2 * triangles[k + 2]!];
    sum += (uv[b]! - uv[a]!) * (uv[c + 1]! - uv[a + 1]!) - (uv[c]! - uv[a]!) * (uv[b + 1]! - uv[a + 1]!);
  }
  return 0.5 * Math.abs(sum);
}
