/** The number of bytes and a 128-bit digest of them as text, to tell files apart (four multiplying 32-bit streams; not for security). */
export function digest(bytes: Uint8Array): string {
  const told = known.get(bytes) ?? digestOf(bytes);
  known.set(bytes, told);
  return told;
}

/** Files are never written into, so each is looked through once, however often a job is run. */
const known = new WeakMap<Uint8Array, string>();

function digestOf(bytes: Uint8Array): string {
  let a = 0xdeadbeef, b = 0x41c6ce57, c = 0x9e3779b9, d = 0x85ebca6b;
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i]!;
    a = Math.imul(a ^ byte, 2654435761);
    b = Math.imul(b ^ byte, 1597334677);
    c = Math.imul(c ^ byte, 2246822507);
    d = Math.imul(d ^ byte, 3266489909);
  }
  const mix = (x: number, y: number) => (Math.imul(x ^ (x >>> 16), 2246822507) ^ Math.imul(y ^ (y >>> 13), 3266489909)) >>> 0;
  return `${bytes.length}-${[mix(a, b), mix(b, c), mix(c, d), mix(d, a)].map((n) => n.toString(16).padStart(8, "0")).join("")}`;
}
