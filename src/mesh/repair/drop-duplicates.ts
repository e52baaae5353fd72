import { triangleCount, type Mesh } from "#mesh/mesh.ts";

/** Marks (1) every triangle whose three points were those of an earlier triangle, in whichever order. Linear in time. */
export function duplicateTriangles(mesh: Mesh): { readonly duplicate: Uint8Array; readonly count: number } {
  const { triangles } = mesh;
  const total = triangleCount(mesh);
  let size = 1024;
  while (size < total * 2) size *= 2;
  const heads = new Int32Array(size).fill(-1);
  const next = new Int32Array(total).fill(-1);
  const duplicate = new Uint8Array(total);
  let count = 0;
  for (let t = 0; t < total; t++) {
    const [a, b, c] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!];
    const low = Math.min(a, b, c);
    const high = Math.max(a, b, c);
    const slot = (Math.imul(low, 73856093) ^ Math.imul(high, 19349663) ^ Math.imul(a ^ b ^ c, 83492791)) & (size - 1);
    let same = heads[slot]!;
    while (same >= 0 && !samePoints(triangles, same, a, b, c)) same = next[same]!;
    if (same >= 0) {
      duplicate[t] = 1;
      count++;
    } else {
      next[t] = heads[slot]!;
      heads[slot] = t;
    }
  }
  return { duplicate, count };
}

function samePoints(triangles: Uint32Array, t: number, a: number, b: number, c: number): boolean {
  const [p, q, r] = [triangles[3 * t]!, triangles[3 * t + 1]!, triangles[3 * t + 2]!];
  return (a === p || a === q || a === r) && (b === p || b === q || b === r) && (c === p || c === q || c === r);
}
