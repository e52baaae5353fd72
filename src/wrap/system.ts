import { adjacencyOf } from "#solve/adjacency.ts";
import { BlockPattern } from "#solve/block-pattern.ts";
import { factorisationOf, type Factorisation } from "#solve/factorisation.ts";
import { planFronts } from "#solve/front-plan.ts";
import { minimumDegreeOrder } from "#solve/minimum-degree.ts";
import type { Sheet } from "./sheet.ts";

/**
 * The linear system of one step with three unknowns a point that is free. Its pattern comes from triangles and hinges and stays; the
 * stiffness of bending does not change with the shape and is written once.
 */
export class WrapSystem {
  readonly gradient: Float64Array;
  readonly step: Float64Array;
  readonly values: Float64Array;
  /** Places of the lower triangle of each triangle's 9 × 9 block, 45 numbers, −1 for what is held. */
  readonly ofTriangles: Int32Array;
  /** Places of the lower triangle of each point's own 3 × 3 block, 6 numbers. */
  readonly ofPoints: Int32Array;
  /** Places of the lower triangle of the 6 × 6 block of each pair of points, 21 numbers, −1 for what is held. */
  readonly ofPairs: Int32Array;
  readonly #lasting: Float64Array;
  readonly #kept: { readonly values: Float64Array; readonly gradient: Float64Array };
  readonly #cholesky: Factorisation;

  /**
   * `bending` in N·mm, see {@link Sheet.folds}; `drag` in N/mm³ resists every move, so that one that costs nothing stays
   * finite; `pairs`: points a0 b0 … that are joined besides.
   */
  constructor(sheet: Sheet, bending: number, drag: number, pairs: Uint32Array = new Uint32Array(0)) {
    const { unknowns, unknown, corners, hinges, points } = sheet;
    const pattern = new BlockPattern(unknowns, 1, 24 * unknowns);
    const place = (a: number, b: number): number => (a === b ? a : pattern.slot(a, b));
    this.ofTriangles = lowerTriangles(corners, 3, unknown, place);
    this.ofPairs = lowerTriangles(pairs, 2, unknown, place);
    this.ofPoints = new Int32Array(6 * points).fill(-1);
    for (let p = 0; p < points; p++) {
      const a = unknown[p]!;
      if (a >= 0) this.ofPoints.set([a, place(a + 1, a), a + 1, place(a + 2, a), place(a + 2, a + 1), a + 2], 6 * p);
    }
    for (let h = 0; h < hinges.length; h += 4) {
      const a = unknown[hinges[h + 2]!]!, b = unknown[hinges[h + 3]!]!;
      if (a >= 0 && b >= 0) for (let d = 0; d < 3; d++) place(a + d, b + d);
    }
    this.#lasting = new Float64Array(pattern.valueCount);
    this.#layBending(sheet, bending, place);
    for (let p = 0; p < points; p++) for (let d = 0; d < 3; d++) if (unknown[p]! >= 0) this.#lasting[unknown[p]! + d]! += drag * sheet.areas[p]!;
    this.values = new Float64Array(pattern.valueCount);
    this.gradient = new Float64Array(unknowns);
    this.step = new Float64Array(unknowns);
    this.#kept = { values: this.values.slice(), gradient: this.gradient.slice() };
    this.#cholesky = factorisationOf(pattern, planFronts(pattern, pointByPoint(sheet, pairs)));
  }

  #layBending({ hinges, folds, unknown }: Sheet, bending: number, place: (a: number, b: number) => number): void {
    for (let h = 0; h < hinges.length; h += 4)
      for (let i = 0; i < 4; i++)
        for (let j = 0; j <= i; j++) {
          const a = unknown[hinges[h + i]!]!, b = unknown[hinges[h + j]!]!;
          if (a >= 0 && b >= 0) for (let d = 0; d < 3; d++) this.#lasting[place(a + d, b + d)]! += bending * folds[h + i]! * folds[h + j]!;
        }
  }

  /** Clears the gradient and begins the matrix with what does not change. */
  clear(): void {
    this.gradient.fill(0);
    this.values.set(this.#lasting);
  }

  /** Keeps what has been summed up so far, for {@link back}. */
  keep(): void {
    this.#kept.values.set(this.values);
    this.#kept.gradient.set(this.gradient);
  }

  /** Goes back to what was kept. */
  back(): void {
    this.values.set(this.#kept.values);
    this.gradient.set(this.#kept.gradient);
  }

  /** Solves values · step = −gradient. @returns false when the matrix is not positive definite; `step` is then of no use */
  solve(): boolean {
    if (this.#cholesky.factor(this.values) >= 0) return false;
    for (let i = 0; i < this.step.length; i++) this.step[i] = -this.gradient[i]!;
    this.#cholesky.solveInto(this.step, this.step);
    return true;
  }
}

/**
 * Order of elimination in which the three unknowns of a point follow each other: found four times as fast as one of single unknowns, and
 * with a tenth less to reckon, since across a hinge only unknowns along the same axis are joined and would be torn apart.
 */
function pointByPoint({ corners, hinges, unknown, unknowns }: Sheet, pairs: Uint32Array): Uint32Array {
  const free = unknowns / 3, pattern = new BlockPattern(free, 1, 12 * free);
  const join = (p: number, q: number): void => {
    const a = unknown[p]! / 3, b = unknown[q]! / 3;
    if (a >= 0 && b >= 0 && a !== b) pattern.slot(a, b);
  };
  for (let k = 0; k < corners.length; k++) join(corners[k]!, corners[k % 3 === 2 ? k - 2 : k + 1]!);
  for (let h = 0; h < hinges.length; h += 4) join(hinges[h + 2]!, hinges[h + 3]!);
  for (let k = 0; k < pairs.length; k += 2) join(pairs[k]!, pairs[k + 1]!);
  const order = minimumDegreeOrder(adjacencyOf(free, pattern.low, pattern.high));
  return Uint32Array.from({ length: unknowns }, (_, k) => 3 * order[Math.floor(k / 3)]! + (k % 3));
}

/** Places of the lower triangle, row by row, of the block that each group of `each` points shares; −1 where a point is held. */
function lowerTriangles(groups: Uint32Array, each: number, unknown: Int32Array, place: (a: number, b: number) => number): Int32Array {
  const size = 3 * each;
  const places = new Int32Array(((groups.length / each) * size * (size + 1)) / 2).fill(-1);
  for (let from = 0, k = 0; from < groups.length; from += each)
    for (let r = 0; r < size; r++)
      for (let q = 0; q <= r; q++, k++) {
        const a = unknown[groups[from + Math.floor(r / 3)]!]!, b = unknown[groups[from + Math.floor(q / 3)]!]!;
        if (a >= 0 && b >= 0) places[k] = place(a + (r % 3), b + (q % 3));
      }
  return places;
}
