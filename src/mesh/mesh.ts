/**
 * Triangle mesh. `positions` x0 y0 z0 x1 y1 z1 … (mm unless said), `triangles` a0 b0 c0 … counter-clockwise seen from outside.
 * A value: nobody writes into the arrays after the mesh is made.
 */
export interface Mesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}

export const vertexCount = (m: Mesh): number => m.positions.length / 3;
export const triangleCount = (m: Mesh): number => m.triangles.length / 3;
