import type { Mesh } from "#mesh/mesh.ts";
import type { Point3 } from "./last.ts";
import { add, cross, dot, scale, sub, unit } from "./vector.ts";

/**
 * A rigid frame seen from the coordinates a mesh is given in: p in the frame = (x·(q − origin), y·(q − origin), z·(q − origin)).
 * x, y, z are unit vectors, right-handed.
 */
export interface Axes {
  readonly origin: Point3;
  readonly x: Point3;
  readonly y: Point3;
  readonly z: Point3;
}

/** Right-handed axes with z as given and x as near to `toward` as it can be. */
export function axesFrom(origin: Point3, up: Point3, toward: Point3): Axes {
  const z = unit(up);
  const x = unit(sub(toward, scale(z, dot(toward, z))));
  return { origin, x, y: cross(z, x), z };
}

export function intoFrame({ origin, x, y, z }: Axes, q: Point3): Point3 {
  const d = sub(q, origin);
  return [dot(x, d), dot(y, d), dot(z, d)];
}

export function outOfFrame({ origin, x, y, z }: Axes, p: Point3): Point3 {
  return add(origin, add(scale(x, p[0]), add(scale(y, p[1]), scale(z, p[2]))));
}

/** The frame `inner`, which is told in the coordinates of `outer`, told in the coordinates `outer` is told in. */
export function chain(outer: Axes, inner: Axes): Axes {
  const turn = (v: Point3): Point3 => add(scale(outer.x, v[0]), add(scale(outer.y, v[1]), scale(outer.z, v[2])));
  return { origin: outOfFrame(outer, inner.origin), x: turn(inner.x), y: turn(inner.y), z: turn(inner.z) };
}

/** Flat x y z … points taken into the frame; a new array. */
export function pointsIntoFrame(axes: Axes, points: Float64Array): Float64Array {
  const out = new Float64Array(points.length);
  const { origin, x, y, z } = axes;
  for (let i = 0; i < points.length; i += 3) {
    const a = points[i]! - origin[0];
    const b = points[i + 1]! - origin[1];
    const c = points[i + 2]! - origin[2];
    out[i] = x[0] * a + x[1] * b + x[2] * c;
    out[i + 1] = y[0] * a + y[1] * b + y[2] * c;
    out[i + 2] = z[0] * a + z[1] * b + z[2] * c;
  }
  return out;
}

export function meshIntoFrame(axes: Axes, mesh: Mesh): Mesh {
  return { positions: pointsIntoFrame(axes, mesh.positions), triangles: mesh.triangles };
}
