/** UTF-8 bytes of a text; the core has no encoder of its own. */
export function utf8(text: string): Uint8Array {
  const out = new Uint8Array(3 * text.length);
  let n = 0;
  for (let i = 0; i < text.length; i++) {
    let c = text.charCodeAt(i);
    if (c < 0x80) {
      out[n++] = c;
      continue;
    }
    if (c >= 0xd800 && c < 0xe000) c = text.codePointAt(i)!;
    if (c > 0xffff) i++;
    if (c >= 0xd800 && c < 0xe000) c = 0xfffd; // half of a pair stands for no letter
    if (c >= 0x10000) out[n++] = 0xf0 | (c >> 18);
    if (c >= 0x800) out[n++] = c >= 0x10000 ? 0x80 | ((c >> 12) & 63) : 0xe0 | (c >> 12);
    out[n++] = c >= 0x800 ? 0x80 | ((c >> 6) & 63) : 0xc0 | (c >> 6);
    out[n++] = 0x80 | (c & 63);
  }
  return out.slice(0, n);
}

/** Bytes as text, one character a byte: enough to find numbers and keywords, which are ASCII in all our files. */
export function byteText(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let i = 0; i < bytes.length; i += 8192) parts.push(String.fromCharCode.apply(null, bytes.subarray(i, i + 8192) as unknown as number[]));
  return parts.join("");
}
