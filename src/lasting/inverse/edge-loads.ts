import { must } from "#base/bug.ts";
import type { Frames } from "#flatten/frames.ts";
import type { Ground } from "./sheet-forces.ts";
import { stateWidth } from "./sheet-energy.ts";

/** Forces on edges of the rim: for each the ends a and b, and the force at a and at b, N (six numbers). */
export interface EdgeLoads {
  readonly a: Uint32Array;
  readonly b: Uint32Array;
  readonly force: Float64Array;
}

/** The triangle at each edge of the rim. */
export class RimTriangles {
  readonly #of = new Map<number, number>();
  readonly #vertices: number;
  readonly rim: Uint32Array;

  constructor({ vertices, triangles, rim }: { readonly vertices: number; readonly triangles: Uint32Array; readonly rim: Uint32Array }) {
    this.#vertices = vertices;
    this.rim = rim;
    const next = new Int32Array(vertices).fill(-1);
    rim.forEach((v, k) => (next[v] = rim[(k + 1) % rim.length]!));
    for (let k = 0; k < triangles.length; k++) {
      const a = triangles[k]!, b = triangles[k % 3 === 2 ? k - 2 : k + 1]!;
      if (next[a] === b) this.#of.set(this.#key(a, b), Math.floor(k / 3));
    }
  }

  at(a: number, b: number): number {
    const found = this.#of.get(this.#key(a, b));
    must(found !== undefined, "a load lies on the sheet's rim");
    return found;
  }

  #key(a: number, b: number): number {
    return a < b ? a * this.#vertices + b : b * this.#vertices + a;
  }
}

/** Adds the forces to those at the vertices, three numbers each. */
export function addLoadsInto(out: Float64Array, { a, b, force }: EdgeLoads): void {
  for (let k = 0; k < a.length; k++)
    for (let i = 0; i < 3; i++) {
      out[3 * a[k]! + i]! += force[6 * k + i]!;
      out[3 * b[k]! + i]! += force[6 * k + 3 + i]!;
    }
}

/** Adds what loads are in the flat sheet, Fᵀ · force with the F of each edge's own triangle, to a gradient. */
export function addFlatLoadsInto(gradient: Float64Array, { a, b, force }: EdgeLoads, rim: RimTriangles, { ways }: Ground, state: Float64Array): void {
  for (let k = 0; k < a.length; k++) {
    const t = rim.at(a[k]!, b[k]!);
    const [f11, f12, f21, f22] = [state[stateWidth * t]!, state[stateWidth * t + 1]!, state[stateWidth * t + 2]!, state[stateWidth * t + 3]!];
    for (let e = 0; e < 2; e++) {
      let x = 0, y = 0;
      for (let i = 0; i < 3; i++) {
        x += ways[6 * t + i]! * force[6 * k + 3 * e + i]!;
        y += ways[6 * t + 3 + i]! * force[6 * k + 3 * e + i]!;
      }
      const at = 2 * (e === 0 ? a[k]! : b[k]!);
      gradient[at]! += f11 * x + f21 * y;
      gradient[at + 1]! += f12 * x + f22 * y;
    }
  }
}

/** Takes the energy that leaves or joins the sheet where its rim moves, W N for each length of it, out of a gradient. */
export function addRimEnergyInto(gradient: Float64Array, rim: RimTriangles, state: Float64Array, uv: Float64Array): void {
  const ring = rim.rim;
  for (let k = 0; k < ring.length; k++) {
    const a = ring[k]!, b = ring[k + 1 === ring.length ? 0 : k + 1]!;
    const half = 0.5 * state[stateWidth * rim.at(a, b) + 7]!;
    const nu = half * (uv[2 * b + 1]! - uv[2 * a + 1]!), nv = -half * (uv[2 * b]! - uv[2 * a]!);
    gradient[2 * a]! -= nu;
    gradient[2 * a + 1]! -= nv;
    gradient[2 * b]! -= nu;
    gradient[2 * b + 1]! -= nv;
  }
}

/** Pulls square to rows of rim edges, outward in the plane of each edge's triangle; `perMm` at the vertices of each row, N/mm. */
export function outwardLoads(rows: readonly { readonly vertices: Uint32Array; readonly perMm: ArrayLike<number> }[], positions: Float64Array, rim: RimTriangles, triangles: Uint32Array, { ways }: Ground, { of }: Frames): EdgeLoads {
  const a: number[] = [], b: number[] = [], force: number[] = [];
  for (const { vertices, perMm } of rows)
    for (let k = 0; k + 1 < vertices.length; k++) {
      const [v, w] = [vertices[k]!, vertices[k + 1]!];
      const t = rim.at(v, w), out = outwardOf(positions, v, w, t, triangles, ways, of);
      a.push(v);
      b.push(w);
      for (const mean of [(2 * perMm[k]! + perMm[k + 1]!) / 6, (perMm[k]! + 2 * perMm[k + 1]!) / 6]) for (const x of out) force.push(mean * x);
    }
  return { a: Uint32Array.from(a), b: Uint32Array.from(b), force: Float64Array.from(force) };
}

/** Outward vector square to a rim edge, as long as the edge: minus the gradient of the third corner's weight, turned to length. */
function outwardOf(positions: Float64Array, v: number, w: number, t: number, triangles: Uint32Array, ways: Float64Array, of: Float64Array): readonly [number, number, number] {
  const gx = of[4 * t]!, gy = of[4 * t + 1]!, hy = of[4 * t + 2]!;
  const corner = [0, 1, 2].find((c) => triangles[3 * t + c] !== v && triangles[3 * t + c] !== w)!;
  const [x, y] = corner === 0 ? [-gx, -gy - hy] : corner === 1 ? [gx, gy] : [0, hy];
  const d = [0, 1, 2].map((i) => positions[3 * w + i]! - positions[3 * v + i]!);
  const scale = -Math.sqrt((d[0]! * d[0]! + d[1]! * d[1]! + d[2]! * d[2]!) / (x * x + y * y));
  const at = (i: number): number => scale * (x * ways[6 * t + i]! + y * ways[6 * t + 3 + i]!);
  return [at(0), at(1), at(2)];
}
