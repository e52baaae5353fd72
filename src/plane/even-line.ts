/** The bend at a point, curvature · step² in mm, and how it changes as the point before, this and the one after move along their normals. */
export interface Bend {
  readonly bend: number;
  readonly before: number;
  readonly here: number;
  readonly after: number;
}

/** A line, open or closed, of points at even steps, with the normals to the left at them. A closed one does not repeat its first. */
export class EvenLine {
  readonly xy: Float64Array;
  readonly closed: boolean;
  readonly count: number;
  /** Mean distance of neighbours, mm. */
  readonly step: number;
  readonly #normals: Float64Array;

  constructor(xy: Float64Array, closed: boolean) {
    const n = xy.length / 2;
    this.xy = xy;
    this.closed = closed;
    this.count = n;
    this.#normals = new Float64Array(2 * n);
    let length = 0;
    for (let i = 0; i < n; i++) {
      const a = 2 * (i > 0 ? i - 1 : closed ? n - 1 : 0);
      const b = 2 * (i + 1 < n ? i + 1 : closed ? 0 : n - 1);
      const [dx, dy] = [xy[b]! - xy[a]!, xy[b + 1]! - xy[a + 1]!];
      const d = Math.sqrt(dx * dx + dy * dy);
      this.#normals[2 * i] = -dy / d;
      this.#normals[2 * i + 1] = dx / d;
      if (i + 1 < n || closed) {
        const [ex, ey] = [xy[b]! - xy[2 * i]!, xy[b + 1]! - xy[2 * i + 1]!];
        length += Math.sqrt(ex * ex + ey * ey);
      }
    }
    this.step = length / (closed ? n : n - 1);
  }

  /** The bend at every point; at the ends of an open line none. */
  bends(): readonly Bend[] {
    const { xy, count: n, closed, step } = this;
    const normals = this.#normals;
    return Array.from({ length: n }, (_, i) => {
      if (!closed && (i === 0 || i === n - 1)) return { bend: 0, before: 0, here: 0, after: 0 };
      const p = 2 * (i > 0 ? i - 1 : n - 1);
      const q = 2 * (i + 1 < n ? i + 1 : 0);
      const [ax, ay] = [xy[2 * i]! - xy[p]!, xy[2 * i + 1]! - xy[p + 1]!];
      const [bx, by] = [xy[q]! - xy[2 * i]!, xy[q + 1]! - xy[2 * i + 1]!];
      const [nx, ny] = [normals[2 * i]!, normals[2 * i + 1]!];
      return {
        bend: (ax * by - ay * bx) / step,
        before: -(normals[p]! * by - normals[p + 1]! * bx) / step,
        here: (nx * (ay + by) - ny * (ax + bx)) / step,
        after: (ax * normals[q + 1]! - ay * normals[q]!) / step,
      };
    });
  }

  /** The line with every point moved along its normal. */
  moved(by: Float64Array): EvenLine {
    const out = this.xy.slice();
    for (let i = 0; i < by.length; i++) {
      out[2 * i]! += by[i]! * this.#normals[2 * i]!;
      out[2 * i + 1]! += by[i]! * this.#normals[2 * i + 1]!;
    }
    return new EvenLine(out, this.closed);
  }

  /** The normal between points i and j, a share t on; not of unit length where the line bends. */
  normal(i: number, j: number, t: number): readonly [number, number] {
    const [x, y] = [(1 - t) * this.#normals[2 * i]! + t * this.#normals[2 * j]!, (1 - t) * this.#normals[2 * i + 1]! + t * this.#normals[2 * j + 1]!];
    const d = Math.sqrt(x * x + y * y);
    return [x / d, y / d];
  }
}
