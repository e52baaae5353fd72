import type { CommonSheet } from "./arrange.ts";
import { pushArcs } from "#plane/biarc.ts";
import { blocks, handles, header, objects, tables, type Groups } from "./dxf-frame.ts";
import { layers, strokeStyles, type Layer, type Lettering, type SheetPen, type StrokeKind } from "./pen.ts";
import { traceCut, traceRest, type PieceDrawing } from "./piece-drawing.ts";
import { utf8 } from "./text-bytes.ts";

/** How far the arcs may pass from a curve, mm. */
const arcMm = 0.001;

/**
 * Writes entities into the model space; one LWPOLYLINE a stroke, one TEXT a line of words. Curves become arcs, told by the bulge of
 * the vertex that they leave: so an outline stays one closed entity, in the one kind of curve that every cutter's control drives
 * by itself (splines are often chopped into chords on the way).
 */
class DxfPen implements SheetPen {
  readonly parts: string[] = [];
  handle: number = handles.firstEntity;
  #kind: StrokeKind = "cut";
  /** Vertices: x, y, and the bulge of what leaves them. */
  #vertices: number[] = [];
  readonly #chosen: readonly Layer[];

  constructor(chosen: readonly Layer[]) {
    this.#chosen = chosen;
  }

  use(kind: StrokeKind): void {
    this.#kind = kind;
  }
  begin(x: number, y: number): void {
    this.#vertices = [x, y, 0];
  }
  line(x: number, y: number): void {
    this.#vertices.push(x, y, 0);
  }
  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    const v = this.#vertices;
    const arcs: number[] = [];
    pushArcs(arcs, v[v.length - 3]!, v[v.length - 2]!, x1, y1, x2, y2, x, y, arcMm);
    for (let i = 0; i < arcs.length; i += 3) {
      v[v.length - 1] = arcs[i + 2]!;
      v.push(arcs[i]!, arcs[i + 1]!, 0);
    }
  }
  close(): void {
    const v = this.#vertices;
    // Where the last curve came back to the start, closing draws nothing more.
    if (v.length > 3 && v[v.length - 3] === v[0] && v[v.length - 2] === v[1]) v.length -= 3;
    this.#put(true);
  }
  end(): void {
    this.#put(false);
  }
  write({ text, xMm, yMm, heightMm, angleDeg }: Lettering): void {
    if (!this.#chosen.includes("text")) return;
    this.#entity("TEXT", "text");
    this.parts.push("100", "AcDbText", at(xMm, yMm), "30", "0", "40", place(heightMm), "1", dxfText(text), "50", place(angleDeg), "100", "AcDbText");
  }
  #put(closed: boolean): void {
    const v = this.#vertices;
    const { layer } = strokeStyles[this.#kind];
    this.#vertices = [];
    if (!this.#chosen.includes(layer)) return;
    this.#entity("LWPOLYLINE", layer);
    this.parts.push("100", "AcDbPolyline", "90", String(v.length / 3), "70", closed ? "1" : "0");
    for (let i = 0; i < v.length; i += 3) {
      this.parts.push(at(v[i]!, v[i + 1]!));
      const bulge = bulgeText(v[i + 2]!);
      if (bulge) this.parts.push("42", bulge);
    }
  }
  #entity(type: string, layer: string): void {
    this.parts.push("0", type, "5", hex(this.handle++), "330", hex(handles.modelRecord), "100", "AcDbEntity", "8", layer);
  }
}

/** Four decimals of a millimetre; adding 0 takes the sign off a nought. */
const place = (v: number): string => (Math.round(v * 1e4) / 1e4 + 0).toFixed(4);
const at = (x: number, y: number): string => `10\n${place(x)}\n20\n${place(y)}`;
const hex = (n: number): string => n.toString(16).toUpperCase();

/** Nine decimals, nothing for a straight line: over a chord of 100 mm less than 0.0001 mm. */
const bulgeText = (v: number): string => (Math.abs(v) < 5e-10 ? "" : v.toFixed(9).replace(/0+$/, ""));

/**
 * Text in ASCII that reads as it was meant: other letters as the format's own escape, and so a backslash; line ends left out; carets
 * (its control mark) spelled out; of two or more per cent signs, which begin its codes for other signs and for underlining, each
 * written as the code for one.
 */
export function dxfText(text: string): string {
  let out = "";
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c < 32) out += " ";
    else if (c === 94) out += "^ ";
    else if (c === 92) out += "\\U+005C";
    else if (c === 37 && (text[i - 1] === "%" || text[i + 1] === "%")) out += "%%%";
    else if (c < 127) out += text[i];
    else out += `\\U+${c.toString(16).toUpperCase().padStart(4, "0")}`;
  }
  return out;
}

/** All pieces once, in mm, y up from the lower left corner of the common sheet; layers cut, mark, fold, text, as far as they are chosen. */
export function patternDxf(sheet: CommonSheet, drawings: readonly PieceDrawing[], chosen: readonly Layer[] = layers): Uint8Array {
  const pen = new DxfPen(chosen);
  for (const drawing of drawings) {
    traceCut(drawing, pen);
    traceRest(drawing, pen);
  }
  const groups: Groups = [
    ...header(sheet.widthMm, sheet.heightMm, pen.handle),
    ...tables(layers.filter((layer) => chosen.includes(layer))),
    ...blocks(),
    0, "SECTION", 2, "ENTITIES",
  ];
  const all = [groups, pen.parts, [0, "ENDSEC"], objects()];
  return utf8(`${all.map((part) => part.join("\n")).join("\n")}\n`);
}
