import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { GrowingIndices, GrowingNumbers } from "./growing.ts";
import { damaged, refuseTooMany, type RawScan } from "./raw-scan.ts";
import { TextCursor } from "./text-cursor.ts";

/** How many of the first lines decide whether a text is OBJ at all. */
const LINES_LOOKED_AT = 500;

/** Whether the text has a vertex or face line among its first lines. */
export function looksLikeObj(bytes: Uint8Array): boolean {
  const cursor = new TextCursor(bytes.subarray(0, 200_000));
  for (; !cursor.done && cursor.line < LINES_LOOKED_AT; cursor.nextLine()) {
    if (!cursor.more()) continue;
    if (cursor.take("v")) {
      if (Number.isFinite(cursor.number() + cursor.number() + cursor.number())) return true;
    } else if (cursor.take("mtllib") || cursor.take("vn") || cursor.take("vt")) return true;
  }
  return false;
}

/**
 * OBJ: `v x y z` (weights and colours after them ignored) and `f a b c …` with `a`, `a/t`, `a//n`, `a/t/n`, counted from 1, or from
 * the end when negative. Polygons become fans. Everything else is passed over.
 */
export function readObj(file: string, bytes: Uint8Array): RawScan {
  const cursor = new TextCursor(bytes);
  const vertices = new GrowingNumbers();
  const faces = new GrowingIndices();
  let highest = -1;
  let highestLine = 0;
  for (; !cursor.done; cursor.nextLine()) {
    if (!cursor.more()) continue;
    if (cursor.take("v")) vertices.push3(cursor.number(), cursor.number(), cursor.number());
    else if (cursor.take("f")) {
      const most = readFace(file, cursor, vertices.length / 3, faces);
      if (most > highest) [highest, highestLine] = [most, cursor.line];
      if ((faces.length & 0xffff) < 3) refuseTooMany(file, faces.length / 3);
    }
  }
  if (highest >= vertices.length / 3) throw outOfRange(file, highestLine, highest + 1, vertices.length / 3);
  refuseTooMany(file, faces.length / 3);
  return { mesh: { positions: vertices.taken(), triangles: faces.taken() }, format: "OBJ" };
}

/** Adds one face as a fan; the highest index it uses. */
function readFace(file: string, cursor: TextCursor, soFar: number, faces: GrowingIndices): number {
  let first = -1;
  let last = -1;
  let corners = 0;
  let highest = -1;
  const line = cursor.line;
  while (cursor.more()) {
    const given = cursor.integer();
    if (!Number.isFinite(given)) {
      if (cursor.bytes[cursor.at] === 35) break; // a comment after the corners
      throw damaged(file, `line ${line}`, "a face names a corner that is no number");
    }
    cursor.skipWord();
    const index = given < 0 ? soFar + given : given - 1;
    if (index < 0) throw outOfRange(file, line, given, soFar);
    if (index > highest) highest = index;
    if (corners === 0) first = index;
    else if (corners > 1) faces.push3(first, last, index);
    last = index;
    corners++;
  }
  if (corners < 3) throw damaged(file, `line ${line}`, `a face has ${corners} corners instead of three or more`);
  return highest;
}

function outOfRange(file: string, line: number, index: number, vertices: number): Refusal {
  return new Refusal(finding("index-out-of-range", { file, where: `line ${line}`, index, vertices }));
}
