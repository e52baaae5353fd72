import { must } from "#base/bug.ts";

/** A triangle and the barycentric weights of a point in it. */
export interface Located {
  readonly triangle: number;
  readonly weights: readonly [number, number, number];
}

/**
 * Finds the triangle of a plane mesh under a point, by a grid of buckets. Triangles may overlap: `all` gives every one, `find`
 * the first in which the point lies deepest. Both windings are accepted.
 */
export class TriangleLocator {
  readonly #xy: Float64Array;
  readonly #triangles: Uint32Array;
  readonly #cell: number;
  readonly #minX: number;
  readonly #minY: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #starts: Uint32Array;
  readonly #items: Uint32Array;
  readonly #w = new Float64Array(3);

  /** @param xy x0 y0 …; @param triangles index triples. */
  constructor(xy: Float64Array, triangles: Uint32Array) {
    must(triangles.length > 0, "locator without triangles");
    this.#xy = xy;
    this.#triangles = triangles;
    let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
    for (let k = 0; k < triangles.length; k++) {
      const x = xy[2 * triangles[k]!]!, y = xy[2 * triangles[k]! + 1]!;
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
    const count = triangles.length / 3;
    // About two triangles a bucket keeps both the lists and the walk short.
    this.#cell = Math.max(Math.sqrt(((maxX - minX) * (maxY - minY) * 2) / count), 1e-9);
    this.#minX = minX;
    this.#minY = minY;
    this.#columns = Math.floor((maxX - minX) / this.#cell) + 1;
    this.#rows = Math.floor((maxY - minY) / this.#cell) + 1;
    const counts = new Uint32Array(this.#columns * this.#rows + 1);
    this.#eachBucket((bucket) => counts[bucket + 1]!++);
    for (let i = 1; i < counts.length; i++) counts[i]! += counts[i - 1]!;
    this.#starts = counts;
    this.#items = new Uint32Array(counts[counts.length - 1]!);
    const fill = counts.slice(0, -1);
    this.#eachBucket((bucket, triangle) => {
      this.#items[fill[bucket]!++] = triangle;
    });
  }

  #eachBucket(visit: (bucket: number, triangle: number) => void): void {
    const xy = this.#xy, t = this.#triangles;
    for (let f = 0; f < t.length; f += 3) {
      const ax = xy[2 * t[f]!]!, ay = xy[2 * t[f]! + 1]!;
      const bx = xy[2 * t[f + 1]!]!, by = xy[2 * t[f + 1]! + 1]!;
      const cx = xy[2 * t[f + 2]!]!, cy = xy[2 * t[f + 2]! + 1]!;
      const i0 = Math.floor((Math.min(ax, bx, cx) - this.#minX) / this.#cell);
      const i1 = Math.floor((Math.max(ax, bx, cx) - this.#minX) / this.#cell);
      const j0 = Math.floor((Math.min(ay, by, cy) - this.#minY) / this.#cell);
      const j1 = Math.floor((Math.max(ay, by, cy) - this.#minY) / this.#cell);
      for (let j = j0; j <= j1; j++) for (let i = i0; i <= i1; i++) visit(j * this.#columns + i, f / 3);
    }
  }

  /** Every triangle that holds the point, with `slack` (share of a weight) outside still counted as inside. */
  all(x: number, y: number, slack = 1e-9): Located[] {
    const i = Math.floor((x - this.#minX) / this.#cell), j = Math.floor((y - this.#minY) / this.#cell);
    if (i < 0 || j < 0 || i >= this.#columns || j >= this.#rows) return [];
    const found: Located[] = [];
    const bucket = j * this.#columns + i;
    for (let k = this.#starts[bucket]!; k < this.#starts[bucket + 1]!; k++) {
      const triangle = this.#items[k]!;
      if (this.#depth(triangle, x, y) >= -slack) found.push({ triangle, weights: [this.#w[0]!, this.#w[1]!, this.#w[2]!] });
    }
    return found;
  }

  /** The triangle under the point, or undefined outside the mesh. */
  find(x: number, y: number, slack = 1e-9): Located | undefined {
    const i = Math.floor((x - this.#minX) / this.#cell), j = Math.floor((y - this.#minY) / this.#cell);
    if (i < 0 || j < 0 || i >= this.#columns || j >= this.#rows) return undefined;
    let best = -1;
    let depth = -Infinity;
    const bucket = j * this.#columns + i;
    for (let k = this.#starts[bucket]!; k < this.#starts[bucket + 1]!; k++) {
      const least = this.#depth(this.#items[k]!, x, y);
      if (least >= -slack && least > depth) {
        depth = least;
        best = this.#items[k]!;
      }
    }
    if (best < 0) return undefined;
    this.#depth(best, x, y);
    return { triangle: best, weights: [this.#w[0]!, this.#w[1]!, this.#w[2]!] };
  }

  /** Least of the point's three weights in a triangle, which are left in #w; NaN in one without area. */
  #depth(triangle: number, x: number, y: number): number {
    const xy = this.#xy, t = this.#triangles, w = this.#w;
    const a = t[3 * triangle]!, b = t[3 * triangle + 1]!, c = t[3 * triangle + 2]!;
    const ax = xy[2 * a]! - x, ay = xy[2 * a + 1]! - y;
    const bx = xy[2 * b]! - x, by = xy[2 * b + 1]! - y;
    const cx = xy[2 * c]! - x, cy = xy[2 * c + 1]! - y;
    const wa = bx * cy - by * cx, wb = cx * ay - cy * ax, wc = ax * by - ay * bx;
    const sum = wa + wb + wc;
    if (sum === 0) return NaN;
    w[0] = wa / sum;
    w[1] = wb / sum;
    w[2] = wc / sum;
    return Math.min(w[0], w[1], w[2]);
  }
}
