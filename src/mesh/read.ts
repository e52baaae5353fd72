import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Mesh } from "./mesh.ts";
import type { RawScan } from "#mesh/formats/raw-scan.ts";
import { isGlb, readGlb } from "#mesh/formats/read-glb.ts";
import { read3mf } from "#mesh/formats/read-3mf.ts";
import { looksLikeObj, readObj } from "#mesh/formats/read-obj.ts";
import { isOff, readOff } from "#mesh/formats/read-off.ts";
import { readPly } from "#mesh/formats/read-ply.ts";
import { isBinaryStl, readStlBinary, readStlText } from "#mesh/formats/read-stl.ts";
import { asciiText, TextCursor } from "#mesh/formats/text-cursor.ts";

/** The mesh as it lies in the file, in the file's own unit and place; `format` in words for the maker. */
export interface Scan {
  readonly mesh: Mesh;
  readonly format: string;
  readonly findings: readonly Finding[];
}

/** Fewer triangles cannot enclose a body. */
const FEWEST_TRIANGLES = 4;
/** A larger part of unusable triangles means a damaged file, not a slip of the scanner. */
const UNUSABLE_PART = 0.01;

/**
 * Reads a scan: STL, OBJ, PLY, GLB, 3MF or OFF, told by its content first and its name second. Welds nothing and repairs nothing but for
 * triangles with corners that are no numbers, which are left out when they are few. Throws a Refusal with the reason.
 */
export function readScan(name: string, bytes: Uint8Array): Scan {
  if (bytes.length === 0) throw new Refusal(finding("file-empty", { file: name }));
  const raw = readByContent(name, bytes);
  const { positions, triangles } = raw.mesh;
  const count = triangles.length / 3;
  if (count === 0) throw new Refusal(finding("mesh-no-triangles", { file: name, vertices: positions.length / 3 }));
  const { mesh, dropped } = withoutUnusable(raw.mesh);
  if (dropped > count * UNUSABLE_PART) throw new Refusal(finding("points-not-numbers", { file: name, triangles: dropped, of: count }));
  const left = mesh.triangles.length / 3;
  if (left < FEWEST_TRIANGLES) throw new Refusal(finding("mesh-too-few-triangles", { file: name, triangles: left }));
  return { mesh, format: raw.format, findings: dropped > 0 ? [finding("dropped-not-numbers", { triangles: dropped })] : [] };
}

function readByContent(name: string, bytes: Uint8Array): RawScan {
  const ending = /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase() ?? "";
  if (isGlb(bytes)) return readGlb(name, bytes);
  if (/^ply\r?\n|^ply\r/.test(asciiText(bytes, 0, 5))) return readPly(name, bytes);
  if (isOff(bytes)) return readOff(name, bytes);
  if (asciiText(bytes, 0, 2) === "PK" && ending === "3mf") return read3mf(name, bytes);
  const other = otherKind(bytes, ending);
  if (other) throw new Refusal(finding("file-other-kind", { file: name, kind: other }));
  if (isBinaryStl(bytes)) return readStlBinary(name, bytes);
  const text = isText(bytes);
  if (text && startsWith(bytes, "solid") && (ending === "stl" || hasStlWords(bytes))) return readStlText(name, bytes);
  if (text && (ending === "obj" || looksLikeObj(bytes))) {
    if (looksLikeObj(bytes) || onlyComments(bytes)) return readObj(name, bytes);
    throw new Refusal(finding("file-not-mesh", { file: name }));
  }
  if (!text && ending === "stl") return readStlBinary(name, bytes);
  throw new Refusal(finding("file-not-mesh", { file: name }));
}

/** Well-known kinds that are not read, so that the refusal can name them. */
function otherKind(bytes: Uint8Array, ending: string): string | undefined {
  const start = asciiText(bytes, 0, 24);
  if (start.startsWith("PK")) return "a packed folder (zip)";
  if (/^(ST|C|N|4)*n?OFF\b/.test(start)) return "an OFF file in more than three dimensions";
  if (start.startsWith("%PDF")) return "a PDF document";
  if (/^\x89PNG|^\xff\xd8\xff|^GIF8/.test(start)) return "a picture";
  if (start.startsWith("ISO-10303-21")) return "a STEP file";
  if (start.startsWith("Kaydara FBX")) return "an FBX file";
  if (ending === "gltf") return "a glTF file in several parts";
  return undefined;
}

/** No zero byte among the first ones: text, in the sense of the formats read here. */
function isText(bytes: Uint8Array): boolean {
  return !bytes.subarray(0, 4096).includes(0);
}

function startsWith(bytes: Uint8Array, word: string): boolean {
  const cursor = new TextCursor(bytes);
  cursor.skipBlank();
  return asciiText(bytes, cursor.at, cursor.at + word.length).toLowerCase() === word;
}

function hasStlWords(bytes: Uint8Array): boolean {
  return /\b(facet|endsolid)\b/i.test(asciiText(bytes, 0, Math.min(bytes.length, 4096)));
}

function onlyComments(bytes: Uint8Array): boolean {
  const cursor = new TextCursor(bytes);
  for (; !cursor.done && cursor.line < 1000; cursor.nextLine()) if (cursor.more() && bytes[cursor.at] !== 35) return cursor.take("g") || cursor.take("o") || cursor.take("f");
  return true;
}

/** Leaves out triangles that use a corner which is no finite number; the arrays are kept when there is none. */
function withoutUnusable(mesh: Mesh): { mesh: Mesh; dropped: number } {
  const { positions, triangles } = mesh;
  let bad = 0;
  for (let i = 0; i < positions.length; i++) if (!Number.isFinite(positions[i]!)) bad++;
  if (bad === 0) return { mesh, dropped: 0 };
  const finite = (v: number): boolean => Number.isFinite(positions[3 * v]! + positions[3 * v + 1]! + positions[3 * v + 2]!);
  const kept = new Uint32Array(triangles.length);
  let n = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!];
    if (finite(a) && finite(b) && finite(c)) kept.set([a, b, c], (n += 3) - 3);
  }
  const clean = positions.map((x) => (Number.isFinite(x) ? x : 0)); // points of no triangle any more
  return { mesh: { positions: clean, triangles: kept.slice(0, n) }, dropped: (triangles.length - n) / 3 };
}
