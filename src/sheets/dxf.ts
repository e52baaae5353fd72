import type { CommonSheet } from "./arrange.ts";
import { blocks, handles, header, objects, tables, type Groups } from "./dxf-frame.ts";
import { strokeStyles, type Lettering, type SheetPen, type StrokeKind } from "./pen.ts";
import { traceCut, traceRest, type PieceDrawing } from "./piece-drawing.ts";
import { utf8 } from "./text-bytes.ts";

/** Writes entities into the model space; one LWPOLYLINE a stroke, one TEXT a line of words. */
class DxfPen implements SheetPen {
  readonly parts: string[] = [];
  handle: number = handles.firstEntity;
  #kind: StrokeKind = "cut";
  #xy: number[] = [];

  use(kind: StrokeKind): void {
    this.#kind = kind;
  }
  begin(x: number, y: number): void {
    this.#xy = [x, y];
  }
  line(x: number, y: number): void {
    this.#xy.push(x, y);
  }
  close(): void {
    this.#put(true);
  }
  end(): void {
    this.#put(false);
  }
  write({ text, xMm, yMm, heightMm, angleDeg }: Lettering): void {
    this.#entity("TEXT", "text");
    this.parts.push("100", "AcDbText", at(xMm, yMm), "30", "0", "40", place(heightMm), "1", dxfText(text), "50", place(angleDeg), "100", "AcDbText");
  }
  #put(closed: boolean): void {
    this.#entity("LWPOLYLINE", strokeStyles[this.#kind].layer);
    this.parts.push("100", "AcDbPolyline", "90", String(this.#xy.length / 2), "70", closed ? "1" : "0");
    for (let i = 0; i < this.#xy.length; i += 2) this.parts.push(at(this.#xy[i]!, this.#xy[i + 1]!));
    this.#xy = [];
  }
  #entity(type: string, layer: string): void {
    this.parts.push("0", type, "5", hex(this.handle++), "330", hex(handles.modelRecord), "100", "AcDbEntity", "8", layer);
  }
}

/** Four decimals of a millimetre; adding 0 takes the sign off a nought. */
const place = (v: number): string => (Math.round(v * 1e4) / 1e4 + 0).toFixed(4);
const at = (x: number, y: number): string => `10\n${place(x)}\n20\n${place(y)}`;
const hex = (n: number): string => n.toString(16).toUpperCase();

/** Text in ASCII: other letters as the format's own escape, line ends left out, carets (its control mark) spelled out. */
export function dxfText(text: string): string {
  let out = "";
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c < 32) out += " ";
    else if (c === 94) out += "^ ";
    else if (c < 127) out += text[i];
    else out += `\\U+${c.toString(16).toUpperCase().padStart(4, "0")}`;
  }
  return out;
}

/** All pieces once, in mm, y up from the lower left corner of the common sheet; layers cut, mark, fold, text. */
export function patternDxf(sheet: CommonSheet, drawings: readonly PieceDrawing[]): Uint8Array {
  const pen = new DxfPen();
  for (const drawing of drawings) {
    traceCut(drawing, pen);
    traceRest(drawing, pen);
  }
  const groups: Groups = [
    ...header(sheet.widthMm, sheet.heightMm, pen.handle),
    ...tables(),
    ...blocks(),
    0, "SECTION", 2, "ENTITIES",
  ];
  const all = [groups, pen.parts, [0, "ENDSEC"], objects()];
  return utf8(`${all.map((part) => part.join("\n")).join("\n")}\n`);
}
