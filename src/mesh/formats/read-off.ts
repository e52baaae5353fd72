import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { GrowingIndices, GrowingNumbers } from "./growing.ts";
import { damaged, refuseTooMany, truncated, type RawScan } from "./raw-scan.ts";
import { asciiText, TextCursor } from "./text-cursor.ts";

const HEAD = /^(ST)?C?N?OFF\b/;

/** Text OFF, with or without colours and normals; not the forms in four or n dimensions. */
export const isOff = (bytes: Uint8Array): boolean => HEAD.test(asciiText(bytes, 0, 16));

/**
 * OFF: counts of points and faces, then a line `x y z …` a point and `n i0 i1 …` a face; `#` starts a comment. Polygons become fans; what
 * follows on a line is passed over.
 */
export function readOff(file: string, bytes: Uint8Array): RawScan {
  const cursor = new TextCursor(bytes);
  const head = cursor.word();
  if (/binary/i.test(cursor.word())) throw damaged(file, "its header", "it is the binary form, which is not read here");
  cursor.at = head.length;
  nextFilled(cursor);
  const [points, faces] = [cursor.integer(), cursor.integer()];
  if (!(points >= 0) || !(faces >= 0)) throw damaged(file, `line ${cursor.line}`, "the counts of points and faces are missing");
  // a point takes six bytes at least, a face eight
  if (points * 6 > bytes.length) throw truncated(file, points, Math.floor(bytes.length / 6), "points");
  if (faces * 8 > bytes.length) throw truncated(file, faces, Math.floor(bytes.length / 8), "faces");
  refuseTooMany(file, faces);
  const positions = new GrowingNumbers();
  for (let v = 0; v < points; v++) {
    cursor.nextLine();
    if (!nextFilled(cursor)) throw truncated(file, points, v, "points");
    positions.push3(cursor.number(), cursor.number(), cursor.number());
  }
  const triangles = new GrowingIndices();
  for (let f = 0; f < faces; f++) {
    cursor.nextLine();
    if (!nextFilled(cursor)) throw truncated(file, faces, f, "faces");
    readFace(file, cursor, points, triangles);
  }
  return { mesh: { positions: positions.taken(), triangles: triangles.taken() }, format: "OFF" };
}

function readFace(file: string, cursor: TextCursor, points: number, triangles: GrowingIndices): void {
  const count = cursor.integer();
  if (!(count >= 0)) throw damaged(file, `line ${cursor.line}`, "a face does not say how many corners it has");
  const corners: number[] = [];
  for (let k = 0; k < count; k++) {
    const v = cursor.integer();
    if (!Number.isFinite(v)) throw damaged(file, `line ${cursor.line}`, `a face has ${k} corners instead of ${count}`);
    if (v < 0 || v >= points) throw new Refusal(finding("index-out-of-range", { file, where: `line ${cursor.line}`, index: v, vertices: points }));
    corners.push(v);
  }
  for (let k = 2; k < count; k++) triangles.push3(corners[0]!, corners[k - 1]!, corners[k]!);
}

/** Goes on to the next line that says something; false at the end. */
function nextFilled(cursor: TextCursor): boolean {
  while (!cursor.done) {
    if (cursor.more() && cursor.bytes[cursor.at] !== 35) return true;
    cursor.nextLine();
  }
  return false;
}
