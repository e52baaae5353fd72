import fc from "fast-check";
import { expect, test } from "vitest";
import { fromBase64 } from "#solve/base64.ts";

// Test vectors: RFC 4648, section 10.
test.each([["", ""], ["Zg==", "f"], ["Zm8=", "fo"], ["Zm9v", "foo"], ["Zm9vYg==", "foob"], ["Zm9vYmE=", "fooba"], ["Zm9vYmFy", "foobar"]])("base 64 %j is %j", (text, plain) => {
  expect(String.fromCharCode(...fromBase64(text))).toBe(plain);
});

test("base 64 of any bytes leads back to them", () => {
  fc.assert(fc.property(fc.uint8Array({ maxLength: 50 }), (bytes) => {
    expect([...fromBase64(Buffer.from(bytes).toString("base64"))]).toEqual([...bytes]);
  }), { seed: 5 });
});
