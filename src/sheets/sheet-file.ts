/** One finished file, proven by reading it back. */
export interface SheetFile {
  readonly name: "pattern.pdf" | "pattern.svg" | "pattern.dxf" | "marks.pdf" | "making.pdf" | "report.json";
  readonly mime: string;
  readonly bytes: Uint8Array;
}
