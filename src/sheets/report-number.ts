/** A tenth of a micrometre: finer than any use, coarse enough to read. */
export const round = (v: number): number => Math.round(v * 1e4) / 1e4;

/** Every number in it likewise, so that reports do not differ by what rounding leaves. */
export function rounded<T>(value: T): T {
  if (typeof value === "number") return round(value) as T;
  if (Array.isArray(value)) return value.map(rounded) as T;
  // A typed array would come out as an object of its places.
  if (value instanceof Float64Array) return Array.from(value, round) as T;
  if (typeof value === "object" && value !== null) return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, rounded(v)])) as T;
  return value;
}
