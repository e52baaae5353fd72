/** Distance of two vertices of x y z positions, mm. */
export function distanceInSpace(positions: Float64Array, a: number, b: number): number {
  const x = positions[3 * b]! - positions[3 * a]!;
  const y = positions[3 * b + 1]! - positions[3 * a + 1]!;
  const z = positions[3 * b + 2]! - positions[3 * a + 2]!;
  return Math.sqrt(x * x + y * y + z * z);
}
