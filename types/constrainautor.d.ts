// The package's own types are its TypeScript source, which our stricter flags would check as if it were ours.
export interface Triangulation {
  readonly coords: ArrayLike<number>;
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
  readonly hull: ArrayLike<number>;
}

/** Forces edges into a Delaunay triangulation, in place. */
export default class Constrainautor {
  constructor(triangulation: Triangulation, edges?: readonly (readonly [number, number])[]);
  constrainOne(from: number, to: number): number;
  constrainAll(edges: readonly (readonly [number, number])[]): this;
  delaunify(deep?: boolean): this;
  isConstrained(edge: number): boolean;
  findEdge(from: number, to: number): number;
}
