import { describe, expect, test } from "vitest";
import { valueFromBytes, valueToBytes } from "#app/demo/value-bytes.ts";

describe("values as bytes", () => {
  const shared = Float64Array.from([1.5, -0, Number.MAX_VALUE, Number.NaN]);
  const value = { a: shared, again: { a: shared }, ids: Uint32Array.from([1, 2, 4_294_967_295]), empty: new Float64Array(0), raw: Uint8Array.from([7]), words: "½ Fuß", list: [1, null, true] };

  test("come back bit for bit, and what was one array is one array", () => {
    const bytes = valueToBytes(value);
    const back = valueFromBytes(bytes) as typeof value;
    expect(back).toEqual(value);
    expect(back.a).toBe(back.again.a);
    expect(valueToBytes(back)).toEqual(bytes);
  });

  test("are read from the middle of a larger buffer too", () => {
    const bytes = valueToBytes(value);
    const larger = new Uint8Array(bytes.length + 5);
    larger.set(bytes, 5);
    expect(valueFromBytes(larger.subarray(5))).toEqual(value);
  });

  test("cut short are refused", () => {
    const bytes = valueToBytes({ a: Float64Array.from([1, 2, 3]) });
    expect(() => valueFromBytes(bytes.subarray(0, bytes.length - 16))).toThrow();
  });
});
