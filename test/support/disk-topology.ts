import type { Mesh } from "#mesh/mesh.ts";

/** Euler number and rims of a mesh, counted from its edges alone, as a check that shares no code with what it checks. */
export function topologyOf({ positions, triangles }: Mesh): { readonly euler: number; readonly loops: readonly number[][] } {
  const next = new Map<string, [number, number]>();
  const undirected = new Set<string>();
  for (let f = 0; f < triangles.length; f += 3)
    for (let k = 0; k < 3; k++) {
      const a = triangles[f + k]!, b = triangles[f + ((k + 1) % 3)]!;
      if (next.has(`${a} ${b}`)) throw new Error(`edge ${a} ${b} twice in one direction`);
      next.set(`${a} ${b}`, [a, b]);
      undirected.add(a < b ? `${a} ${b}` : `${b} ${a}`);
    }
  const rim = new Map<number, number>();
  for (const [a, b] of next.values()) if (!next.has(`${b} ${a}`)) rim.set(a, b);
  const loops: number[][] = [];
  while (rim.size > 0) {
    const loop: number[] = [];
    let at = rim.keys().next().value!;
    while (rim.has(at)) {
      loop.push(at);
      const to = rim.get(at)!;
      rim.delete(at);
      at = to;
    }
    loops.push(loop);
  }
  return { euler: positions.length / 3 - undirected.size + triangles.length / 3, loops };
}
