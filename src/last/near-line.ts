import type { Mesh } from "#mesh/mesh.ts";
import { keepTriangles } from "#mesh/weld.ts";

/**
 * The part of a mesh whose triangles have a corner within about `reach` mm of a line (at least that; up to twice it). `line` has
 * points nearer to each other than `reach`. Cutting this part is many times faster than cutting the whole.
 */
export function partNear(mesh: Mesh, line: Float64Array, reach: number): Mesh {
  const cells = new Set<number>();
  for (let i = 0; i < line.length; i += 3) {
    const [a, b, c] = [cellOf(line[i]!, reach), cellOf(line[i + 1]!, reach), cellOf(line[i + 2]!, reach)];
    for (let da = -1; da <= 1; da++) for (let db = -1; db <= 1; db++) for (let dc = -1; dc <= 1; dc++) cells.add(keyOf(a + da, b + db, c + dc));
  }
  const { positions: p, triangles } = mesh;
  const near = new Uint8Array(p.length / 3);
  for (let v = 0; v < near.length; v++) {
    const k = 3 * v;
    near[v] = cells.has(keyOf(cellOf(p[k]!, reach), cellOf(p[k + 1]!, reach), cellOf(p[k + 2]!, reach))) ? 1 : 0;
  }
  return keepTriangles(mesh, (t) => (near[triangles[3 * t]!]! | near[triangles[3 * t + 1]!]! | near[triangles[3 * t + 2]!]!) === 1);
}

const cellOf = (v: number, size: number): number => Math.floor(v / size);
/** Cells are counted from −2^16 in each direction: far more than a last has. */
const keyOf = (a: number, b: number, c: number): number => ((a + 65536) * 131072 + (b + 65536)) * 131072 + (c + 65536);
