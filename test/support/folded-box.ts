import type { Mesh } from "#mesh/mesh.ts";

type Point = readonly [number, number, number];

/** A rectangular face of a box: a corner and the two sides that leave it. */
export interface Face {
  readonly corner: Point;
  readonly across: Point;
  readonly up: Point;
}

/**
 * Faces of a box in a chain, each joined to the one before it and to no other, every face in squares of `step` mm cut in two.
 * What lies in one place on two faces that follow each other is one vertex.
 */
export function foldedBox(faces: readonly Face[], step: number): { readonly mesh: Mesh; readonly at: (face: number, point: Point) => number } {
  const positions: number[] = [];
  const triangles: number[] = [];
  const named: Map<string, number>[] = [];
  faces.forEach(({ corner, across, up }, f) => {
    const [columns, rows] = [across, up].map((side) => Math.round(Math.hypot(...side) / step)) as [number, number];
    const names = new Map<string, number>();
    const vertex = (c: number, r: number): number => {
      const point = corner.map((x, d) => x + (across[d]! * c) / columns + (up[d]! * r) / rows);
      const name = nameOf(point);
      const known = names.get(name) ?? named[f - 1]?.get(name);
      const made = known ?? positions.push(...point) / 3 - 1;
      names.set(name, made);
      return made;
    };
    for (let r = 0; r < rows; r++)
      for (let c = 0; c < columns; c++) {
        const [a, b, d, e] = [vertex(c, r), vertex(c + 1, r), vertex(c + 1, r + 1), vertex(c, r + 1)];
        triangles.push(a, b, d, a, d, e);
      }
    named.push(names);
  });
  return { mesh: { positions: new Float64Array(positions), triangles: new Uint32Array(triangles) }, at: (face, point) => named[face]!.get(nameOf(point))! };
}

const nameOf = (point: readonly number[]): string => point.map((x) => Math.round(1e6 * x)).join(" ");
