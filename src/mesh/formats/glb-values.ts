/** Careful access to JSON of unknown shape: what is absent or of another kind comes back as the default. */
export type Json = unknown;

export function part(value: Json, key: string): Json {
  return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Record<string, Json>)[key] : undefined;
}

export function list(value: Json): readonly Json[] {
  return Array.isArray(value) ? value : [];
}

/** A whole number ≥ 0, or the default. */
export function whole(value: Json, otherwise: number): number {
  return typeof value === "number" && Number.isSafeInteger(value) && value >= 0 ? value : otherwise;
}

/** `length` finite numbers, or the default. */
export function numbers(value: Json, length: number, otherwise: readonly number[]): readonly number[] {
  return Array.isArray(value) && value.length === length && value.every((v) => typeof v === "number" && Number.isFinite(v)) ? (value as number[]) : otherwise;
}

/** Column-major 4×4 of a node: its `matrix`, or translation · rotation (quaternion x y z w) · scale. */
export function nodeMatrix(node: Json): readonly number[] {
  const given = numbers(part(node, "matrix"), 16, []);
  if (given.length === 16) return given;
  const [tx, ty, tz] = numbers(part(node, "translation"), 3, [0, 0, 0]) as [number, number, number];
  const [x, y, z, w] = numbers(part(node, "rotation"), 4, [0, 0, 0, 1]) as [number, number, number, number];
  const [sx, sy, sz] = numbers(part(node, "scale"), 3, [1, 1, 1]) as [number, number, number];
  return [
    (1 - 2 * (y * y + z * z)) * sx, 2 * (x * y + z * w) * sx, 2 * (x * z - y * w) * sx, 0,
    2 * (x * y - z * w) * sy, (1 - 2 * (x * x + z * z)) * sy, 2 * (y * z + x * w) * sy, 0,
    2 * (x * z + y * w) * sz, 2 * (y * z - x * w) * sz, (1 - 2 * (x * x + y * y)) * sz, 0,
    tx, ty, tz, 1,
  ];
}

/** a · b, both column-major 4×4. */
export function times(a: readonly number[], b: readonly number[]): readonly number[] {
  const out = new Float64Array(16);
  for (let c = 0; c < 4; c++)
    for (let r = 0; r < 4; r++) {
      let sum = 0;
      for (let k = 0; k < 4; k++) sum += a[k * 4 + r]! * b[c * 4 + k]!;
      out[c * 4 + r] = sum;
    }
  return Array.from(out);
}

/** Whether the matrix turns left into right. */
export function mirrors(m: readonly number[]): boolean {
  const [a, b, c, , d, e, f, , g, h, i] = m as readonly [number, number, number, number, number, number, number, number, number, number, number];
  return a * (e * i - f * h) - d * (b * i - c * h) + g * (b * f - c * e) < 0;
}
