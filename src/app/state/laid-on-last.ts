import { TriangleLocator } from "#plane/triangle-locator.ts";
import type { Outline } from "#plane/outline.ts";
import type { Ground } from "#pieces/piece.ts";

/** A flat piece back on the last. */
export interface LaidPiece {
  /** The parts of its outline that lie on the ground, and the ground's own edge where the piece reaches out beyond it; x y z …, mm. */
  readonly edges: readonly Float64Array[];
  /** The part of the ground that it covers: the corners of whole triangles. */
  readonly covered: { readonly positions: Float64Array; readonly triangles: Uint32Array };
}

/** A line is carried in steps no longer than this, mm, so that it follows the last between its corners. */
const stepMm = 2;
/** How far beyond the edge of the ground a line still runs on, as the triangle at the edge lies, mm: fair edges lie a hair beside the mesh. */
const runOnMm = 0.6;

/** Carries lines from the flat sheet to where that lies on the last. Left piece or right, the ground is that of a right one. */
export class Carrier {
  readonly #ground: Ground;
  readonly #locator: TriangleLocator;
  readonly #rim: readonly (readonly [number, number, number])[];

  constructor(ground: Ground) {
    this.#ground = ground;
    this.#locator = new TriangleLocator(ground.uv, ground.triangles);
    this.#rim = rimOf(ground.triangles);
  }

  /** The runs of a line (x y …) that lie on the ground, as x y z …; what lies farther outside than a short way is left out. */
  carry(xy: Float64Array, closed = false): readonly Float64Array[] {
    const runs: number[][] = [];
    let run: number[] | undefined;
    for (const [x, y] of stepsAlong(xy, closed)) {
      const at = this.#at(x, y);
      if (!at) run = undefined;
      else if (run) run.push(...at);
      else runs.push((run = [...at]));
    }
    return runs.filter((r) => r.length >= 6).map((r) => Float64Array.from(r));
  }

  /** The piece on the last. */
  lay(outline: Outline): LaidPiece {
    const { positions, triangles, uv } = this.#ground;
    const inside = Uint8Array.from({ length: uv.length / 2 }, (_, v) => Number(holds(outline.xy, uv[2 * v]!, uv[2 * v + 1]!)));
    const covered: number[] = [];
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
      if (inside[a]! + inside[b]! + inside[c]! >= 2) covered.push(a, b, c);
    }
    const rim = this.#rim.filter(([a, b]) => inside[a]! && inside[b]!).map(([a, b]) => Float64Array.of(...positions.subarray(3 * a, 3 * a + 3), ...positions.subarray(3 * b, 3 * b + 3)));
    return { edges: [...this.carry(outline.xy, true), ...joinedUp(rim)], covered: { positions, triangles: Uint32Array.from(covered) } };
  }

  #at(x: number, y: number): readonly [number, number, number] | undefined {
    const found = this.#locator.find(x, y);
    if (found) return this.#point(3 * found.triangle, found.weights);
    return this.#runsOn(x, y);
  }

  /** Beside the edge: as the edge's triangle lies, if that is near enough. */
  #runsOn(x: number, y: number): readonly [number, number, number] | undefined {
    const { uv, triangles } = this.#ground;
    let best = runOnMm * runOnMm;
    let corner = -1;
    for (const [a, b, t] of this.#rim) {
      const d = apartFrom(x, y, uv[2 * a]!, uv[2 * a + 1]!, uv[2 * b]!, uv[2 * b + 1]!);
      if (d >= best) continue;
      best = d;
      corner = t;
    }
    if (corner < 0) return undefined;
    const [a, b, c] = [triangles[corner]!, triangles[corner + 1]!, triangles[corner + 2]!];
    const [ax, ay, bx, by, cx, cy] = [uv[2 * a]! - x, uv[2 * a + 1]! - y, uv[2 * b]! - x, uv[2 * b + 1]! - y, uv[2 * c]! - x, uv[2 * c + 1]! - y];
    const [wa, wb, wc] = [bx * cy - by * cx, cx * ay - cy * ax, ax * by - ay * bx];
    const sum = wa + wb + wc;
    return sum === 0 ? undefined : this.#point(corner, [wa / sum, wb / sum, wc / sum]);
  }

  #point(corner: number, weights: readonly [number, number, number]): readonly [number, number, number] {
    const { positions, triangles } = this.#ground;
    const at = (k: number): number => weights[0] * positions[3 * triangles[corner]! + k]! + weights[1] * positions[3 * triangles[corner + 1]! + k]! + weights[2] * positions[3 * triangles[corner + 2]! + k]!;
    return [at(0), at(1), at(2)];
  }
}

/** Edges that only one triangle has, each with the index of that triangle's first corner. */
function rimOf(triangles: Uint32Array): readonly (readonly [number, number, number])[] {
  const seen = new Map<string, readonly [number, number, number] | undefined>();
  for (let t = 0; t < triangles.length; t += 3)
    for (let k = 0; k < 3; k++) {
      const [a, b] = [triangles[t + k]!, triangles[t + ((k + 1) % 3)]!];
      const key = a < b ? `${a} ${b}` : `${b} ${a}`;
      seen.set(key, seen.has(key) ? undefined : [a, b, t]);
    }
  return [...seen.values()].filter((edge) => edge !== undefined);
}

/** Short lines that meet end to end, as few long ones. */
function joinedUp(pieces: readonly Float64Array[]): readonly Float64Array[] {
  const begins = new Map<string, Float64Array>();
  const ends = new Set<string>();
  const key = (p: Float64Array, i: number): string => `${p[i]} ${p[i + 1]} ${p[i + 2]}`;
  for (const p of pieces) {
    begins.set(key(p, 0), p);
    ends.add(key(p, 3));
  }
  const out: Float64Array[] = [];
  // Those with nothing before them first; what is left runs in a ring.
  const order = [...begins.keys()].sort((a, b) => Number(ends.has(a)) - Number(ends.has(b)));
  for (const first of order) {
    const line: number[] = [];
    for (let at = first, p = begins.get(at); p; p = begins.get(at)) {
      if (line.length === 0) line.push(...p.subarray(0, 3));
      line.push(...p.subarray(3, 6));
      begins.delete(at);
      at = key(p, 3);
    }
    if (line.length > 0) out.push(Float64Array.from(line));
  }
  return out;
}

function* stepsAlong(xy: Float64Array, closed: boolean): Generator<readonly [number, number]> {
  const n = xy.length / 2;
  for (let i = 0; i < n - (closed ? 0 : 1); i++) {
    const [ax, ay, bx, by] = [xy[2 * i]!, xy[2 * i + 1]!, xy[2 * ((i + 1) % n)]!, xy[2 * ((i + 1) % n) + 1]!];
    const parts = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / stepMm));
    for (let k = 0; k < parts; k++) yield [ax + ((bx - ax) * k) / parts, ay + ((by - ay) * k) / parts];
  }
  const last = closed ? 0 : n - 1;
  yield [xy[2 * last]!, xy[2 * last + 1]!];
}

/** Whether a closed outline holds a point (even-odd). */
function holds(xy: Float64Array, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = xy.length - 2; i < xy.length; j = i, i += 2) {
    const [ay, by] = [xy[i + 1]!, xy[j + 1]!];
    if (ay > y !== by > y && x < ((xy[j]! - xy[i]!) * (y - ay)) / (by - ay) + xy[i]!) inside = !inside;
  }
  return inside;
}

/** Square of the distance of a point to a straight edge. */
function apartFrom(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax, dy = by - ay;
  const size = dx * dx + dy * dy;
  const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / size));
  return (x - ax - t * dx) ** 2 + (y - ay - t * dy) ** 2;
}
