/**
 * Plain values with typed arrays inside as one run of bytes: a little-endian Uint32 with the length of the text, the text (JSON in
 * which an array stands as {"$": kind, at, length}), and then all arrays, each on a boundary of eight bytes. An array that occurs
 * twice is written once.
 */
const kinds = { f64: Float64Array, u32: Uint32Array, u8: Uint8Array } as const;
type Kind = keyof typeof kinds;
interface Place {
  readonly $: Kind;
  readonly at: number;
  readonly length: number;
}

const rounded = (n: number): number => Math.ceil(n / 8) * 8;

export function valueToBytes(value: unknown): Uint8Array {
  const places = new Map<ArrayBufferView, Place>();
  let end = 0;
  const text = JSON.stringify(value, (_, v: unknown) => {
    const kind = (Object.keys(kinds) as Kind[]).find((k) => v instanceof kinds[k]);
    if (!kind) return v;
    const array = v as Float64Array | Uint32Array | Uint8Array;
    let place = places.get(array);
    if (!place) {
      place = { $: kind, at: end, length: array.length };
      places.set(array, place);
      end = rounded(end + array.byteLength);
    }
    return place;
  });
  const words = new TextEncoder().encode(text);
  const start = rounded(4 + words.length);
  const out = new Uint8Array(start + end);
  new DataView(out.buffer).setUint32(0, words.length, true);
  out.set(words, 4);
  for (const [array, { at }] of places) out.set(new Uint8Array(array.buffer, array.byteOffset, array.byteLength), start + at);
  return out;
}

/** The value again; its arrays are copies. Throws on bytes that are not whole. */
export function valueFromBytes(bytes: Uint8Array): unknown {
  const size = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0, true);
  const start = rounded(4 + size);
  const made = new Map<number, unknown>();
  return JSON.parse(new TextDecoder().decode(bytes.subarray(4, 4 + size)), (_, v: unknown) => {
    if (typeof v !== "object" || v === null || !("$" in v)) return v;
    const { $: kind, at, length } = v as Place;
    if (length > 0 && made.has(at)) return made.get(at);
    const type = kinds[kind];
    const array = new type(bytes.slice(start + at, start + at + length * type.BYTES_PER_ELEMENT).buffer);
    if (array.length !== length) throw new Error("the bytes end too early");
    if (length > 0) made.set(at, array);
    return array;
  });
}
