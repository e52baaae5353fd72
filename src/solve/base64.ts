const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** Bytes out of base 64 (RFC 4648, section 4), which neither browsers nor Node offer alike. */
export function fromBase64(text: string): Uint8Array {
  const end = text.replace(/=+$/, "").length;
  const bytes = new Uint8Array(Math.floor((3 * end) / 4));
  let bits = 0;
  for (let i = 0, at = 0, held = 0; i < end; i++) {
    bits = (bits << 6) | letters.indexOf(text[i]!);
    held += 6;
    if (held < 8) continue;
    held -= 8;
    bytes[at++] = bits >> held;
    bits &= (1 << held) - 1;
  }
  return bytes;
}
