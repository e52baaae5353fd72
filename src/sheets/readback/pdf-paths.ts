import { decodePDFRawStream, PDFDocument, PDFRawStream } from "@cantoo/pdf-lib";
import { pushCubic } from "#plane/flatten-curve.ts";
import { byteText } from "../text-bytes.ts";
import { flatMm } from "./flat.ts";
import { times, type PdfMatrix } from "./pdf-matrix.ts";

/** A stroked path found in a file, its curves as fine points, mm, x0 y0 …, y up from the lower left corner of its page. */
export interface FoundPath {
  /** Innermost name under which it was drawn, if any. */
  readonly name: string;
  readonly xy: Float64Array;
  readonly closed: boolean;
}
export interface FoundPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly paths: readonly FoundPath[];
}

const mmPerPoint = 25.4 / 72;

/** Every stroked path of every page, from the bytes alone. */
export async function pdfPages(bytes: Uint8Array): Promise<readonly FoundPage[]> {
  const doc = await PDFDocument.load(bytes, { updateMetadata: false });
  return doc.getPages().map((page): FoundPage => {
    const stream = page.node.Contents();
    const text = stream instanceof PDFRawStream ? byteText(decodePDFRawStream(stream).decode()) : "";
    const { width, height } = page.getMediaBox();
    return { widthMm: width * mmPerPoint, heightMm: height * mmPerPoint, paths: strokesIn(text) };
  });
}

/** Runs the few operators of a content stream that move lines about. */
function strokesIn(content: string): readonly FoundPath[] {
  const found: FoundPath[] = [];
  const saved: PdfMatrix[] = [];
  const names: string[] = [];
  let matrix: PdfMatrix = [mmPerPoint, 0, 0, mmPerPoint, 0, 0];
  let operands: string[] = [];
  let path: { xy: number[]; closed: boolean }[] = [];
  const number = (i: number): number => Number(operands[i]);
  const point = (x: number, y: number): readonly [number, number] => [matrix[0] * x + matrix[2] * y + matrix[4], matrix[1] * x + matrix[3] * y + matrix[5]];
  const current = () => path[path.length - 1];
  const stroke = (close: boolean) => {
    if (close && current()) current()!.closed = true;
    for (const p of path) found.push({ name: names[names.length - 1] ?? "", xy: Float64Array.from(p.xy), closed: p.closed });
    path = [];
  };
  for (const [token] of content.matchAll(/\[[^\]]*\]|<[^>]*>|\/[^\s/[\]<>()]+|[^\s/[\]<>()]+/g)) {
    if (/^[-+.\d[</]/.test(token)) {
      operands.push(token);
      continue;
    }
    switch (token) {
      case "q": saved.push(matrix); break;
      case "Q": matrix = saved.pop() ?? matrix; break;
      case "cm": matrix = times([number(0), number(1), number(2), number(3), number(4), number(5)], matrix); break;
      case "m": path.push({ xy: [...point(number(0), number(1))], closed: false }); break;
      case "l": current()?.xy.push(...point(number(0), number(1))); break;
      case "c": {
        const xy = current()?.xy;
        if (xy) pushCubic(xy, xy[xy.length - 2]!, xy[xy.length - 1]!, ...point(number(0), number(1)), ...point(number(2), number(3)), ...point(number(4), number(5)), flatMm);
        break;
      }
      case "h": if (current()) current()!.closed = true; break;
      case "re": {
        const [x, y, w, h] = [number(0), number(1), number(2), number(3)];
        path.push({ xy: [point(x, y), point(x + w, y), point(x + w, y + h), point(x, y + h)].flat(), closed: true });
        break;
      }
      case "S": stroke(false); break;
      case "s": stroke(true); break;
      case "n": case "f": path = []; break;
      case "BMC": names.push((operands[0] ?? "").slice(1)); break;
      case "EMC": names.pop(); break;
    }
    operands = [];
  }
  return found;
}
