import { orient2d } from "robust-predicates";
import { must } from "#base/bug.ts";
import type { Outline } from "#plane/outline.ts";

/** Segments a box. */
const perBox = 12;

/** A place on an outline: running length from its first point, the point, and how far it is from where was asked. */
export interface Place {
  readonly s: number;
  readonly x: number;
  readonly y: number;
  readonly mm: number;
}

/** A closed outline boxed in runs of segments, so that many places can be asked for the nearest point or along a ray. */
export class Boxed {
  readonly xy: Float64Array;
  /** Running length at each point and the whole length after the last. */
  readonly arc: Float64Array;
  readonly #boxes: Float64Array;
  #last = 0;

  constructor({ xy }: Outline) {
    const n = xy.length / 2;
    must(n >= 3, "an outline needs three points");
    this.xy = new Float64Array(2 * n + 2);
    this.xy.set(xy);
    this.xy.set(xy.subarray(0, 2), 2 * n);
    this.arc = new Float64Array(n + 1);
    this.#boxes = new Float64Array(4 * Math.ceil(n / perBox)).fill(Infinity);
    for (let i = 0; i < n; i++) {
      const [ax, ay, bx, by] = [this.xy[2 * i]!, this.xy[2 * i + 1]!, this.xy[2 * i + 2]!, this.xy[2 * i + 3]!];
      this.arc[i + 1] = this.arc[i]! + Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
      // Least x, least y, and both greatest with their signs changed.
      const b = 4 * Math.floor(i / perBox);
      this.#boxes[b] = Math.min(this.#boxes[b]!, ax, bx);
      this.#boxes[b + 1] = Math.min(this.#boxes[b + 1]!, ay, by);
      this.#boxes[b + 2] = Math.min(this.#boxes[b + 2]!, -ax, -bx);
      this.#boxes[b + 3] = Math.min(this.#boxes[b + 3]!, -ay, -by);
    }
  }

  get length(): number {
    return this.arc[this.arc.length - 1]!;
  }

  /** The nearest place to a point. */
  nearest(x: number, y: number): Place {
    const best = { i: 0, t: 0, square: Infinity };
    // Asked along a line, the answer is mostly in the box of the one before.
    this.#inBox(this.#last, x, y, best);
    for (let b = 0; b < this.#boxes.length / 4; b++) {
      if (b === this.#last) continue;
      const dx = Math.max(this.#boxes[4 * b]! - x, x + this.#boxes[4 * b + 2]!, 0);
      const dy = Math.max(this.#boxes[4 * b + 1]! - y, y + this.#boxes[4 * b + 3]!, 0);
      if (dx * dx + dy * dy < best.square) this.#inBox(b, x, y, best);
    }
    this.#last = Math.floor(best.i / perBox);
    return this.#place(best.i, best.t, Math.sqrt(best.square));
  }

  /** The first place that a ray of a unit direction meets within `mostMm`, beginning a micrometre before its start. */
  along(x: number, y: number, dx: number, dy: number, mostMm: number): Place | undefined {
    const best = { i: -1, t: 0, far: mostMm };
    const [ex, ey] = [x + mostMm * dx, y + mostMm * dy];
    for (let b = 0; b < this.#boxes.length / 4; b++) {
      if (Math.max(x, ex) < this.#boxes[4 * b]! - 1e-3 || -Math.min(x, ex) < this.#boxes[4 * b + 2]! - 1e-3) continue;
      if (Math.max(y, ey) < this.#boxes[4 * b + 1]! - 1e-3 || -Math.min(y, ey) < this.#boxes[4 * b + 3]! - 1e-3) continue;
      this.#hits(b, x, y, dx, dy, best);
    }
    return best.i < 0 ? undefined : this.#place(best.i, best.t, best.far);
  }

  /** Whether a point lies inside; one on the line does. Winding number as in `contains` (src/plane/inside.ts), of the boxes to the right alone. */
  holds(x: number, y: number): boolean {
    const { xy } = this;
    let turns = 0;
    for (let b = 0; b < this.#boxes.length / 4; b++) {
      if (y < this.#boxes[4 * b + 1]! || -y < this.#boxes[4 * b + 3]! || -x < this.#boxes[4 * b + 2]!) continue;
      const end = Math.min((b + 1) * perBox, this.arc.length - 1);
      for (let i = b * perBox; i < end; i++) {
        const ax = xy[2 * i]!, ay = xy[2 * i + 1]!, bx = xy[2 * i + 2]!, by = xy[2 * i + 3]!;
        if (y < Math.min(ay, by) || y > Math.max(ay, by)) continue;
        const side = orient2d(ax, ay, bx, by, x, y);
        if (side === 0 && x >= Math.min(ax, bx) && x <= Math.max(ax, bx)) return true;
        if (ay <= y && by > y && side < 0) turns++;
        else if (ay > y && by <= y && side > 0) turns--;
      }
    }
    return turns !== 0;
  }

  /** Unit direction of the outline's segment at a running length. */
  directionAt(s: number): readonly [number, number] {
    const i = (this.#after(s) + this.arc.length - 2) % (this.arc.length - 1);
    const dx = this.xy[2 * i + 2]! - this.xy[2 * i]!, dy = this.xy[2 * i + 3]! - this.xy[2 * i + 1]!;
    const long = Math.sqrt(dx * dx + dy * dy);
    return long > 0 ? [dx / long, dy / long] : [0, 0];
  }

  /** Points of the outline from one running length on to another, both ends included; past the first point where need be. */
  between(from: number, to: number): readonly (readonly [number, number])[] {
    const n = this.arc.length - 1;
    const out: (readonly [number, number])[] = [this.#at(from)];
    const span = (to - from + this.length) % this.length;
    for (let k = 0, i = this.#after(from); k < n; k++, i = (i + 1) % n) {
      if ((this.arc[i]! - from + this.length) % this.length >= span) break;
      out.push([this.xy[2 * i]!, this.xy[2 * i + 1]!]);
    }
    return [...out, this.#at(to)];
  }

  #after(s: number): number {
    let lo = 0;
    let hi = this.arc.length - 1;
    while (lo < hi) {
      const mid = (lo + hi) >> 1;
      if (this.arc[mid]! > s) hi = mid;
      else lo = mid + 1;
    }
    return lo % (this.arc.length - 1);
  }

  #at(s: number): readonly [number, number] {
    const j = this.#after(s);
    const i = (j + this.arc.length - 2) % (this.arc.length - 1);
    const span = this.arc[i + 1]! - this.arc[i]!;
    const t = span > 0 ? (s - this.arc[i]!) / span : 0;
    return [this.xy[2 * i]! + t * (this.xy[2 * i + 2]! - this.xy[2 * i]!), this.xy[2 * i + 1]! + t * (this.xy[2 * i + 3]! - this.xy[2 * i + 1]!)];
  }

  #place(i: number, t: number, mm: number): Place {
    const [ax, ay, bx, by] = [this.xy[2 * i]!, this.xy[2 * i + 1]!, this.xy[2 * i + 2]!, this.xy[2 * i + 3]!];
    return { s: this.arc[i]! + t * (this.arc[i + 1]! - this.arc[i]!), x: ax + t * (bx - ax), y: ay + t * (by - ay), mm };
  }

  #inBox(b: number, x: number, y: number, best: { i: number; t: number; square: number }): void {
    const { xy } = this;
    const end = Math.min((b + 1) * perBox, this.arc.length - 1);
    for (let i = b * perBox; i < end; i++) {
      const ax = xy[2 * i]!, ay = xy[2 * i + 1]!;
      const dx = xy[2 * i + 2]! - ax, dy = xy[2 * i + 3]! - ay;
      const long = dx * dx + dy * dy;
      const t = long > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long)) : 0;
      const ex = x - ax - t * dx, ey = y - ay - t * dy;
      const square = ex * ex + ey * ey;
      if (square < best.square) {
        best.i = i;
        best.t = t;
        best.square = square;
      }
    }
  }

  #hits(b: number, x: number, y: number, dx: number, dy: number, best: { i: number; t: number; far: number }): void {
    const { xy } = this;
    const end = Math.min((b + 1) * perBox, this.arc.length - 1);
    for (let i = b * perBox; i < end; i++) {
      const ax = xy[2 * i]! - x, ay = xy[2 * i + 1]! - y;
      const bx = xy[2 * i + 2]! - x, by = xy[2 * i + 3]! - y;
      // How far both ends lie beside the ray.
      const p = dx * ay - dy * ax, q = dx * by - dy * bx;
      if ((p > 1e-9 && q > 1e-9) || (p < -1e-9 && q < -1e-9) || p === q) continue;
      const t = Math.min(1, Math.max(0, p / (p - q)));
      const far = dx * (ax + t * (bx - ax)) + dy * (ay + t * (by - ay));
      if (far < -1e-3 || far >= best.far) continue;
      best.i = i;
      best.t = t;
      best.far = far;
    }
  }
}
