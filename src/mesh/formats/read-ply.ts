import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { GrowingIndices } from "./growing.ts";
import { leastBytes, readPlyHeader, sizeOf, type PlyElement, type PlyHeader, type PlyType } from "./ply-header.ts";
import { damaged, refuseTooMany, truncated, type RawScan } from "./raw-scan.ts";
import { TextCursor } from "./text-cursor.ts";

/** Where the numbers of a PLY file come from: text or bytes. `next` gives NaN past the end. */
interface Numbers {
  next(type: PlyType): number;
  /** Between two elements: text puts each on a line of its own, and what is too much on that line is passed over. */
  endElement(): void;
  readonly over: boolean;
}

class TextNumbers implements Numbers {
  readonly #cursor: TextCursor;
  over = false;
  constructor(bytes: Uint8Array, at: number) {
    this.#cursor = new TextCursor(bytes, at);
  }
  next(): number {
    this.#cursor.skipBlank();
    if (this.#cursor.done) this.over = true;
    return this.#cursor.number();
  }
  endElement(): void {
    this.#cursor.nextLine();
  }
}

class ByteNumbers implements Numbers {
  readonly #view: DataView;
  readonly #little: boolean;
  #at: number;
  over = false;
  endElement(): void {}
  constructor(bytes: Uint8Array, at: number, little: boolean) {
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    this.#at = at;
    this.#little = little;
  }
  next(type: PlyType): number {
    const at = this.#at;
    const end = at + sizeOf(type);
    if (end > this.#view.byteLength) {
      this.over = true;
      return NaN;
    }
    this.#at = end;
    const little = this.#little;
    switch (type) {
      case "f4": return this.#view.getFloat32(at, little);
      case "f8": return this.#view.getFloat64(at, little);
      case "i4": return this.#view.getInt32(at, little);
      case "u4": return this.#view.getUint32(at, little);
      case "u1": return this.#view.getUint8(at);
      case "i1": return this.#view.getInt8(at);
      case "i2": return this.#view.getInt16(at, little);
      case "u2": return this.#view.getUint16(at, little);
    }
  }
}

/** PLY 1.0, text or binary of either byte order: elements `vertex` with x y z and `face` with a list of corners; the rest is passed over. */
export function readPly(file: string, bytes: Uint8Array): RawScan {
  const header = readPlyHeader(file, bytes);
  checkRoom(file, header, bytes.length);
  const numbers: Numbers = header.form === "ascii" ? new TextNumbers(bytes, header.end) : new ByteNumbers(bytes, header.end, header.form === "binary_little_endian");
  let positions = new Float64Array(0);
  let triangles = new Uint32Array(0);
  for (const element of header.elements) {
    if (element.name === "vertex") positions = readVertices(file, element, numbers);
    else if (element.name === "face") triangles = readFaces(file, element, numbers);
    else if (element.name === "tristrips") throw new Refusal(finding("file-packed", { file, how: "in strips" }));
    else passOver(element, numbers);
    if (numbers.over) throw new Refusal(finding("file-ends-early", { file, after: `inside its list of ${element.name === "vertex" ? "points" : element.name === "face" ? "triangles" : element.name}` }));
  }
  const count = positions.length / 3;
  const wrong = triangles.findIndex((v) => v >= count);
  if (wrong >= 0) throw new Refusal(finding("index-out-of-range", { file, where: `triangle ${Math.floor(wrong / 3) + 1}`, index: triangles[wrong]!, vertices: count }));
  return { mesh: { positions, triangles }, format: header.form === "ascii" ? "PLY, text" : "PLY, binary" };
}

/** Refuses counts that the file cannot hold, before anything of that size is made. */
function checkRoom(file: string, header: PlyHeader, length: number): void {
  let room = length - header.end;
  for (const element of header.elements) {
    const least = header.form === "ascii" ? 2 * element.properties.length : leastBytes(element);
    const what = element.name === "vertex" ? "points" : element.name === "face" ? "faces" : element.name;
    if (least === 0 && element.count > 0) throw damaged(file, "its header", `its ${what} have no values`);
    // the last number of a text may end with the file, so one byte of grace
    if (element.count * least > room + 1) throw truncated(file, element.count, Math.max(0, Math.floor(room / least)), what);
    room -= element.count * least;
    if (element.name === "face") refuseTooMany(file, element.count);
  }
}

function readVertices(file: string, element: PlyElement, numbers: Numbers): Float64Array<ArrayBuffer> {
  const names = element.properties.map((p) => p.name.toLowerCase());
  const axes = element.properties.map((p, i) => (p.countType ? -1 : ["x", "y", "z"].indexOf(names[i]!)));
  for (const axis of [0, 1, 2]) if (!axes.includes(axis)) throw damaged(file, "its header", `the points have no ${"xyz"[axis]}`);
  const positions = new Float64Array(element.count * 3);
  const { properties } = element;
  for (let v = 0; v < element.count && !numbers.over; v++) {
    for (let i = 0; i < properties.length; i++) {
      const p = properties[i]!;
      if (p.countType) skipList(p.countType, p.type, numbers);
      else {
        const value = numbers.next(p.type);
        const axis = axes[i]!;
        if (axis >= 0) positions[v * 3 + axis] = value;
      }
    }
    numbers.endElement();
  }
  return positions;
}

function readFaces(file: string, element: PlyElement, numbers: Numbers): Uint32Array<ArrayBuffer> {
  const faces = new GrowingIndices();
  const corners = element.properties.findIndex((p) => p.countType && /^vertex_ind(ices|ex)$/i.test(p.name));
  if (corners < 0 && element.count > 0) throw damaged(file, "its header", "the faces have no list of corners");
  for (let f = 0; f < element.count && !numbers.over; f++) {
    for (let i = 0; i < element.properties.length; i++) {
      const p = element.properties[i]!;
      if (i === corners) readFan(file, f, p.countType!, p.type, numbers, faces);
      else if (p.countType) skipList(p.countType, p.type, numbers);
      else numbers.next(p.type);
    }
    numbers.endElement();
    if ((f & 0xffff) === 0) refuseTooMany(file, faces.length / 3);
  }
  refuseTooMany(file, faces.length / 3);
  return faces.taken();
}

function readFan(file: string, f: number, countType: PlyType, type: PlyType, numbers: Numbers, faces: GrowingIndices): void {
  const count = numbers.next(countType);
  let first = 0;
  let last = 0;
  for (let k = 0; k < count && !numbers.over; k++) {
    const index = numbers.next(type);
    if (!(index >= 0 && index <= 0xffffffff) && !numbers.over) throw damaged(file, `face ${f + 1}`, "a corner is no number");
    if (k === 0) first = index;
    else if (k > 1) faces.push3(first, last, index);
    last = index;
  }
}

function skipList(countType: PlyType, type: PlyType, numbers: Numbers): void {
  const count = numbers.next(countType);
  for (let k = 0; k < count && !numbers.over; k++) numbers.next(type);
}

function passOver(element: PlyElement, numbers: Numbers): void {
  for (let n = 0; n < element.count && !numbers.over; n++) {
    for (const p of element.properties) {
      if (p.countType) skipList(p.countType, p.type, numbers);
      else numbers.next(p.type);
    }
    numbers.endElement();
  }
}
