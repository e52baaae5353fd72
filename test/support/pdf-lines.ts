import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** One straight or bent line of a PDF page as pdf.js sees it: points in mm from the lower left corner. */
export interface PdfLine {
  readonly xy: readonly number[];
  readonly closed: boolean;
  readonly stroked: boolean;
}
export interface PdfPageLines {
  /** [x0, y0, x1, y1] in points. */
  readonly view: readonly number[];
  readonly lines: readonly PdfLine[];
  readonly text: readonly string[];
}

const mm = 25.4 / 72;
type Matrix = readonly number[];
const times = (a: Matrix, b: Matrix): Matrix => [
  a[0]! * b[0]! + a[1]! * b[2]!, a[0]! * b[1]! + a[1]! * b[3]!, a[2]! * b[0]! + a[3]! * b[2]!, a[2]! * b[1]! + a[3]! * b[3]!,
  a[4]! * b[0]! + a[5]! * b[2]! + b[4]!, a[4]! * b[1]! + a[5]! * b[3]! + b[5]!,
];

/** Reads every page with pdf.js (Mozilla), an outside reader of the format; only its answers are used, none of our own code. */
export async function pdfLines(bytes: Uint8Array): Promise<readonly PdfPageLines[]> {
  const doc = await getDocument({ data: bytes.slice(), useSystemFonts: true, verbosity: 0 }).promise;
  const pages: PdfPageLines[] = [];
  for (let n = 1; n <= doc.numPages; n++) {
    const page = await doc.getPage(n);
    const list = await page.getOperatorList();
    const text = (await page.getTextContent()).items.flatMap((t) => ("str" in t ? [t.str] : []));
    pages.push({ view: page.view, lines: linesOf(list.fnArray, list.argsArray), text });
  }
  await doc.loadingTask.destroy();
  return pages;
}

// Marks inside pdf.js's own packed paths: 0 move, 1 line, 2 curve (6 numbers), 3 close.
const numbersAfter = [2, 2, 6, 0] as const;

function linesOf(fns: readonly number[], args: readonly unknown[]): readonly PdfLine[] {
  const lines: PdfLine[] = [];
  const saved: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  fns.forEach((fn, i) => {
    if (fn === OPS.save) saved.push(matrix);
    else if (fn === OPS.restore) matrix = saved.pop() ?? matrix;
    else if (fn === OPS.transform) matrix = times(args[i] as number[], matrix);
    else if (fn === OPS.constructPath) {
      const [op, [data]] = args[i] as [number, [ArrayLike<number> | null]];
      if (!data) return;
      const stroked = op === OPS.stroke || op === OPS.closeStroke;
      let xy: number[] = [];
      for (let k = 0; k < data.length; ) {
        const kind = data[k++]!;
        if (kind === 0 && xy.length) {
          lines.push({ xy, closed: false, stroked });
          xy = [];
        }
        const count = numbersAfter[kind as 0 | 1 | 2 | 3];
        if (kind === 3) {
          lines.push({ xy, closed: true, stroked });
          xy = [];
        } else {
          const x = data[k + count - 2]!, y = data[k + count - 1]!;
          xy.push(mm * (matrix[0]! * x + matrix[2]! * y + matrix[4]!), mm * (matrix[1]! * x + matrix[3]! * y + matrix[5]!));
        }
        k += count;
      }
      if (xy.length) lines.push({ xy, closed: op === OPS.closeStroke, stroked });
    }
  });
  return lines;
}
