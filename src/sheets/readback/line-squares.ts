/** Side of the squares, and how far round a line it is looked for, mm. */
const squareMm = 4;
const reachMm = 1;
/** Columns are told apart by this many rows: no sheet has more squares along a side. */
const rows = 1 << 16;

/** Straight pieces of lines sorted into squares, so that the nearest one to a point is found fast. */
export class LineSquares {
  readonly #squares = new Map<number, number[]>();

  /** Takes up a line x0 y0 …; a closed one goes back to its first point. */
  add(xy: ArrayLike<number>, closed: boolean): void {
    for (let i = 2; i < xy.length; i += 2) this.#piece(xy[i - 2]!, xy[i - 1]!, xy[i]!, xy[i + 1]!);
    const last = xy.length - 2;
    if (closed && last > 0) this.#piece(xy[last]!, xy[last + 1]!, xy[0]!, xy[1]!);
  }

  /** Distance to the nearest line; infinite where none lies within a millimetre. */
  distance(x: number, y: number): number {
    const there = this.#squares.get(keyOf(Math.floor(x / squareMm), Math.floor(y / squareMm)));
    let least = reachMm * reachMm;
    for (let i = 0; there && i < there.length; i += 4) {
      const ax = there[i]!, ay = there[i + 1]!, dx = there[i + 2]! - ax, dy = there[i + 3]! - ay;
      const square = dx * dx + dy * dy;
      const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
      const ex = x - ax - t * dx, ey = y - ay - t * dy;
      least = Math.min(least, ex * ex + ey * ey);
    }
    return least < reachMm * reachMm ? Math.sqrt(least) : Infinity;
  }

  /** The farthest that any of some points lies off. */
  farthest(xy: ArrayLike<number>): number {
    let worst = 0;
    for (let i = 0; i < xy.length; i += 2) {
      const off = this.distance(xy[i]!, xy[i + 1]!);
      if (!(off <= worst)) worst = off;
    }
    return worst;
  }

  #piece(x0: number, y0: number, x1: number, y1: number): void {
    // A long piece would fill the squares of its whole box: it is taken up in parts.
    const parts = Math.max(1, Math.ceil(Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0)) / squareMm));
    for (let k = 0; k < parts; k++) {
      const ax = x0 + ((x1 - x0) * k) / parts, ay = y0 + ((y1 - y0) * k) / parts;
      const bx = x0 + ((x1 - x0) * (k + 1)) / parts, by = y0 + ((y1 - y0) * (k + 1)) / parts;
      const square = (v: number): number => Math.floor(v / squareMm);
      for (let i = square(Math.min(ax, bx) - reachMm); i <= square(Math.max(ax, bx) + reachMm); i++) {
        for (let j = square(Math.min(ay, by) - reachMm); j <= square(Math.max(ay, by) + reachMm); j++) {
          const there = this.#squares.get(keyOf(i, j));
          if (there) there.push(ax, ay, bx, by);
          else this.#squares.set(keyOf(i, j), [ax, ay, bx, by]);
        }
      }
    }
  }
}

const keyOf = (column: number, row: number): number => column * rows + row;
