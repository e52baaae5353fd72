import type { CommonSheet } from "./arrange.ts";
import { blocks, handles, header, objects, tables, type Groups } from "./dxf-frame.ts";
import { strokeStyles, type Lettering, type SheetPen, type StrokeKind } from "./pen.ts";
import { traceCut, traceRest, type PieceDrawing } from "./piece-drawing.ts";
import { utf8 } from "./text-bytes.ts";

/** Writes entities into the model space; one LWPOLYLINE a stroke, one TEXT a line of words. */
class DxfPen implements SheetPen {
  readonly groups: Groups = [];
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
    this.groups.push(100, "AcDbText", 10, place(xMm), 20, place(yMm), 30, 0, 40, place(heightMm), 1, dxfText(text), 50, place(angleDeg), 100, "AcDbText");
  }
  #put(closed: boolean): void {
    this.#entity("LWPOLYLINE", strokeStyles[this.#kind].layer);
    this.groups.push(100, "AcDbPolyline", 90, this.#xy.length / 2, 70, closed ? 1 : 0);
    for (let i = 0; i < this.#xy.length; i += 2) this.groups.push(10, place(this.#xy[i]!), 20, place(this.#xy[i + 1]!));
    this.#xy = [];
  }
  #entity(type: string, layer: string): void {
    this.groups.push(0, type, 5, (this.handle++).toString(16).toUpperCase(), 330, handles.modelRecord.toString(16).toUpperCase(), 100, "AcDbEntity", 8, layer);
  }
}

/** Five decimals of a millimetre. */
const place = (v: number): string => {
  const s = v.toFixed(5).replace(/\.?0+$/, "");
  return s === "-0" ? "0" : s;
};

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
  const all = [groups, pen.groups, [0, "ENDSEC"], objects()];
  return utf8(`${all.map((part) => part.join("\n")).join("\n")}\n`);
}
