/** Places on a square grid round a middle, each with a distance at which a line surely lies; rows of `across` places, lowest y first. */
export interface Clearance {
  readonly across: number;
  readonly mm: Float64Array;
}

/**
 * How near lines come to each place of a grid: never less than the true distance, and seldom more. Each place takes the nearest line of
 * its neighbours over, two passes there and back, which a few hundred short lines pass on well. A place that fails by this distance fails
 * by the true one, so that it need not be looked at closer.
 */
export function clearanceRound(segments: Float64Array, [x0, y0]: readonly [number, number], stepMm: number, reach: number): Clearance {
  const grid = new Grid(segments, x0 - stepMm * reach, y0 - stepMm * reach, stepMm, 2 * reach + 1);
  for (let k = 0; 4 * k < segments.length; k++) grid.seed(k);
  grid.sweep(1);
  grid.sweep(-1);
  return { across: grid.across, mm: grid.squares.map(Math.sqrt) };
}

class Grid {
  readonly squares: Float64Array;
  readonly #nearest: Int32Array;

  constructor(
    readonly segments: Float64Array,
    readonly minX: number,
    readonly minY: number,
    readonly stepMm: number,
    readonly across: number,
  ) {
    this.squares = new Float64Array(across * across).fill(Infinity);
    this.#nearest = new Int32Array(across * across).fill(-1);
  }

  /** Offers a line to the places it passes; one longer than a step passes several. */
  seed(k: number): void {
    const s = this.segments;
    const [ax, ay] = [s[4 * k]!, s[4 * k + 1]!];
    const [dx, dy] = [s[4 * k + 2]! - ax, s[4 * k + 3]! - ay];
    const parts = Math.max(1, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy)) / this.stepMm));
    for (let p = 0; p <= parts; p++) this.#offer(this.#place(ax + (p / parts) * dx, this.minX), this.#place(ay + (p / parts) * dy, this.minY), k);
  }

  #place(v: number, least: number): number {
    return Math.min(this.across - 1, Math.max(0, Math.round((v - least) / this.stepMm)));
  }

  /** Each place is offered what the neighbours have that were passed before it. */
  sweep(way: 1 | -1): void {
    const n = this.across;
    const last = n - 1;
    for (let row = 0; row < n; row++) {
      const y = way > 0 ? row : last - row;
      for (let column = 0; column < n; column++) {
        const x = way > 0 ? column : last - column;
        const before = y - way;
        if (column > 0) this.#offer(x, y, this.#nearest[y * n + x - way]!);
        if (row === 0) continue;
        this.#offer(x, y, this.#nearest[before * n + x]!);
        if (x > 0) this.#offer(x, y, this.#nearest[before * n + x - 1]!);
        if (x < last) this.#offer(x, y, this.#nearest[before * n + x + 1]!);
      }
    }
  }

  #offer(x: number, y: number, k: number): void {
    const cell = y * this.across + x;
    if (k < 0 || k === this.#nearest[cell]) return;
    const square = squareTo(this.segments, 4 * k, this.minX + this.stepMm * x, this.minY + this.stepMm * y);
    if (square >= this.squares[cell]!) return;
    this.squares[cell] = square;
    this.#nearest[cell] = k;
  }
}

function squareTo(s: Float64Array, k: number, px: number, py: number): number {
  const x = s[k]!;
  const y = s[k + 1]!;
  const dx = s[k + 2]! - x;
  const dy = s[k + 3]! - y;
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((px - x) * dx + (py - y) * dy) / square)) : 0;
  const ex = px - (x + t * dx);
  const ey = py - (y + t * dy);
  return ex * ex + ey * ey;
}
