import { layers, type Layer } from "./pen.ts";

/** Lines of a DXF: a group code and its value, two lines each. */
export type Groups = (string | number)[];

/** Fixed handles of the frame; entities count on from `firstEntity`. Hexadecimal when written. */
export const handles = {
  modelRecord: 0x1f, paperRecord: 0x1b, firstEntity: 0x100,
} as const;
const hex = (n: number): string => n.toString(16).toUpperCase();

/** Colours by the format's own index: 7 is black or white by ground, 8 grey. The file's reader may recolour by layer. */
const colours = { cut: 7, mark: 5, fold: 3, text: 8 } as const;

/** Units and version: R2000 (AC1015), drawing unit millimetre ($INSUNITS 4), metric ($MEASUREMENT 1). */
export function header(widthMm: number, heightMm: number, nextHandle: number): Groups {
  return [
    0, "SECTION", 2, "HEADER",
    9, "$ACADVER", 1, "AC1015",
    9, "$DWGCODEPAGE", 3, "ANSI_1252",
    9, "$HANDSEED", 5, hex(nextHandle),
    9, "$INSUNITS", 70, 4,
    9, "$MEASUREMENT", 70, 1,
    9, "$LUNITS", 70, 2,
    9, "$EXTMIN", 10, 0, 20, 0, 30, 0,
    9, "$EXTMAX", 10, widthMm, 20, heightMm, 30, 0,
    0, "ENDSEC",
    0, "SECTION", 2, "CLASSES", 0, "ENDSEC",
  ];
}

/** The tables of the file, with the layers that it holds; a layer has the same handle in every file. */
export function tables(chosen: readonly Layer[]): Groups {
  const table = (name: string, handle: number, entries: readonly Groups[]): Groups =>
    [0, "TABLE", 2, name, 5, hex(handle), 330, 0, 100, "AcDbSymbolTable", 70, entries.length, ...entries.flat(), 0, "ENDTAB"];
  const record = (type: string, handle: number, owner: number, subclass: string, name: string, rest: Groups): Groups =>
    [0, type, 5, hex(handle), 330, hex(owner), 100, "AcDbSymbolTableRecord", 100, subclass, 2, name, ...rest];
  const line = (handle: number, name: string, words: string, pattern: readonly number[]): Groups =>
    record("LTYPE", handle, 0x5, "AcDbLinetypeTableRecord", name, [
      70, 0, 3, words, 72, 65, 73, pattern.length, 40, pattern.reduce((sum, v) => sum + Math.abs(v), 0),
      ...pattern.flatMap((v) => [49, v, 74, 0]),
    ]);
  const layer = (handle: number, name: string, colour: number, linetype: string): Groups =>
    record("LAYER", handle, 0x2, "AcDbLayerTableRecord", name, [70, 0, 62, colour, 6, linetype, 370, 35, 390, "F"]);
  const block = (handle: number, name: string, layout: string): Groups => record("BLOCK_RECORD", handle, 0x1, "AcDbBlockTableRecord", name, [340, layout]);
  return [
    0, "SECTION", 2, "TABLES",
    ...table("VPORT", 0x8, []),
    ...table("LTYPE", 0x5, [
      line(0x14, "ByBlock", "", []),
      line(0x15, "ByLayer", "", []),
      line(0x16, "Continuous", "full line", []),
      line(0x17, "dashed", "dashed", [2, -1.2]),
    ]),
    ...table("LAYER", 0x2, [layer(0x10, "0", 7, "Continuous"), ...chosen.map((name) => layer(0x30 + layers.indexOf(name), name, colours[name], name === "fold" ? "dashed" : "Continuous"))]),
    ...table("STYLE", 0x3, [record("STYLE", 0x11, 0x3, "AcDbTextStyleTableRecord", "Standard", [70, 0, 40, 0, 41, 1, 50, 0, 71, 0, 42, 2.5, 3, "txt", 4, ""])]),
    ...table("VIEW", 0x6, []),
    ...table("UCS", 0x7, []),
    ...table("APPID", 0x9, [record("APPID", 0x12, 0x9, "AcDbRegAppTableRecord", "ACAD", [70, 0])]),
    0, "TABLE", 2, "DIMSTYLE", 5, "A", 330, 0, 100, "AcDbSymbolTable", 70, 0, 100, "AcDbDimStyleTable", 0, "ENDTAB",
    ...table("BLOCK_RECORD", 0x1, [block(handles.modelRecord, "*Model_Space", "22"), block(handles.paperRecord, "*Paper_Space", "1E")]),
    0, "ENDSEC",
  ];
}

export function blocks(): Groups {
  const block = (record: number, begin: string, end: string, name: string, onPaper: boolean): Groups => {
    const space: Groups = onPaper ? [67, 1] : [];
    return [
      0, "BLOCK", 5, begin, 330, hex(record), 100, "AcDbEntity", ...space, 8, 0, 100, "AcDbBlockBegin", 2, name, 70, 0, 10, 0, 20, 0, 30, 0, 3, name, 1, "",
      0, "ENDBLK", 5, end, 330, hex(record), 100, "AcDbEntity", ...space, 8, 0, 100, "AcDbBlockEnd",
    ];
  };
  return [0, "SECTION", 2, "BLOCKS", ...block(handles.modelRecord, "20", "21", "*Model_Space", false), ...block(handles.paperRecord, "1C", "1D", "*Paper_Space", true), 0, "ENDSEC"];
}

/** The dictionaries and the two layouts that the format wants in every file. */
export function objects(): Groups {
  const dictionary = (handle: string, owner: string | number, entries: readonly (readonly [string, string])[]): Groups =>
    [0, "DICTIONARY", 5, handle, 330, owner, 100, "AcDbDictionary", 281, 1, ...entries.flatMap(([name, to]) => [3, name, 350, to])];
  const layout = (handle: string, name: string, order: number, record: number): Groups => [
    0, "LAYOUT", 5, handle, 330, "1A", 100, "AcDbPlotSettings", 1, "", 2, "none_device", 4, "", 6, "",
    40, 0, 41, 0, 42, 0, 43, 0, 44, 0, 45, 0, 46, 0, 47, 0, 48, 0, 49, 0, 140, 0, 141, 0, 142, 1, 143, 1,
    70, order === 0 ? 1712 : 688, 72, 1, 73, 0, 74, 5, 7, "", 75, 16, 147, 1, 148, 0, 149, 0,
    100, "AcDbLayout", 1, name, 70, 1, 71, order, 10, 0, 20, 0, 11, 420, 21, 297, 12, 0, 22, 0, 32, 0, 14, 0, 24, 0, 34, 0, 15, 0, 25, 0, 35, 0,
    146, 0, 13, 0, 23, 0, 33, 0, 16, 1, 26, 0, 36, 0, 17, 0, 27, 1, 37, 0, 76, 0, 330, hex(record),
  ];
  return [
    0, "SECTION", 2, "OBJECTS",
    ...dictionary("C", 0, [["ACAD_GROUP", "D"], ["ACAD_LAYOUT", "1A"], ["ACAD_PLOTSTYLENAME", "E"]]),
    ...dictionary("D", "C", []),
    ...dictionary("1A", "C", [["Layout1", "1E"], ["Model", "22"]]),
    0, "ACDBDICTIONARYWDFLT", 5, "E", 330, "C", 100, "AcDbDictionary", 281, 1, 3, "Normal", 350, "F", 100, "AcDbDictionaryWithDefault", 340, "F",
    0, "ACDBPLACEHOLDER", 5, "F", 330, "E",
    ...layout("1E", "Layout1", 1, handles.paperRecord),
    ...layout("22", "Model", 0, handles.modelRecord),
    0, "ENDSEC", 0, "EOF",
  ];
}
