import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { list, mirrors, nodeMatrix, part, times, whole, type Json } from "./glb-values.ts";
import { GrowingIndices, GrowingNumbers } from "./growing.ts";
import { damaged, refuseTooMany, truncated, type RawScan } from "./raw-scan.ts";
import { asciiText } from "./text-cursor.ts";

const MAGIC = 0x46546c67; // "glTF"
const CHUNK_JSON = 0x4e4f534a;
const CHUNK_BIN = 0x004e4942;
const DEEPEST = 200;
const WIDTHS: Readonly<Record<number, number>> = { 5120: 1, 5121: 1, 5122: 2, 5123: 2, 5125: 4, 5126: 4 };
const MODES = ["points", "lines", "lines", "lines", "triangles", "strip", "fan"] as const;

export function isGlb(bytes: Uint8Array): boolean {
  return bytes.length >= 4 && new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true) === MAGIC;
}

/**
 * GLB, the one-file form of glTF 2.0: every triangle primitive of every node of the scene, put where its node puts it. Morphs and
 * skins are ignored; packed, sparse and outside data are refused with advice.
 */
export function readGlb(file: string, bytes: Uint8Array): RawScan {
  const { json, bin } = chunks(file, bytes);
  refuseOutside(file, json);
  const reader = new SceneReader(file, json, bin);
  const scenes = list(part(json, "scenes"));
  const scene = scenes[whole(part(json, "scene"), 0)];
  const roots = scene === undefined ? list(part(json, "nodes")).map((_, i) => i) : list(part(scene, "nodes"));
  for (const root of roots) reader.node(whole(root, -1), [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1], 0);
  return { mesh: { positions: reader.positions.taken(), triangles: reader.triangles.taken() }, format: "GLB" };
}

function chunks(file: string, bytes: Uint8Array): { json: Json; bin: Uint8Array } {
  if (bytes.length < 20) throw new Refusal(finding("file-ends-early", { file, after: "inside its header" }));
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const version = view.getUint32(4, true);
  if (version !== 2) throw damaged(file, "its header", `it says version ${version}, only version 2 is read`);
  const total = view.getUint32(8, true);
  if (total > bytes.length) throw truncated(file, total, bytes.length, "bytes");
  let json: Json;
  let bin = new Uint8Array(0);
  for (let at = 12; at + 8 <= total; ) {
    const length = view.getUint32(at, true);
    const kind = view.getUint32(at + 4, true);
    if (at + 8 + length > total) throw truncated(file, length, total - at - 8, "bytes in one part");
    const body = bytes.subarray(at + 8, at + 8 + length);
    if (kind === CHUNK_JSON && json === undefined) json = parseJson(file, body);
    else if (kind === CHUNK_BIN && bin.length === 0) bin = new Uint8Array(body.buffer as ArrayBuffer, body.byteOffset, body.length);
    at += 8 + length + ((4 - (length & 3)) & 3);
  }
  if (json === undefined) throw damaged(file, "its start", "the description of the scene is missing");
  return { json, bin };
}

function parseJson(file: string, body: Uint8Array): Json {
  try {
    return JSON.parse(asciiText(body)) as Json;
  } catch {
    throw damaged(file, "the description of its scene", "it cannot be understood");
  }
}

function refuseOutside(file: string, json: Json): void {
  const needed = list(part(json, "extensionsRequired")).filter((e): e is string => typeof e === "string");
  const packed = needed.find((e) => /compression/i.test(e) && e !== "KHR_mesh_quantization");
  if (packed) throw new Refusal(finding("file-packed", { file, how: "compressed" }));
  const outside = list(part(json, "buffers")).map((b) => part(b, "uri")).find((u) => typeof u === "string");
  if (typeof outside === "string") throw new Refusal(finding("file-parts-outside", { file, part: outside.startsWith("data:") ? "text inside the description" : outside.slice(0, 80) }));
}

/** One accessor: numbers of one kind, `step` bytes apart. */
interface Accessor {
  readonly count: number;
  readonly type: number;
  readonly at: number;
  readonly step: number;
  readonly normalized: boolean;
}

class SceneReader {
  readonly positions = new GrowingNumbers();
  readonly triangles = new GrowingIndices();
  readonly #file: string;
  readonly #json: Json;
  readonly #view: DataView;
  constructor(file: string, json: Json, bin: Uint8Array) {
    this.#file = file;
    this.#json = json;
    this.#view = new DataView(bin.buffer, bin.byteOffset, bin.length);
  }

  node(index: number, above: readonly number[], depth: number): void {
    const node = list(part(this.#json, "nodes"))[index];
    if (node === undefined) throw damaged(this.#file, "the description of its scene", `part ${index} is missing`);
    if (depth > DEEPEST) throw damaged(this.#file, "the description of its scene", "its parts hang on each other in a ring");
    const matrix = times(above, nodeMatrix(node));
    const mesh = list(part(this.#json, "meshes"))[whole(part(node, "mesh"), -1)];
    for (const primitive of list(part(mesh, "primitives"))) this.#primitive(primitive, matrix);
    for (const child of list(part(node, "children"))) this.node(whole(child, -1), matrix, depth + 1);
  }

  #primitive(primitive: Json, m: readonly number[]): void {
    const mode = MODES[whole(part(primitive, "mode"), 4)];
    if (mode === undefined || mode === "points" || mode === "lines") return;
    if (part(part(primitive, "extensions"), "KHR_draco_mesh_compression")) throw new Refusal(finding("file-packed", { file: this.#file, how: "compressed" }));
    const points = this.#accessor(part(part(primitive, "attributes"), "POSITION"), 3);
    if (!points) return;
    const base = this.positions.length / 3;
    refuseTooMany(this.#file, (this.triangles.length + points.count) / 3);
    for (let v = 0; v < points.count; v++) {
      const at = points.at + v * points.step;
      const width = WIDTHS[points.type]!;
      const x = this.#value(points, at);
      const y = this.#value(points, at + width);
      const z = this.#value(points, at + 2 * width);
      this.positions.push3(m[0]! * x + m[4]! * y + m[8]! * z + m[12]!, m[1]! * x + m[5]! * y + m[9]! * z + m[13]!, m[2]! * x + m[6]! * y + m[10]! * z + m[14]!);
    }
    const indices = part(primitive, "indices") === undefined ? undefined : this.#accessor(part(primitive, "indices"), 1);
    this.#faces(mode, points.count, indices, base, mirrors(m));
  }

  #faces(mode: "triangles" | "strip" | "fan", vertices: number, indices: Accessor | undefined, base: number, mirrored: boolean): void {
    const corner = (i: number): number => {
      if (!indices) return i;
      const index = this.#value(indices, indices.at + i * indices.step);
      if (!(index < vertices)) throw new Refusal(finding("index-out-of-range", { file: this.#file, where: `corner ${i + 1}`, index, vertices }));
      return index;
    };
    const count = indices ? indices.count : vertices;
    const faces = mode === "triangles" ? Math.floor(count / 3) : Math.max(0, count - 2);
    refuseTooMany(this.#file, this.triangles.length / 3 + faces);
    for (let f = 0; f < faces; f++) {
      const odd = mode === "strip" && (f & 1) === 1;
      const a = corner(mode === "triangles" ? 3 * f : mode === "fan" ? 0 : f);
      const b = corner(mode === "triangles" ? 3 * f + 1 : f + 1);
      const c = corner(mode === "triangles" ? 3 * f + 2 : f + 2);
      if (odd !== mirrored) this.triangles.push3(base + a, base + c, base + b);
      else this.triangles.push3(base + a, base + b, base + c);
    }
  }

  #accessor(index: Json, wide: 1 | 3): Accessor | undefined {
    const accessor = list(part(this.#json, "accessors"))[whole(index, -1)];
    if (accessor === undefined) return undefined;
    if (part(accessor, "sparse") !== undefined) throw new Refusal(finding("file-packed", { file: this.#file, how: "as corrections to another one" }));
    const view = list(part(this.#json, "bufferViews"))[whole(part(accessor, "bufferView"), -1)];
    if (part(part(view, "extensions"), "EXT_meshopt_compression")) throw new Refusal(finding("file-packed", { file: this.#file, how: "compressed" }));
    const type = whole(part(accessor, "componentType"), 0);
    const width = WIDTHS[type];
    const count = whole(part(accessor, "count"), 0);
    if (view === undefined || width === undefined || part(accessor, "type") !== (wide === 3 ? "VEC3" : "SCALAR")) throw damaged(this.#file, "the description of its scene", "a list of points or corners is not described");
    const step = whole(part(view, "byteStride"), 0) || width * wide;
    const at = whole(part(view, "byteOffset"), 0) + whole(part(accessor, "byteOffset"), 0);
    const end = count === 0 ? at : at + (count - 1) * step + width * wide;
    if (end > this.#view.byteLength) throw truncated(this.#file, end, this.#view.byteLength, "bytes of points and corners");
    return { count, type, at, step, normalized: part(accessor, "normalized") === true };
  }

  #value(a: Accessor, at: number): number {
    const v = this.#view;
    switch (a.type) {
      case 5126: return v.getFloat32(at, true);
      case 5125: return v.getUint32(at, true);
      case 5123: return a.normalized ? v.getUint16(at, true) / 65535 : v.getUint16(at, true);
      case 5122: return a.normalized ? Math.max(-1, v.getInt16(at, true) / 32767) : v.getInt16(at, true);
      case 5121: return a.normalized ? v.getUint8(at) / 255 : v.getUint8(at);
      default: return a.normalized ? Math.max(-1, v.getInt8(at) / 127) : v.getInt8(at);
    }
  }
}
