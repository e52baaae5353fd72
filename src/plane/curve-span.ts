/** A run of points that single cubics are fitted to: x0 y0 …, running lengths, and what a fit may be off. */
export interface SpanRun {
  readonly xy: Float64Array;
  readonly arc: Float64Array;
  /** How far a curve may pass from a point, and from each chord, mm. */
  readonly pointMm: number;
  readonly chordMm: Float64Array;
}

/** Rounds of finding the handles anew after the points' places on the curve were found; and as many more for a piece that is kept. */
const rounds = 6;
const moreRounds = 8;
/** A fit that is this many times too far off at first will not come right. */
const hopeless = 12;
/** Cosine of the most that one piece turns, 45°: up to there a cubic and an arc are the same to 4e-6 of the radius. */
const leastCosine = Math.SQRT1_2 - 1e-9;
/** Handles as shares of the chord; a quarter circle's is 0.39. */
const shortest = 0.12, longest = 0.75;

/**
 * Fits one cubic at a time between two points of a run, with given directions at its ends: the two handles by least squares, the
 * points' places on the curve by Newton's steps, in turn (P. J. Schneider, Graphics Gems, 1990).
 */
export class SpanFit {
  readonly #run: SpanRun;
  readonly #u: Float64Array;
  #first = 0;
  #x = new Float64Array(4);
  #y = new Float64Array(4);

  constructor(run: SpanRun) {
    this.#run = run;
    this.#u = new Float64Array(run.arc.length);
  }

  /** Whether a cubic from point `from` to point `to` is good; unit directions of travel at both ends. */
  fits(from: number, to: number, start: readonly [number, number], end: readonly [number, number]): boolean {
    const { arc, pointMm } = this.#run;
    if (start[0] * end[0] + start[1] * end[1] < leastCosine) return false;
    this.#first = from;
    for (let k = from; k <= to; k++) this.#u[k - from] = (arc[k]! - arc[from]!) / (arc[to]! - arc[from]!);
    let before = Infinity;
    for (let round = 0; round < rounds; round++) {
      if (!this.#solve(from, to, start, end)) return false;
      const off = this.#settle(from, to);
      if (off <= pointMm) return this.#keepsChords(from, to);
      if (off > hopeless * pointMm || off > 0.9 * before) return false;
      before = off;
    }
    return false;
  }

  /** Both inner control points x y of the cubic from `from` to `to`, which must fit, settled as well as it goes. */
  settled(from: number, to: number, start: readonly [number, number], end: readonly [number, number]): readonly number[] {
    this.fits(from, to, start, end);
    let best = Infinity;
    let inner = this.#inner();
    for (let round = 0; round < moreRounds; round++) {
      const off = this.#settle(from, to);
      if (off >= 0.98 * best) break;
      if (off < best && this.#keepsChords(from, to)) inner = this.#inner();
      best = off;
      if (!this.#solve(from, to, start, end)) break;
    }
    return inner;
  }

  #inner(): readonly number[] {
    return [this.#x[1]!, this.#y[1]!, this.#x[2]!, this.#y[2]!];
  }

  /** The handles that leave the least sum of squares; with no point between, a third of the chord. */
  #solve(from: number, to: number, [sx, sy]: readonly [number, number], [ex, ey]: readonly [number, number]): boolean {
    const { xy } = this.#run;
    const x0 = xy[2 * from]!, y0 = xy[2 * from + 1]!, x3 = xy[2 * to]!, y3 = xy[2 * to + 1]!;
    const chord = Math.sqrt((x3 - x0) * (x3 - x0) + (y3 - y0) * (y3 - y0));
    const across = -(sx * ex + sy * ey);
    let aa = 0, ab = 0, bb = 0, ra = 0, rb = 0;
    for (let k = from + 1; k < to; k++) {
      const t = this.#u[k - this.#first]!, s = 1 - t;
      const b1 = 3 * s * s * t, b2 = 3 * s * t * t, left = s * s * s + b1, right = t * t * t + b2;
      const dx = xy[2 * k]! - left * x0 - right * x3, dy = xy[2 * k + 1]! - left * y0 - right * y3;
      aa += b1 * b1;
      bb += b2 * b2;
      ab += b1 * b2 * across;
      ra += b1 * (sx * dx + sy * dy);
      rb -= b2 * (ex * dx + ey * dy);
    }
    const det = aa * bb - ab * ab;
    let a = chord / 3, b = chord / 3;
    if (to - from > 2 && det > 1e-9 * aa * bb) {
      a = (ra * bb - rb * ab) / det;
      b = (rb * aa - ra * ab) / det;
    }
    if (!(a > shortest * chord && b > shortest * chord && a < longest * chord && b < longest * chord)) return false;
    this.#x[0] = x0; this.#x[1] = x0 + a * sx; this.#x[2] = x3 - b * ex; this.#x[3] = x3;
    this.#y[0] = y0; this.#y[1] = y0 + a * sy; this.#y[2] = y3 - b * ey; this.#y[3] = y3;
    return true;
  }

  /** Moves every point's place toward its foot on the curve; returns the greatest distance square to the curve. */
  #settle(from: number, to: number): number {
    const { xy } = this.#run;
    const [x0, x1, x2, x3] = this.#x as unknown as [number, number, number, number];
    const [y0, y1, y2, y3] = this.#y as unknown as [number, number, number, number];
    const u = this.#u;
    let worst = 0;
    for (let k = from + 1; k < to; k++) {
      const i = k - this.#first, t = u[i]!, s = 1 - t;
      const b0 = s * s * s, b1 = 3 * s * s * t, b2 = 3 * s * t * t, b3 = t * t * t;
      const dx = xy[2 * k]! - b0 * x0 - b1 * x1 - b2 * x2 - b3 * x3, dy = xy[2 * k + 1]! - b0 * y0 - b1 * y1 - b2 * y2 - b3 * y3;
      const c0 = 3 * s * s, c1 = 6 * s * t, c2 = 3 * t * t;
      const tx = c0 * (x1 - x0) + c1 * (x2 - x1) + c2 * (x3 - x2), ty = c0 * (y1 - y0) + c1 * (y2 - y1) + c2 * (y3 - y2);
      const square = tx * tx + ty * ty;
      const off = Math.abs(dx * ty - dy * tx) / Math.sqrt(square);
      if (off > worst) worst = off;
      u[i] = Math.min(1, Math.max(0, t + (dx * tx + dy * ty) / square));
    }
    return worst;
  }

  /** Whether the curve passes near enough to every chord: to a quarter, the middle and three quarters of it. */
  #keepsChords(from: number, to: number): boolean {
    const { xy, chordMm } = this.#run;
    const [x0, x1, x2, x3] = this.#x as unknown as [number, number, number, number];
    const [y0, y1, y2, y3] = this.#y as unknown as [number, number, number, number];
    for (let k = from; k < to; k++) {
      const begin = this.#u[k - this.#first]!, quarter = (this.#u[k + 1 - this.#first]! - begin) / 4;
      const px = xy[2 * k]!, py = xy[2 * k + 1]!, vx = xy[2 * k + 2]! - px, vy = xy[2 * k + 3]! - py;
      const room = chordMm[k]! * Math.sqrt(vx * vx + vy * vy);
      for (let share = 1; share < 4; share++) {
        const t = begin + share * quarter, s = 1 - t;
        const b0 = s * s * s, b1 = 3 * s * s * t, b2 = 3 * s * t * t, b3 = t * t * t;
        const dx = b0 * x0 + b1 * x1 + b2 * x2 + b3 * x3 - px, dy = b0 * y0 + b1 * y1 + b2 * y2 + b3 * y3 - py;
        if (Math.abs(dx * vy - dy * vx) > room) return false;
      }
    }
    return true;
  }
}
