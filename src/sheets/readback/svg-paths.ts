import { pushCubic } from "#plane/flatten-curve.ts";
import { byteText } from "../text-bytes.ts";
import { flatMm } from "./flat.ts";

/** What an SVG says of its size, and the closed paths of one group, in user units, y down. */
export interface FoundSvg {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly viewBox: readonly number[];
  /** Curves as fine points. */
  readonly outlines: readonly Float64Array[];
}

/** Reads the size and the closed paths of the group `group` from the bytes. Missing numbers come back as NaN. */
export function svgOutlines(bytes: Uint8Array, group: string): FoundSvg {
  const text = byteText(bytes);
  const root = /<svg[^>]*>/.exec(text)?.[0] ?? "";
  const length = (name: string): number => Number(new RegExp(`\\s${name}="([-\\d.]+)mm"`).exec(root)?.[1] ?? NaN);
  const viewBox = (/viewBox="([^"]*)"/.exec(root)?.[1] ?? "").split(/\s+/).map(Number);
  const inside = new RegExp(`<g id="${group}"[^>]*>([\\s\\S]*?)</g>`).exec(text)?.[1] ?? "";
  const outlines = [...inside.matchAll(/<path[^>]*\sd="([^"]*)[Zz]"/g)].map(([, d]) => pointsOf(d!));
  return { widthMm: length("width"), heightMm: length("height"), viewBox, outlines };
}

/** Points of one path of moves, straight lines and cubics, told from the paper's corner (capital) or from where the path stands. */
function pointsOf(d: string): Float64Array {
  const out: number[] = [];
  for (const [, command, told] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const numbers = (told!.match(/-?[\d.]+/g) ?? []).map(Number);
    const many = command === "c" || command === "C" ? 6 : 2;
    for (let i = 0; i + many <= numbers.length; i += many) {
      const [x, y] = [out[out.length - 2] ?? 0, out[out.length - 1] ?? 0];
      const own = command === command!.toLowerCase();
      const p = numbers.slice(i, i + many).map((v, k) => (own ? v + (k % 2 === 0 ? x : y) : v));
      if (many === 6) pushCubic(out, x, y, p[0]!, p[1]!, p[2]!, p[3]!, p[4]!, p[5]!, flatMm);
      else out.push(p[0]!, p[1]!);
    }
  }
  return Float64Array.from(out);
}
