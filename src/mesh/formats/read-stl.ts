import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { GrowingNumbers } from "./growing.ts";
import { damaged, refuseTooMany, truncated, type RawScan } from "./raw-scan.ts";
import { TextCursor } from "./text-cursor.ts";

const HEADER = 84;
const RECORD = 50;

/** Whether the length of the file is what its binary header promises; then its first word says nothing. */
export function isBinaryStl(bytes: Uint8Array): boolean {
  return bytes.length >= HEADER && bytes.length === HEADER + RECORD * binaryCount(bytes);
}

function binaryCount(bytes: Uint8Array): number {
  return new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true);
}

/**
 * Binary STL: 80 bytes of text, count, then per triangle a normal (ignored), three corners as float32 and two spare bytes.
 * The count is checked against the length before anything is made. Bytes after the last triangle are allowed.
 */
export function readStlBinary(file: string, bytes: Uint8Array): RawScan {
  if (bytes.length < HEADER) throw new Refusal(finding("file-ends-early", { file, after: "inside its header" }));
  const count = binaryCount(bytes);
  const held = Math.floor((bytes.length - HEADER) / RECORD);
  if (count > held) throw truncated(file, count, held, "triangles");
  refuseTooMany(file, count);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const positions = new Float64Array(count * 9);
  for (let t = 0, at = HEADER + 12, o = 0; t < count; t++, at += RECORD)
    for (let k = 0; k < 36; k += 4) positions[o++] = view.getFloat32(at + k, true);
  return { mesh: { positions, triangles: counting(count * 3) }, format: "STL, binary" };
}

/** Text STL: only the `vertex` lines count, three to a `facet`; the last word must be `endsolid`. */
export function readStlText(file: string, bytes: Uint8Array): RawScan {
  const cursor = new TextCursor(bytes);
  const corners = new GrowingNumbers();
  let inFacet = 0;
  let closed = false;
  for (; !cursor.done; cursor.nextLine()) {
    if (!cursor.more()) continue;
    if (cursor.take("vertex")) {
      if (++inFacet > 3) throw damaged(file, `line ${cursor.line}`, "a facet has more than three corners");
      corners.push3(cursor.number(), cursor.number(), cursor.number());
      if ((corners.length & 0xffff) === 0) refuseTooMany(file, corners.length / 9);
    } else if (cursor.take("endfacet")) {
      if (inFacet !== 3) throw damaged(file, `line ${cursor.line}`, `a facet has ${inFacet} corners instead of three`);
      inFacet = 0;
    } else if (cursor.take("endsolid")) closed = true;
    else if (cursor.take("solid")) closed = false;
  }
  if (inFacet !== 0 || (!closed && corners.length > 0)) throw new Refusal(finding("file-ends-early", { file, after: `after ${Math.floor(corners.length / 9)} triangles, before its closing word "endsolid"` }));
  refuseTooMany(file, corners.length / 9);
  return { mesh: { positions: corners.taken(), triangles: counting(corners.length / 3) }, format: "STL, text" };
}

function counting(n: number): Uint32Array {
  const out = new Uint32Array(n);
  for (let i = 0; i < n; i++) out[i] = i;
  return out;
}
