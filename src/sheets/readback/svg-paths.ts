import { byteText } from "../text-bytes.ts";

/** What an SVG says of its size, and the closed paths of one group, in user units, y down. */
export interface FoundSvg {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly viewBox: readonly number[];
  readonly outlines: readonly Float64Array[];
}

/** Reads the size and the closed paths of the group `group` from the bytes. Missing numbers come back as NaN. */
export function svgOutlines(bytes: Uint8Array, group: string): FoundSvg {
  const text = byteText(bytes);
  const root = /<svg[^>]*>/.exec(text)?.[0] ?? "";
  const length = (name: string): number => Number(new RegExp(`\\s${name}="([-\\d.]+)mm"`).exec(root)?.[1] ?? NaN);
  const viewBox = (/viewBox="([^"]*)"/.exec(root)?.[1] ?? "").split(/\s+/).map(Number);
  const inside = new RegExp(`<g id="${group}"[^>]*>([\\s\\S]*?)</g>`).exec(text)?.[1] ?? "";
  const outlines = [...inside.matchAll(/<path[^>]*\sd="([^"]*)Z"/g)].map(([, d]) => Float64Array.from((d!.match(/-?[\d.]+/g) ?? []).map(Number)));
  return { widthMm: length("width"), heightMm: length("height"), viewBox, outlines };
}
