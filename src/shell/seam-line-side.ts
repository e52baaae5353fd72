import { must } from "#base/bug.ts";
import { arcLengths, nearestOn, pointAt } from "#plane/along.ts";
import type { Polyline } from "#plane/outline.ts";

/** A smooth line of the plane, run out straight at both ends: which side of it a place lies on, and how far. */
export class SignedLine {
  readonly #line: Polyline;
  readonly #arc: Float64Array;
  readonly #reach: number;
  readonly #box: readonly [number, number, number, number];

  /** Places farther than `reach` mm are not looked at. */
  constructor(xy: Float64Array, reach: number) {
    const n = xy.length;
    must(n >= 4, "a line needs two points");
    const run = 2 * reach;
    const beyond = (i: number, j: number): readonly [number, number] => {
      const dx = xy[i]! - xy[j]!, dy = xy[i + 1]! - xy[j + 1]!, size = Math.sqrt(dx * dx + dy * dy);
      return [xy[i]! + (run * dx) / size, xy[i + 1]! + (run * dy) / size];
    };
    this.#line = { xy: Float64Array.from([...beyond(0, 2), ...xy, ...beyond(n - 2, n - 4)]) };
    this.#arc = arcLengths(this.#line);
    this.#reach = reach;
    const xs = this.#line.xy.filter((_, i) => i % 2 === 0), ys = this.#line.xy.filter((_, i) => i % 2 === 1);
    this.#box = [Math.min(...xs) - reach, Math.min(...ys) - reach, Math.max(...xs) + reach, Math.max(...ys) + reach];
  }

  /** Distance, + to the left of the line; NaN where it is more than the reach. */
  of(x: number, y: number): number {
    const [x0, y0, x1, y1] = this.#box;
    return x < x0 || x > x1 || y < y0 || y > y1 ? NaN : this.#signed(x, y, this.#reach);
  }

  /** Running length of the nearest place, and that place. */
  along(x: number, y: number): number {
    return nearestOn(this.#line, this.#arc, x, y).s;
  }

  footOf(x: number, y: number): readonly [number, number] {
    return pointAt(this.#line, this.#arc, this.along(x, y));
  }

  /** Share of the way from point i of a list x0 y0 … to point j at which the line is crossed, by halving from the sides given. */
  crossing(xy: Float64Array, i: number, j: number, atI: number, atJ: number): number {
    must(atI * atJ < 0, "an edge that crosses a line has its ends on both sides of it");
    let [low, high, below, above] = [0, 1, atI, atJ];
    for (let round = 0; round < 40 && high - low > 1e-12; round++) {
      // Regula falsi by turns with halving: quick on an all but straight line, safe on any.
      const share = round % 2 === 0 ? low + ((high - low) * below) / (below - above) : (low + high) / 2;
      const now = this.#signed(xy[2 * i]! + share * (xy[2 * j]! - xy[2 * i]!), xy[2 * i + 1]! + share * (xy[2 * j + 1]! - xy[2 * i + 1]!), Infinity);
      if (now === 0 || Math.abs(now) < 1e-10) return share;
      if (now > 0 === below > 0) [low, below] = [share, now];
      else [high, above] = [share, now];
    }
    return (low + high) / 2;
  }

  #signed(x: number, y: number, reach: number): number {
    const { xy } = this.#line;
    const { s, distance } = nearestOn(this.#line, this.#arc, x, y);
    if (distance > reach) return NaN;
    let k = 0;
    while (k + 2 < this.#arc.length && this.#arc[k + 1]! <= s) k++;
    const cross = (xy[2 * k + 2]! - xy[2 * k]!) * (y - xy[2 * k + 1]!) - (xy[2 * k + 3]! - xy[2 * k + 1]!) * (x - xy[2 * k]!);
    return cross >= 0 ? distance : -distance;
  }
}
