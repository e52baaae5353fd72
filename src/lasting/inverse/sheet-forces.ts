import type { Frames } from "#flatten/frames.ts";
import { stateWidth } from "./sheet-energy.ts";

/** Local directions of each triangle in space, and what of the last belongs to each vertex. */
export interface Ground {
  /** Six numbers a triangle: unit vector from corner 0 to corner 1, and the one square to it in the triangle's plane. */
  readonly ways: Float64Array;
  /** A third of the triangles round each vertex, mm². */
  readonly areas: Float64Array;
  /** What of the triangles lies nearest to each vertex, mm²: pressure is force by this, since it does not depend on how many triangles meet. */
  readonly cells: Float64Array;
  /** Unit normal at each vertex, out of the last. */
  readonly normals: Float64Array;
}

/** @param outward −1 where the triangles turn the other way round than as seen from outside */
export function groundOf(positions: Float64Array, triangles: Uint32Array, { of, area }: Frames, outward: 1 | -1, normals?: Float64Array): Ground {
  const ways = new Float64Array(2 * triangles.length), areas = new Float64Array(positions.length / 3), cells = areas.slice(), sums = new Float64Array(positions.length);
  const p = [0, 0, 0], q = [0, 0, 0];
  for (let k = 0, t = 0; k < triangles.length; k += 3, t++) {
    const a = 3 * triangles[k]!, b = 3 * triangles[k + 1]!, c = 3 * triangles[k + 2]!;
    for (let i = 0; i < 3; i++) {
      p[i] = positions[b + i]! - positions[a + i]!;
      q[i] = positions[c + i]! - positions[a + i]!;
    }
    const x1 = 1 / of[4 * t]!, y2 = 1 / of[4 * t + 2]!, x2 = -of[4 * t + 1]! * x1 * y2;
    for (let i = 0; i < 3; i++) {
      ways[6 * t + i] = p[i]! / x1;
      ways[6 * t + 3 + i] = (q[i]! - (x2 * p[i]!) / x1) / y2;
    }
    addCellsInto(cells, a / 3, b / 3, c / 3, x1, x2, y2);
    const n = [p[1]! * q[2]! - p[2]! * q[1]!, p[2]! * q[0]! - p[0]! * q[2]!, p[0]! * q[1]! - p[1]! * q[0]!];
    for (const v of [a, b, c]) {
      areas[v / 3]! += (of[4 * t + 3]! * area) / 3;
      for (let i = 0; i < 3; i++) sums[v + i]! += outward * n[i]!;
    }
  }
  return { ways, areas, cells, normals: normals ?? unit(sums) };
}

/**
 * Adds each corner's part of a triangle with corners (0, 0), (x1, 0), (x2, y2): what lies nearest to it, or half of the triangle for a blunt
 * corner and a quarter for the others (Meyer, Desbrun, Schröder and Barr 2003, "mixed area"; from memory).
 */
function addCellsInto(cells: Float64Array, a: number, b: number, c: number, x1: number, x2: number, y2: number): void {
  const pp = x1 * x1, qq = x2 * x2 + y2 * y2, rr = (x2 - x1) * (x2 - x1) + y2 * y2, twice = x1 * y2;
  const atA = pp + qq - rr, atB = pp + rr - qq, atC = qq + rr - pp;
  if (Math.min(atA, atB, atC) < 0) {
    cells[a]! += (atA < 0 ? 0.25 : 0.125) * twice;
    cells[b]! += (atB < 0 ? 0.25 : 0.125) * twice;
    cells[c]! += (atC < 0 ? 0.25 : 0.125) * twice;
    return;
  }
  // cot of a corner is (sum of its sides' squares less the opposite one's) / 4 areas.
  cells[a]! += (qq * atB + pp * atC) / (16 * twice);
  cells[b]! += (rr * atA + pp * atC) / (16 * twice);
  cells[c]! += (rr * atA + qq * atB) / (16 * twice);
}

function unit(v: Float64Array): Float64Array {
  for (let i = 0; i < v.length; i += 3) {
    const size = Math.sqrt(v[i]! * v[i]! + v[i + 1]! * v[i + 1]! + v[i + 2]! * v[i + 2]!);
    for (let j = 0; j < 3; j++) v[i + j]! /= size > 0 ? size : 1;
  }
  return v;
}

/** Forces of the stretched sheet at its vertices, by the same linear triangles as those of a sheet that is pulled over. */
export class SheetForces {
  readonly ground: Ground;
  /** What holds the sheet in place at each vertex must add up to this: three numbers, N. */
  readonly inner: Float64Array;
  /** Mean of F at each vertex: x1 x2 y1 y2 z1 z2. */
  readonly map: Float64Array;
  readonly #triangles: Uint32Array;
  readonly #frames: Frames;

  constructor(triangles: Uint32Array, frames: Frames, ground: Ground) {
    this.ground = ground;
    this.#triangles = triangles;
    this.#frames = frames;
    this.inner = new Float64Array(3 * ground.areas.length);
    this.map = new Float64Array(6 * ground.areas.length);
  }

  /** Works both out from the state of a SheetEnergy. */
  measure(state: Float64Array): void {
    const { inner, map } = this, { of, area } = this.#frames, { ways, areas } = this.ground, triangles = this.#triangles;
    inner.fill(0);
    map.fill(0);
    for (let k = 0, t = 0; k < triangles.length; k += 3, t++) {
      const at = stateWidth * t, gx = of[4 * t]!, gy = of[4 * t + 1]!, hy = of[4 * t + 2]!, third = (of[4 * t + 3]! * area) / 3;
      const s11 = state[at + 4]!, s22 = state[at + 5]!, s12 = state[at + 6]!;
      const qx = s11 * gx + s12 * gy, qy = s12 * gx + s22 * gy, rx = s12 * hy, ry = s22 * hy;
      const a = triangles[k]!, b = triangles[k + 1]!, c = triangles[k + 2]!;
      const wa = third / areas[a]!, wb = third / areas[b]!, wc = third / areas[c]!;
      for (let i = 0; i < 3; i++) {
        const u = ways[6 * t + i]!, v = ways[6 * t + 3 + i]!;
        const fb = u * qx + v * qy, fc = u * rx + v * ry;
        inner[3 * a + i]! -= fb + fc;
        inner[3 * b + i]! += fb;
        inner[3 * c + i]! += fc;
        const m1 = u * state[at]! + v * state[at + 2]!, m2 = u * state[at + 1]! + v * state[at + 3]!;
        map[6 * a + 2 * i]! += wa * m1;
        map[6 * a + 2 * i + 1]! += wa * m2;
        map[6 * b + 2 * i]! += wb * m1;
        map[6 * b + 2 * i + 1]! += wb * m2;
        map[6 * c + 2 * i]! += wc * m1;
        map[6 * c + 2 * i + 1]! += wc * m2;
      }
    }
  }
}
