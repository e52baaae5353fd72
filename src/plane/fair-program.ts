import type { BendPattern } from "./bend-pattern.ts";
import { BorderedBand } from "./bordered-band.ts";
import type { Bend, EvenLine } from "./even-line.ts";
import { solveProgram, type Solution } from "./quadratic-program.ts";
import { ShortRows } from "./short-rows.ts";

/** Length at which a line is as stiff as its points are firm, mm: waves shorter than 2π times it are more than halved. */
const stiffMm = 4;
/** The least bend that counts as one way, 1/mm: a radius of 10 km, which rounding does not reach and no shoe shows. */
const leastBend = 1e-7;

/** No point between given ones is moved by more than this many times what those are. */
const between = 3;

/** Where a given point lies beside an even line: between points `at` and `at + 1`, a share `t` on, `off` mm along the normal there. */
export interface Beside {
  readonly at: number;
  readonly t: number;
  readonly off: number;
  /** Length of line that it stands for, mm. */
  readonly stands: number;
}

/** Finds the least change of bend among the lines that bend the way of a pattern, where one is said, at a value of no more than `most`. */
export type LeastChange = (pattern?: BendPattern, most?: number) => Solution | undefined;

/**
 * How far each point of the even line moves along its normal, mm, for the line that changes its bend least: least
 * Σ w (u − off)² + (stiff / step)⁶ Σ (change of bend · step²)², with every given point within `roomMm` and each point bending the
 * way of the pattern, where there is one. Bends are taken to first order in u. Undefined where no line does that.
 */
export function leastChangeOfBend(line: EvenLine, given: readonly Beside[], roomMm: number): LeastChange {
  const { count: n, step, closed } = line;
  const bends = line.bends();
  const first = closed ? 0 : 1;
  const last = closed ? n : n - 1;
  const { quadratic, linear } = nearAndFair(line, bends, given);
  const within = new ShortRows(n);
  const room: number[] = [];
  for (const { at, t, off } of given) {
    within.push(at, 1 - t, t);
    within.push(at, t - 1, -t);
    room.push(off - roomMm, -off - roomMm);
  }
  const reach = between * given.reduce((most, { off }) => Math.max(most, Math.abs(off) + roomMm), 0);
  return (pattern, most) => {
    const rows = pattern ? within.copy() : within;
    const bounds = room.slice();
    for (let i = first; pattern && i < last; i++) {
      const way = pattern[i]!;
      if (way === 0) continue;
      const { before, here, after, bend } = bends[i]!;
      rows.push(i - 1, way * before, way * here, way * after);
      bounds.push(leastBend * step * step - way * bend);
    }
    return solveProgram({ quadratic, linear, rows, bounds: Float64Array.from(bounds), reach, ...(most !== undefined && { most }) });
  };
}

/** What is to be least, whatever way the line bends: half of uᵀ `quadratic` u less `linear` · u. */
function nearAndFair({ count: n, step, closed }: EvenLine, bends: readonly Bend[], given: readonly Beside[]): { readonly quadratic: BorderedBand; readonly linear: Float64Array } {
  const linear = new Float64Array(n);
  const quadratic = new BorderedBand(n);
  const near = new ShortRows(n);
  for (const { at, t } of given) near.push(at, 1 - t, t);
  const weights = Float64Array.from(given, ({ stands }) => stands / step);
  near.addSquares(weights, quadratic);
  near.addTransposed(weights.map((w, k) => w * given[k]!.off), linear);
  const stiffness = (stiffMm / step) ** 6;
  const changes = new ShortRows(n);
  const already: number[] = [];
  for (let i = closed ? 0 : 1; i < (closed ? n : n - 2); i++) {
    const [a, b] = [bends[i]!, bends[i + 1 < n ? i + 1 : 0]!];
    changes.push(i - 1, -a.before, b.before - a.here, b.here - a.after, b.after);
    already.push(b.bend - a.bend);
  }
  changes.addSquares(new Float64Array(changes.count).fill(stiffness), quadratic);
  changes.addTransposed(Float64Array.from(already, (v) => -stiffness * v), linear);
  // Ends are held by a weight that leaves them less than a nanometre.
  if (!closed) for (const i of [0, n - 1]) quadratic.add(i, i, 1e9);
  return { quadratic, linear };
}
