import type { Mesh } from "#mesh/mesh.ts";
import { Path, type Curve } from "./loft-path.ts";
import { layRails, type LoftSide, type Rails } from "./loft-rails.ts";
import type { LoftShape } from "./loft-shape.ts";

export interface Loft {
  readonly mesh: Mesh;
  /** Vertices of the feather line from the seat point over the inside (+y) to the toe point and back; consecutive ones are edges. */
  readonly feather: Uint32Array;
}

/**
 * Meshes a form: closed, facing outward, triangles of about `edge` mm, feather line and comb edge along edges. Rows of even points
 * run across wall, bottom and comb; neighbouring rows are joined by the shorter diagonal.
 */
export function meshLoft(shape: LoftShape, edge: number): Loft {
  return new Weaver(shape, edge).weave();
}

class Weaver {
  readonly #shape: LoftShape;
  readonly #edge: number;
  readonly #rails: Rails;
  readonly #positions: number[] = [];
  readonly #triangles: number[] = [];
  readonly #feather: Record<LoftSide, number[]> = { [1]: [], [-1]: [] };
  readonly #top: Record<LoftSide, number[]> = { [1]: [], [-1]: [] };

  constructor(shape: LoftShape, edge: number) {
    this.#shape = shape;
    this.#edge = edge;
    this.#rails = layRails(shape, edge);
  }

  weave(): Loft {
    const { rows, ridgeRows } = this.#rails;
    this.#layRims();
    for (const side of [1, -1] as const) this.#weaveWall(side);
    this.#weaveAcross(this.#feather, 0, rows, this.#bottomRow(), true);
    this.#weaveAcross(this.#top, ridgeRows, rows, this.#combRow(), false);
    const inside = this.#feather[1];
    const outside = this.#feather[-1];
    return {
      mesh: { positions: Float64Array.from(this.#positions), triangles: Uint32Array.from(this.#triangles) },
      feather: Uint32Array.from([...[...inside].reverse(), ...outside.slice(1, -1)]),
    };
  }

  /** Vertices of the feather line and of ridge and comb edge; the two sides share toe, ridge, comb front, comb back and seat. */
  #layRims(): void {
    const { rows, ridgeRows, feather, top } = this.#rails;
    for (const side of [1, -1] as const)
      for (let i = 0; i <= rows; i++) {
        const shared = side === -1;
        const low = this.#shape.column(feather[side][i]!);
        this.#feather[side].push(shared && (i === 0 || i === rows) ? this.#feather[1][i]! : this.#put((out) => this.#shape.wallInto(out, 0, low, 0, side)));
        const high = this.#shape.column(top[side][i]!);
        if (i === 0) this.#top[side].push(this.#feather[1][0]!);
        else this.#top[side].push(shared && (i <= ridgeRows || i === rows) ? this.#top[1][i]! : this.#put((out) => this.#shape.wallInto(out, 0, high, this.#shape.top(high), side)));
      }
  }

  #weaveWall(side: LoftSide): void {
    const { rows } = this.#rails;
    let before = [this.#feather[side][0]!];
    for (let i = 1; i <= rows; i++) {
      const row = i === rows ? this.#backRow(side) : this.#row(i, this.#feather[side][i]!, this.#top[side][i]!, this.#wallCurve(side, i));
      this.#stitch(before, row, side === -1);
      before = row;
    }
  }

  #back: number[] = [];
  /** The back curve belongs to both sides. */
  #backRow(side: LoftSide): number[] {
    const { rows } = this.#rails;
    if (this.#back.length === 0) this.#back = this.#row(rows, this.#feather[side][rows]!, this.#top[side][rows]!, this.#wallCurve(side, rows));
    return this.#back;
  }

  /** Straight in the side view (x of the form, height); slower toward the top, where a wall turns over the ridge. */
  #wallCurve(side: LoftSide, i: number): Curve {
    const from = this.#rails.feather[side][i]!;
    const to = this.#rails.top[side][i]!;
    const height = this.#shape.top(this.#shape.column(to));
    return (out, at, q) => {
      const t = q * (2 - q);
      this.#shape.wallInto(out, at, this.#shape.column(from + (to - from) * t), height * t, side);
    };
  }

  /** Bottom and comb: rows from the inside to the outside, bowed so that they stay even around toe, seat and comb ends. */
  #weaveAcross(rims: Record<LoftSide, readonly number[]>, first: number, last: number, curve: (i: number) => Curve, down: boolean): void {
    let before = [rims[1][first]!];
    for (let i = first + 1; i <= last; i++) {
      const row = i === last ? [rims[1][i]!] : this.#row(i, rims[1][i]!, rims[-1][i]!, curve(i));
      this.#stitch(before, row, down);
      before = row;
    }
  }

  #bottomRow(): (i: number) => Curve {
    const bowed = this.#bowed(this.#feather, 0, this.#rails.rows);
    return (i) => {
      const plan = bowed(i);
      return (out, at, q) => {
        plan(out, at, q);
        this.#shape.bottomInto(out, at, this.#shape.column(out[3 * at]!), out[3 * at + 1]!);
      };
    };
  }

  #combRow(): (i: number) => Curve {
    const bowed = this.#bowed(this.#top, this.#rails.ridgeRows, this.#rails.rows);
    return (i) => {
      const plan = bowed(i);
      return (out, at, q) => {
        plan(out, at, q);
        out[3 * at + 2] = this.#shape.combAt(out[3 * at]!);
      };
    };
  }

  /** Parabolas in plan (x and y only) through both rims and a middle that leaves the two ends as fast as the rims do. */
  #bowed(rims: Record<LoftSide, readonly number[]>, first: number, last: number): (i: number) => Curve {
    const p = this.#positions;
    const x = (v: number): number => p[3 * v]!;
    const y = (v: number): number => p[3 * v + 1]!;
    const begin = x(rims[1][first]!);
    const span = begin - x(rims[1][last]!);
    const pace = this.#edge * (last - first);
    return (i) => {
      const t = (i - first) / (last - first);
      const gone = span * t * t * (3 - 2 * t) + pace * t * (1 - t) * (1 - 2 * t);
      const [a, b] = [rims[1][i]!, rims[-1][i]!];
      const bow = begin - gone - (x(a) + x(b)) / 2;
      const [ax, ay, bx, by] = [x(a), y(a), x(b), y(b)];
      return (out, at, q) => {
        out[3 * at] = ax + (bx - ax) * q + 4 * q * (1 - q) * bow;
        out[3 * at + 1] = ay + (by - ay) * q;
      };
    };
  }

  /** A row between two vertices that exist, cut into even steps, every other row staggered. */
  #row(i: number, from: number, to: number, curve: Curve): number[] {
    const path = new Path(curve, 24);
    const steps = Math.max(1, Math.round(path.length / this.#edge));
    const shares = path.evenShares(steps, i % 2 === 1);
    const row = [from];
    for (let k = 1; k < steps; k++) row.push(this.#put((out) => curve(out, 0, shares[k]!)));
    row.push(to);
    return row;
  }

  readonly #point = new Float64Array(3);
  #put(write: (out: Float64Array) => void): number {
    write(this.#point);
    return this.#positions.push(this.#point[0]!, this.#point[1]!, this.#point[2]!) / 3 - 1;
  }

  /** Fills the strip between two rows; `turned` when the second row lies on the left of the first, seen from outside. */
  #stitch(p: readonly number[], q: readonly number[], turned: boolean): void {
    let i = 0;
    let j = 0;
    while (i < p.length - 1 || j < q.length - 1) {
      const onP = j === q.length - 1 || (i < p.length - 1 && this.#squared(p[i + 1]!, q[j]!) <= this.#squared(p[i]!, q[j + 1]!));
      const third = onP ? p[i + 1]! : q[j + 1]!;
      if (turned) this.#triangles.push(p[i]!, third, q[j]!);
      else this.#triangles.push(p[i]!, q[j]!, third);
      if (onP) i++;
      else j++;
    }
  }

  #squared(a: number, b: number): number {
    const p = this.#positions;
    const [dx, dy, dz] = [p[3 * a]! - p[3 * b]!, p[3 * a + 1]! - p[3 * b + 1]!, p[3 * a + 2]! - p[3 * b + 2]!];
    return dx * dx + dy * dy + dz * dz;
  }
}
