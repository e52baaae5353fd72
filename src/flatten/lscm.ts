import type { Dirichlet } from "./dirichlet.ts";
import type { Frames } from "./frames.ts";
import type { NewtonSystem } from "./newton-system.ts";

/**
 * Least-squares conformal map with a free rim (Lévy, Petitjean, Ray and Maillot 2002): keeps angles as well as the mesh
 * allows, vertex `a` at the origin and `b` at (`apart`, 0), then scaled so that its symmetric Dirichlet energy is least.
 * One linear solve: the energy is quadratic, so it is one Newton step from anywhere.
 * @returns uv, or undefined when the system could not be solved
 */
export function conformalMap(system: NewtonSystem, dirichlet: Dirichlet, frames: Frames, a: number, b: number, apart: number): Float64Array | undefined {
  const uv = new Float64Array(2 * system.pattern.size);
  uv[2 * b] = apart;
  system.hold([2 * a, 2 * a + 1, 2 * b, 2 * b + 1]);
  system.clear();
  dirichlet.addConformalInto(system.gradient, system.values, frames, uv);
  if (!system.solve()) return undefined;
  for (let i = 0; i < uv.length; i++) uv[i]! += system.step[i]!;
  return uv;
}
