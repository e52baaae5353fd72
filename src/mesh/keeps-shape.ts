import type { EditMesh } from "./edit-mesh.ts";
import { normalAcross } from "./ridges.ts";

/**
 * Whether no triangle around a turns by more than the angle of `leastCosine`, and no edge grows longer than `longest`, when a is
 * drawn on to b. `ring`: the n neighbours of a in order.
 */
export function keepsShape(m: EditMesh, a: number, b: number, ring: readonly number[], n: number, longest: number, leastCosine: number): boolean {
  const p = m.positions;
  for (let i = 0; i < n; i++) {
    const v = ring[i]!;
    const w = ring[(i + 1) % n]!;
    if (v !== b && (p[3 * v]! - p[3 * b]!) ** 2 + (p[3 * v + 1]! - p[3 * b + 1]!) ** 2 + (p[3 * v + 2]! - p[3 * b + 2]!) ** 2 > longest * longest) return false;
    if (v === b || w === b) continue;
    const before = normalAcross(p, a, v, w);
    const after = normalAcross(p, b, v, w);
    if (before[0] * after[0] + before[1] * after[1] + before[2] * after[2] < leastCosine) return false;
  }
  return true;
}
