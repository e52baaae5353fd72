import { nearestOn, resample, arcLengths } from "#plane/along.ts";
import { TriangleLocator } from "#plane/triangle-locator.ts";
import { medialSign, type Last } from "#last/last.ts";
import type { FlatBottom } from "#shell/shell.ts";
import type { NetBottom } from "./net-bottom.ts";

/** A place of the last's bottom: its height over the ground the last stands on, how upright its normal is (1: level), how far it lies inside the feather line on the flat, mm. */
export interface Under {
  readonly z: number;
  readonly level: number;
  readonly insideMm: number;
}

/** Bottoms are nowhere steeper than this; a normal nearer to level is a fault of the rim's narrow triangles. */
const leastLevel = 0.7;

/** The last's bottom as heights over the plan, in the last's frame. */
export class BottomSurface {
  /** How far each vertex lies inside the feather line, on the flat, mm. */
  readonly insideMm: Float64Array;
  /** Upright part of each vertex's unit normal. */
  readonly level: Float64Array;
  readonly #flat: FlatBottom;
  readonly #locator: TriangleLocator;

  constructor(last: Pick<Last, "side">, flat: FlatBottom, net: NetBottom) {
    const { mesh, loop } = flat.bottom;
    const n = mesh.positions.length / 3;
    const plan = new Float64Array(2 * n);
    for (let v = 0; v < n; v++) {
      plan[2 * v] = mesh.positions[3 * v]!;
      plan[2 * v + 1] = mesh.positions[3 * v + 1]!;
    }
    this.#flat = flat;
    this.#locator = new TriangleLocator(plan, mesh.triangles);
    this.level = levelOf(mesh.positions, mesh.triangles);
    this.insideMm = new Float64Array(n);
    // Every 2 mm: the chords of so large a ring lie within 0.02 mm of it.
    const ring = resample(net.ring.line, 2);
    const arc = arcLengths(ring), sign = medialSign(last.side);
    for (let v = 0; v < n; v++) this.insideMm[v] = nearestOn(ring, arc, flat.uv[2 * v]!, sign * flat.uv[2 * v + 1]!).distance;
    for (const v of loop) this.insideMm[v] = 0;
  }

  /** What lies over a place of the plan; nothing beyond the feather line. */
  at(x: number, y: number): Under | undefined {
    const found = this.#locator.find(x, y);
    if (!found) return undefined;
    const { triangles: t, positions: p } = this.#flat.bottom.mesh;
    let z = 0, level = 0, insideMm = 0;
    for (let k = 0; k < 3; k++) {
      const v = t[3 * found.triangle + k]!, w = found.weights[k]!;
      z += w * p[3 * v + 2]!;
      level += w * this.level[v]!;
      insideMm += w * this.insideMm[v]!;
    }
    return { z, level, insideMm };
  }

  /** Where the feather line crosses a plane x = const: the rightmost and leftmost place of it. */
  ends(x: number): readonly [Rim, Rim] | undefined {
    const { loop, mesh: { positions: p } } = this.#flat.bottom;
    let low: Rim | undefined, high: Rim | undefined;
    for (let i = 0; i < loop.length; i++) {
      const a = loop[i]!, b = loop[(i + 1) % loop.length]!;
      const ax = p[3 * a]!, bx = p[3 * b]!;
      if (ax < x === bx < x) continue;
      const t = (x - ax) / (bx - ax);
      const y = p[3 * a + 1]! + t * (p[3 * b + 1]! - p[3 * a + 1]!);
      const here = { y, z: p[3 * a + 2]! + t * (p[3 * b + 2]! - p[3 * a + 2]!), level: this.level[a]! + t * (this.level[b]! - this.level[a]!) };
      if (!low || y < low.y) low = here;
      if (!high || y > high.y) high = here;
    }
    return low && high ? [low, high] : undefined;
  }
}

/** A place on the feather line in a section. */
export interface Rim {
  readonly y: number;
  readonly z: number;
  readonly level: number;
}

function levelOf(p: Float64Array, t: Uint32Array): Float64Array {
  const normal = new Float64Array(p.length);
  for (let f = 0; f < t.length; f += 3) {
    const [a, b, c] = [3 * t[f]!, 3 * t[f + 1]!, 3 * t[f + 2]!];
    const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
    for (const v of [a, b, c]) {
      normal[v]! += uy * vz - uz * vy;
      normal[v + 1]! += uz * vx - ux * vz;
      normal[v + 2]! += ux * vy - uy * vx;
    }
  }
  const out = new Float64Array(p.length / 3);
  for (let v = 0; v < out.length; v++) {
    const [x, y, z] = [normal[3 * v]!, normal[3 * v + 1]!, normal[3 * v + 2]!];
    const length = Math.sqrt(x * x + y * y + z * z);
    out[v] = length > 0 ? Math.max(leastLevel, Math.abs(z) / length) : 1;
  }
  return out;
}
