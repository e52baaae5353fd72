import { decode as decodePng, type DecodedPng } from "fast-png";
import { decode as decodeJpeg } from "jpeg-js";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { blocksOf } from "./jpeg-blocks.ts";
import { orientationOf } from "./orientation.ts";
import type { Picture } from "./picture.ts";

/** Phones take 12 to 50 million pixels; reading takes four bytes and more for each. */
const mostMegapixels = 60;
/** Less cannot show the whole card with enough pixels to a millimetre. */
const leastLongSide = 1000;

/**
 * Reads a JPEG (turned upright as its camera says) or a PNG (any depth, grey, colour, palette) to upright 8-bit colour.
 * @throws Refusal for other kinds, damaged files, and pictures too large or too small to measure on
 */
export function readPicture(name: string, bytes: Uint8Array): Picture {
  if (bytes.length === 0) throw new Refusal(finding("picture-empty", { file: name }));
  const kind = kindOf(bytes);
  if (kind !== "JPEG" && kind !== "PNG") throw new Refusal(finding("picture-other-kind", { file: name, kind }));
  const size = kind === "PNG" ? pngSize(bytes) : jpegSize(bytes);
  if (size) judgeSize(name, ...size);
  const picture = decoded(name, bytes, kind);
  judgeSize(name, picture.width, picture.height);
  return picture;
}

function decoded(name: string, bytes: Uint8Array, kind: "JPEG" | "PNG"): Picture {
  try {
    if (kind === "PNG") return fromPng(decodePng(bytes));
    const { width, height, data } = decodeJpeg(bytes, { useTArray: true, formatAsRGBA: true, tolerantDecoding: false, maxResolutionInMP: mostMegapixels, maxMemoryUsageInMB: 2048 });
    return turned({ width, height, rgba: data }, orientationOf(bytes));
  } catch {
    // What the libraries say of it is for programmers.
    throw new Refusal(finding("picture-damaged", { file: name }));
  }
}

function judgeSize(file: string, width: number, height: number): void {
  const megapixels = (width * height) / 1e6;
  if (megapixels > mostMegapixels) throw new Refusal(finding("picture-too-large", { file, megapixels, most: mostMegapixels }));
  if (Math.max(width, height) < leastLongSide) throw new Refusal(finding("picture-too-small", { file, width, height }));
}

/** Told by the first bytes, not by the name. */
function kindOf(bytes: Uint8Array): string {
  const text = (from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return "JPEG";
  if (text(1, 4) === "PNG" && bytes[0] === 0x89) return "PNG";
  if (text(4, 8) === "ftyp") return /avif|avis/.test(text(8, 12)) ? "an AVIF picture" : /hei|hev|mif|msf/.test(text(8, 12)) ? "a HEIC picture" : "a film";
  if (text(0, 4) === "RIFF" && text(8, 12) === "WEBP") return "a WebP picture";
  if (text(0, 4) === "GIF8") return "a GIF picture";
  if (text(0, 2) === "BM") return "a BMP picture";
  if (text(0, 4) === "%PDF") return "a PDF";
  if (text(0, 4) === "II*\0" || text(0, 4) === "MM\0*") return "a TIFF or raw picture";
  return "no picture of a known kind";
}

/** Width and height are in the first chunk. */
function pngSize(bytes: Uint8Array): [number, number] | undefined {
  if (bytes.length < 24) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  return [view.getUint32(16), view.getUint32(20)];
}

/** Width and height are in the block of kind C0 … CF that begins the picture (ITU-T T.81, B.2.2); C4, C8 and CC are others. */
function jpegSize(bytes: Uint8Array): [number, number] | undefined {
  const word = (at: number): number => (bytes[at]! << 8) | bytes[at + 1]!;
  for (const { kind, from, to } of blocksOf(bytes)) {
    if (kind < 0xc0 || kind > 0xcf || kind === 0xc4 || kind === 0xc8 || kind === 0xcc) continue;
    return to - from < 5 ? undefined : [word(from + 3), word(from + 1)];
  }
  return undefined;
}

/** Any PNG to 8-bit red, green, blue, alpha; what is see-through is laid on white. */
function fromPng({ width, height, data, depth, channels, palette }: DecodedPng): Picture {
  const rgba = new Uint8Array(4 * width * height);
  const most = 2 ** depth - 1;
  const values = depth < 8 ? unpacked(data, width, height, depth) : data;
  const table = palette && Uint8Array.from({ length: 4 * palette.length }, (_, k) => palette[k >> 2]![k & 3] ?? 255);
  const scale = 255 / most;
  const hasAlpha = table !== undefined || channels === 2 || channels === 4;
  const colours = channels < 3 ? 1 : 3;
  for (let p = 0, k = 0; p < width * height; p++, k += 4) {
    const from = table ? 4 * values[p]! : p * channels;
    const list = table ?? values;
    const unit = table ? 1 : scale;
    const alpha = hasAlpha ? (list[from + (table ? 3 : colours)]! * unit) / 255 : 1;
    for (let c = 0; c < 3; c++) rgba[k + c] = alpha * unit * list[from + (table || colours === 3 ? c : 0)]! + 255 * (1 - alpha) + 0.5;
    rgba[k + 3] = 255;
  }
  return { width, height, rgba };
}

/** Values of fewer than eight bits, one a byte; every row begins with a new byte. One channel only, as PNG has it. */
function unpacked(data: ArrayLike<number>, width: number, height: number, depth: number): Uint8Array {
  const out = new Uint8Array(width * height);
  const rowBytes = Math.ceil((width * depth) / 8);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) {
    const bit = x * depth;
    out[y * width + x] = (data[y * rowBytes + (bit >> 3)]! >> (8 - depth - (bit & 7))) & (2 ** depth - 1);
  }
  return out;
}

/** Turns and mirrors a picture upright: where the pixel that belongs at (x, y) lies in the file, by orientation. */
function turned(picture: Picture, orientation: number): Picture {
  if (orientation === 1) return picture;
  const { width: w, height: h } = picture;
  const [width, height] = orientation > 4 ? [h, w] : [w, h];
  const from = new Uint32Array(picture.rgba.buffer, picture.rgba.byteOffset, w * h);
  const to = new Uint32Array(w * h);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) {
    const [i, j] = placeInFile(orientation, x, y, w, h);
    to[y * width + x] = from[j * w + i]!;
  }
  return { width, height, rgba: new Uint8Array(to.buffer) };
}

function placeInFile(orientation: number, x: number, y: number, w: number, h: number): [number, number] {
  switch (orientation) {
    case 2: return [w - 1 - x, y];
    case 3: return [w - 1 - x, h - 1 - y];
    case 4: return [x, h - 1 - y];
    case 5: return [y, x];
    case 6: return [y, h - 1 - x];
    case 7: return [w - 1 - y, h - 1 - x];
    default: return [w - 1 - y, x];
  }
}
