import type { CommonSheet } from "./arrange.ts";
import { capitalShare } from "./lettering.ts";
import { layers, strokeStyles, type Layer, type Lettering, type SheetPen, type StrokeKind } from "./pen.ts";
import { traceCut, traceRest, type PieceDrawing } from "./piece-drawing.ts";
import { utf8 } from "./text-bytes.ts";

/** Steps of a millimetre that coordinates are told in. */
const steps = 1e4;

/** Four decimals of a millimetre. */
const fixed = (v: number): string => {
  const s = v.toFixed(4).replace(/\.?0+$/, "");
  return s === "-0" ? "0" : s;
};

/** Characters that XML gives a meaning, and those it forbids. */
export function xmlText(text: string): string {
  const allowed = [...text].filter((letter) => {
    const c = letter.codePointAt(0)!;
    return c >= 0x20 ? c < 0xd800 || (c > 0xdfff && c !== 0xfffe && c !== 0xffff) : c === 0x09 || c === 0x0a;
  });
  return allowed.join("").replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
}

/** Writes strokes into the groups; y is turned over, since SVG counts it downward from the top. */
class SvgPen implements SheetPen {
  readonly groups: Record<Layer, string[]> = { cut: [], mark: [], fold: [], text: [] };
  readonly #heightMm: number;
  #kind: StrokeKind = "cut";
  #path: string[] = [];
  /** Where the path stands as it is written, in steps: what follows is told from there, so that nothing is lost by rounding. */
  #x = 0;
  #y = 0;
  #attributes = "";

  constructor(heightMm: number) {
    this.#heightMm = heightMm;
  }
  /** Names the piece that the next strokes belong to. */
  piece(name: string, side: string): void {
    this.#attributes = ` data-piece="${xmlText(name)}" data-side="${side}"`;
  }
  use(kind: StrokeKind): void {
    this.#kind = kind;
  }
  begin(x: number, y: number): void {
    this.#path = [`M${this.#from([x, y], 0, 0)}`];
  }
  line(x: number, y: number): void {
    this.#path.push(`l${this.#from([x, y], this.#x, this.#y)}`);
  }
  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.#path.push(`c${this.#from([x1, y1, x2, y2, x, y], this.#x, this.#y)}`);
  }
  close(): void {
    this.#path.push("z");
    this.end();
  }
  end(): void {
    const { layer, widthMm, dashMm } = strokeStyles[this.#kind];
    const dash = dashMm.length > 0 ? ` stroke-dasharray="${dashMm.join(" ")}"` : "";
    this.groups[layer].push(`<path${this.#attributes} stroke-width="${widthMm}"${dash} d="${this.#path.join("")}"/>`);
    this.#path = [];
  }
  write({ text, xMm, yMm, heightMm, angleDeg, bold }: Lettering): void {
    const turn = angleDeg === 0 ? "" : ` transform="rotate(${fixed(-angleDeg)} ${fixed(xMm)} ${fixed(this.#heightMm - yMm)})"`;
    const weight = bold ? ` font-weight="bold"` : "";
    this.groups.text.push(`<text${this.#attributes} fill="#1a1a1a" stroke="none" x="${fixed(xMm)}" y="${fixed(this.#heightMm - yMm)}" font-size="${fixed(heightMm / capitalShare)}"${weight}${turn}>${xmlText(text)}</text>`);
  }
  /** Points as they lie from (x, y), which is in steps; the path then stands at the last of them. */
  #from(points: readonly number[], x: number, y: number): string {
    const at = points.map((v, i) => (i % 2 === 0 ? Math.round(v * steps) : Math.round((this.#heightMm - v) * steps)));
    [this.#x, this.#y] = [at[at.length - 2]!, at[at.length - 1]!];
    return at.map((v, i) => fixed((v - (i % 2 === 0 ? x : y)) / steps)).join(" ").replace(/ -/g, "-");
  }
}

/** All pieces once, in mm: one user unit is one millimetre; groups cut, mark, fold, text, as far as they are chosen. */
export function patternSvg(title: string, sheet: CommonSheet, drawings: readonly PieceDrawing[], chosen: readonly Layer[] = layers): Uint8Array {
  const pen = new SvgPen(sheet.heightMm);
  for (const drawing of drawings) {
    pen.piece(drawing.placed.piece.name, drawing.placed.piece.side);
    traceCut(drawing, pen);
    traceRest(drawing, pen);
  }
  const width = fixed(sheet.widthMm), height = fixed(sheet.heightMm);
  const body = layers.filter((layer) => chosen.includes(layer)).map((layer) => {
    const style = layer === "text" ? ` font-family="Helvetica, Arial, sans-serif"` : "";
    return `<g id="${layer}"${style}>\n${pen.groups[layer].join("\n")}\n</g>`;
  });
  const text = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" fill="none" stroke="#1a1a1a" stroke-linecap="round" stroke-linejoin="round">
<title>${xmlText(title)}</title>
${body.join("\n")}
</svg>
`;
  return utf8(text);
}
