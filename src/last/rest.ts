import type { Mesh } from "#mesh/mesh.ts";
import { leastWithin } from "./golden-section.ts";
import type { Point3 } from "./last.ts";
import { sampleSurface, type Samples } from "./samples.ts";
import { add, cross, dot, pointAt, scale, unit } from "./vector.ts";

/** Farthest lean looked at in one roll, as a tangent (31 degrees), and steps of each search: they settle it to 0.01 degrees. */
const farthest = 0.6;
const steps = 20;
const mostRolls = 12;

/**
 * The way up in which a body put down about as said comes to rest on flat ground. Under its middle (that of its surface, as of a
 * thin shell) lies one side of its convex hull; it comes to lie on that, and rolls on until its middle stands over the side it lies on.
 */
export function restingUp(mesh: Mesh, up: Point3): Point3 {
  const samples = sampleSurface(mesh, 2500);
  const middle = middleOf(samples);
  let down = scale(up, -1);
  for (let roll = 0; roll < mostRolls; roll++) {
    const next = sideUnder(samples, middle, down);
    const still = dot(next, down) > 1 - 1e-9;
    down = next;
    if (still) break;
  }
  return scale(down, -1);
}

function middleOf({ points, count }: Samples): Point3 {
  let sum: Point3 = [0, 0, 0];
  for (let i = 0; i < count; i++) sum = add(sum, pointAt(points, i));
  return scale(sum, 1 / count);
}

/**
 * Outward normal of the side of the convex hull that a ray from the middle along `down` leaves through. Of all u with u · down = 1 it is
 * the one whose farthest point, max (p − middle) · u, is least: a convex function of two leans, searched one within the other.
 */
function sideUnder({ corners: p }: Samples, middle: Point3, down: Point3): Point3 {
  const a = unit(cross(down, Math.abs(down[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0]));
  const b = cross(down, a);
  const at = (s: number, t: number): Point3 => add(down, add(scale(a, s), scale(b, t)));
  const reach = (u: Point3): number => {
    let most = -Infinity;
    for (let i = 0; i < p.length; i += 3) most = Math.max(most, (p[i]! - middle[0]) * u[0] + (p[i + 1]! - middle[1]) * u[1] + (p[i + 2]! - middle[2]) * u[2]);
    return most;
  };
  const inner = (s: number): { readonly at: number; readonly value: number } => leastWithin((t) => reach(at(s, t)), farthest, steps);
  const s = leastWithin((v) => inner(v).value, farthest, steps).at;
  return unit(at(s, inner(s).at));
}
