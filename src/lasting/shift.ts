import { curveLength } from "#last/surface-curve.ts";
import { halves, type Half } from "#lines/feather.ts";
import type { Shell } from "#shell/shell.ts";
import { eased, toplineOf, type ByHalf } from "#shell/tension.ts";
import type { Lines } from "#lines/lines.ts";

/** By how much the topline of the flat pattern is cut farther out than the line on the last says, mm; below 0 farther in. */
export interface ToplineShift {
  /** Throat farther from the toe, along the centre line. */
  readonly throatShiftMm: number;
  /** Back higher, along the back seam. */
  readonly backShiftMm: number;
  /** Sides higher, at their lowest places. */
  readonly innerShiftMm: number;
  readonly outerShiftMm: number;
}

/** So far inside the topline a shift has run out, mm: wide against the shift, so that no triangle folds over. */
const reachMm = 30;

/** Share of each half's topline, back to throat, at which it is lowest. */
export function lowestShares({ toplineMedial, toplineLateral, lowestMedial, lowestLateral }: Lines): ByHalf<number> {
  const share = (line: Lines["toplineMedial"], at: readonly [number, number, number]): number => {
    let best = 0, least = Infinity;
    for (let i = 0; i < line.arc.length; i++) {
      const d = (line.points[3 * i]! - at[0]) ** 2 + (line.points[3 * i + 1]! - at[1]) ** 2 + (line.points[3 * i + 2]! - at[2]) ** 2;
      if (d < least) [best, least] = [i, d];
    }
    return line.arc[best]! / curveLength(line);
  };
  return { medial: share(toplineMedial, lowestMedial.at), lateral: share(toplineLateral, lowestLateral.at) };
}

/**
 * Moves the topline of a flat pattern: at the throat along the centre line, at the back along the back seam, at the sides square to itself,
 * level at each of these places and smooth between them; inside it the shift runs out.
 * @param uv x0 y0 … of the shell's vertices, back → toe along +x
 * @param lowest share of each half's topline at which its side is lowest
 */
export function shiftedTopline(shell: Shell, uv: Float64Array, lowest: ByHalf<number>, shift: ToplineShift): Float64Array {
  const out = uv.slice();
  if (Object.values(shift).every((mm) => mm === 0)) return out;
  const ways = halves.map((half) => wayOf(shell, uv, half, lowest[half], shift));
  const rim = new Map<number, readonly [number, number]>();
  for (const { ids, by } of ways) for (let k = 0; k < ids.length; k++) rim.set(ids[k]!, [by[2 * k]!, by[2 * k + 1]!]);
  for (let v = 0; v < uv.length / 2; v++) {
    const own = rim.get(v), [du, dv] = own ?? inside(ways, uv, v);
    out[2 * v]! += du;
    out[2 * v + 1]! += dv;
  }
  return out;
}

interface Way {
  readonly ids: Uint32Array;
  /** Shift of each vertex of the topline, x0 y0 …. */
  readonly by: Float64Array;
  readonly uv: Float64Array;
}

function wayOf(shell: Shell, uv: Float64Array, half: Half, lowest: number, shift: ToplineShift): Way {
  const ids = toplineOf(shell, half), n = ids.length;
  const at = (k: number): readonly [number, number] => [uv[2 * ids[k]!]!, uv[2 * ids[k]! + 1]!];
  const arc = new Float64Array(n);
  for (let k = 1; k < n; k++) arc[k] = arc[k - 1]! + lengthOf(at(k)[0] - at(k - 1)[0], at(k)[1] - at(k - 1)[1]);
  const { edges } = shell, back = half === "medial" ? edges.backMedial : edges.backLateral;
  const side = half === "medial" ? shift.innerShiftMm : shift.outerShiftMm;
  const [first, final] = [directionAt(uv, back), directionAt(uv, edges.centre)];
  // Out of the sheet lies on the same side of the topline all along: the side on which the back seam runs on at its end.
  const turn = turnOf(at(0), at(1), first);
  const by = new Float64Array(2 * n);
  for (let k = 0; k < n; k++) {
    const u = arc[k]! / arc[n - 1]!;
    const toSide = u < lowest ? eased(u / lowest) : 1 - eased((u - lowest) / (1 - lowest));
    const ofEnd = u < lowest ? shift.backShiftMm : shift.throatShiftMm, end = u < lowest ? first : final;
    const [a, b] = [at(Math.max(0, k - 1)), at(Math.min(n - 1, k + 1))];
    const size = lengthOf(b[0] - a[0], b[1] - a[1]);
    const square = [(-turn * (b[1] - a[1])) / size, (turn * (b[0] - a[0])) / size] as const;
    for (let d = 0; d < 2; d++) by[2 * k + d] = (1 - toSide) * ofEnd * end[d]! + toSide * side * square[d]!;
  }
  return { ids, by, uv };
}

/** Unit direction in which a row of vertices runs on over its last one. */
function directionAt(uv: Float64Array, row: Uint32Array): readonly [number, number] {
  const a = row[Math.max(0, row.length - 4)]!, b = row[row.length - 1]!;
  const [x, y] = [uv[2 * b]! - uv[2 * a]!, uv[2 * b + 1]! - uv[2 * a + 1]!];
  const size = lengthOf(x, y);
  return [x / size, y / size];
}

const lengthOf = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** +1 where `out` lies to the left of the way from a to b, −1 to the right. */
const turnOf = (a: readonly [number, number], b: readonly [number, number], out: readonly [number, number]): 1 | -1 =>
  (b[0] - a[0]) * out[1] - (b[1] - a[1]) * out[0] >= 0 ? 1 : -1;

/** Shift of a vertex inside: that of the nearest place of the topline, less the farther it lies from it. */
function inside(ways: readonly Way[], uv: Float64Array, v: number): readonly [number, number] {
  const [x, y] = [uv[2 * v]!, uv[2 * v + 1]!];
  let least = reachMm * reachMm, du = 0, dv = 0;
  for (const { ids, by } of ways)
    for (let k = 0; k + 1 < ids.length; k++) {
      const [ax, ay] = [uv[2 * ids[k]!]!, uv[2 * ids[k]! + 1]!];
      const [bx, by_] = [uv[2 * ids[k + 1]!]! - ax, uv[2 * ids[k + 1]! + 1]! - ay];
      const t = Math.min(1, Math.max(0, ((x - ax) * bx + (y - ay) * by_) / (bx * bx + by_ * by_)));
      const d = (x - ax - t * bx) ** 2 + (y - ay - t * by_) ** 2;
      if (d >= least) continue;
      least = d;
      du = (1 - t) * by[2 * k]! + t * by[2 * k + 2]!;
      dv = (1 - t) * by[2 * k + 1]! + t * by[2 * k + 3]!;
    }
  const share = 1 - eased(Math.sqrt(least) / reachMm);
  return [share * du, share * dv];
}
