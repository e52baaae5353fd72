import { strFromU8, unzipSync } from "fflate";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { GrowingIndices, GrowingNumbers } from "./growing.ts";
import { damaged, refuseTooMany, type RawScan } from "./raw-scan.ts";

/** Larger descriptions are refused before they are unpacked: 5 million triangles take about 300 MB of text. */
const MOST_BYTES = 400e6;
const DEEPEST = 20;

interface Shape {
  readonly positions: GrowingNumbers;
  readonly triangles: GrowingIndices;
  readonly parts: { id: string; matrix: readonly number[] }[];
}

/** Rows of the turn, then the shift: 12 numbers as the format writes them. */
const STILL: readonly number[] = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];

/**
 * 3MF: a zip with a description in XML. Meshes of the objects that the build names, put where it puts them, in the file's own unit;
 * colours, slices and beams are passed over. Read by tags and their attributes, which is all that its core part needs.
 */
export function read3mf(file: string, bytes: Uint8Array): RawScan {
  const text = description(file, bytes);
  const { shapes, items } = shapesOf(file, text);
  const positions = new GrowingNumbers();
  const triangles = new GrowingIndices();
  const place = (id: string, matrix: readonly number[], depth: number): void => {
    const shape = shapes.get(id);
    if (!shape) throw damaged(file, "its description", `object ${id} is missing`);
    if (depth > DEEPEST) throw damaged(file, "its description", "its objects hang on each other in a ring");
    refuseTooMany(file, (triangles.length + shape.triangles.length) / 3);
    const first = positions.length / 3;
    const p = shape.positions.taken();
    for (let i = 0; i < p.length; i += 3) positions.push3(moved(p, i, matrix, 0), moved(p, i, matrix, 1), moved(p, i, matrix, 2));
    const t = shape.triangles.taken();
    for (let i = 0; i < t.length; i += 3) {
      for (let k = 0; k < 3; k++) if (!(t[i + k]! < p.length / 3)) throw new Refusal(finding("index-out-of-range", { file, where: `triangle ${i / 3 + 1}`, index: t[i + k]!, vertices: p.length / 3 }));
      triangles.push3(first + t[i]!, first + t[i + 1]!, first + t[i + 2]!);
    }
    for (const part of shape.parts) place(part.id, after(part.matrix, matrix), depth + 1);
  };
  for (const item of items.length > 0 ? items : [...shapes.keys()].map((id) => ({ id, matrix: STILL }))) place(item.id, item.matrix, 0);
  return { mesh: { positions: positions.taken(), triangles: triangles.taken() }, format: "3MF" };
}

function description(file: string, bytes: Uint8Array): string {
  let entries: Record<string, Uint8Array>;
  try {
    entries = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (!/\.model$/i.test(name)) return false;
        if (originalSize > MOST_BYTES) throw damaged(file, "its description", "it is larger than 400 MB; export it at a lower resolution");
        return true;
      },
    });
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw damaged(file, "its packing", "it cannot be unpacked");
  }
  const names = Object.keys(entries).sort();
  const name = names.find((n) => /(^|\/)3dmodel\.model$/i.test(n)) ?? names[0];
  if (name === undefined) throw new Refusal(finding("file-other-kind", { file, kind: "a packed folder (zip) without a 3-D surface" }));
  if (names.length > 1) throw new Refusal(finding("file-packed", { file, how: "in several parts" }));
  return strFromU8(entries[name]!);
}

function shapesOf(file: string, text: string): { shapes: Map<string, Shape>; items: { id: string; matrix: readonly number[] }[] } {
  const shapes = new Map<string, Shape>();
  const items: { id: string; matrix: readonly number[] }[] = [];
  let shape: Shape | undefined;
  const tag = /<(?:[\w-]+:)?(object|vertex|triangle|component|item)\s([^>]*)>/g;
  for (let found = tag.exec(text); found; found = tag.exec(text)) {
    const [, kind, words] = found as unknown as [string, string, string];
    const number = (name: string): number => Number(attribute(words, name) ?? NaN);
    if (kind === "object") shapes.set(attribute(words, "id") ?? "", (shape = { positions: new GrowingNumbers(), triangles: new GrowingIndices(), parts: [] }));
    else if (kind === "item") items.push({ id: attribute(words, "objectid") ?? "", matrix: matrixOf(file, words) });
    else if (!shape) throw damaged(file, "its description", `a ${kind} stands outside any object`);
    else if (kind === "vertex") shape.positions.push3(number("x"), number("y"), number("z"));
    else if (kind === "component") shape.parts.push({ id: attribute(words, "objectid") ?? "", matrix: matrixOf(file, words) });
    else {
      const corners = [number("v1"), number("v2"), number("v3")] as const;
      if (!corners.every((v) => Number.isInteger(v) && v >= 0)) throw damaged(file, "its description", "a triangle names a corner that is no number");
      shape.triangles.push3(...corners);
      if ((shape.triangles.length & 0xffff) < 3) refuseTooMany(file, shape.triangles.length / 3);
    }
  }
  return { shapes, items };
}

function attribute(words: string, name: string): string | undefined {
  for (let at = words.indexOf(name); at >= 0; at = words.indexOf(name, at + 1)) {
    if (at > 0 && !/\s/.test(words[at - 1]!)) continue;
    const value = /^\s*=\s*(?:"([^"]*)"|'([^']*)')/.exec(words.slice(at + name.length, at + name.length + 400));
    if (value) return value[1] ?? value[2];
  }
  return undefined;
}

function matrixOf(file: string, words: string): readonly number[] {
  const given = attribute(words, "transform");
  if (given === undefined) return STILL;
  const m = given.trim().split(/\s+/).map(Number);
  if (m.length !== 12 || !m.every(Number.isFinite)) throw damaged(file, "its description", "a placing is not made of twelve numbers");
  return m;
}

const moved = (p: Float64Array, i: number, m: readonly number[], k: number): number => p[i]! * m[k]! + p[i + 1]! * m[3 + k]! + p[i + 2]! * m[6 + k]! + m[9 + k]!;

/** First `inner`, then `outer`. */
function after(inner: readonly number[], outer: readonly number[]): readonly number[] {
  const p = Float64Array.from(inner);
  return [0, 1, 2, 3].flatMap((row) => [0, 1, 2].map((k) => moved(p, 3 * row, outer, k) - (row < 3 ? outer[9 + k]! : 0)));
}
