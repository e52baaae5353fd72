import { damaged } from "./raw-scan.ts";
import { TextCursor } from "./text-cursor.ts";

export type PlyForm = "ascii" | "binary_little_endian" | "binary_big_endian";
/** i/u whole numbers signed or not, f floating, with the bytes they take. */
export type PlyType = "i1" | "u1" | "i2" | "u2" | "i4" | "u4" | "f4" | "f8";

export interface PlyProperty {
  readonly name: string;
  readonly type: PlyType;
  /** Type of the length in front, for a list. */
  readonly countType?: PlyType;
}

export interface PlyElement {
  readonly name: string;
  readonly count: number;
  readonly properties: readonly PlyProperty[];
}

export interface PlyHeader {
  readonly form: PlyForm;
  readonly elements: readonly PlyElement[];
  /** Where the data begin. */
  readonly end: number;
}

const TYPES: Readonly<Record<string, PlyType>> = {
  char: "i1", int8: "i1", uchar: "u1", uint8: "u1",
  short: "i2", int16: "i2", ushort: "u2", uint16: "u2",
  int: "i4", int32: "i4", uint: "u4", uint32: "u4",
  float: "f4", float32: "f4", double: "f8", float64: "f8",
};

/** Reads the header of a PLY file (format 1.0). Throws a Refusal that names the line at fault. */
export function readPlyHeader(file: string, bytes: Uint8Array): PlyHeader {
  const cursor = new TextCursor(bytes);
  const elements: { name: string; count: number; properties: PlyProperty[] }[] = [];
  let form: PlyForm | undefined;
  const fault = (why: string) => damaged(file, `line ${cursor.line} of its header`, why);
  for (cursor.nextLine(); !cursor.done; cursor.nextLine()) {
    const key = cursor.word();
    if (key === "end_header") {
      cursor.nextLine();
      if (!form) throw fault("it does not say whether its data are text or binary");
      return { form, elements, end: cursor.at };
    }
    if (key === "format") {
      const said = cursor.word();
      if (said !== "ascii" && said !== "binary_little_endian" && said !== "binary_big_endian") throw fault(`"${said}" is no known form of its data`);
      form = said;
    } else if (key === "element") {
      const name = cursor.word();
      const count = cursor.integer();
      if (!Number.isSafeInteger(count) || count < 0) throw fault(`the number of ${name || "its parts"} is missing`);
      elements.push({ name, count, properties: [] });
    } else if (key === "property") {
      const owner = elements.at(-1);
      if (!owner) throw fault("a property stands before its element");
      owner.properties.push(readProperty(cursor, fault));
    } else if (key !== "" && key !== "comment" && key !== "obj_info") throw fault(`"${key}" is no word of such a header`);
  }
  throw damaged(file, "its header", "the closing word end_header is missing");
}

function readProperty(cursor: TextCursor, fault: (why: string) => Error): PlyProperty {
  const typeOf = (word: string): PlyType => {
    const type = TYPES[word];
    if (!type) throw fault(`"${word}" is no known type of number`);
    return type;
  };
  const first = cursor.word();
  if (first !== "list") return { type: typeOf(first), name: cursor.word() };
  const countType = typeOf(cursor.word());
  return { countType, type: typeOf(cursor.word()), name: cursor.word() };
}

export const sizeOf = (type: PlyType): number => type.charCodeAt(1) - 48;

/** The fewest bytes that `element` can take in binary form (lists counted as empty). */
export function leastBytes(element: PlyElement): number {
  let bytes = 0;
  for (const p of element.properties) bytes += sizeOf(p.countType ?? p.type);
  return bytes;
}
