import type { Mesh } from "#mesh/mesh.ts";

/**
 * The same body in n² as many triangles, each cut evenly and for itself as an STL file holds them: no corner is shared. The surface
 * stays the very same, so whatever was true of the body still is.
 */
export function finer({ positions: p, triangles }: Mesh, n: number): Mesh {
  const out = new Float64Array(3 * triangles.length * n * n);
  let at = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const put = (i: number, j: number): void => {
      for (let k = 0; k < 3; k++) out[at++] = ((n - i - j) * p[a + k]! + i * p[b + k]! + j * p[c + k]!) / n;
    };
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n - i; j++) {
        put(i, j);
        put(i + 1, j);
        put(i, j + 1);
        if (i + j + 1 === n) continue;
        put(i + 1, j);
        put(i + 1, j + 1);
        put(i, j + 1);
      }
  }
  return { positions: out, triangles: Uint32Array.from({ length: out.length / 3 }, (_, i) => i) };
}
