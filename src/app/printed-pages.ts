import { decodePDFRawStream, PDFDocument, PDFRawStream } from "@cantoo/pdf-lib";
import type { PrintedPage } from "./state/page-drawing.ts";

const mmPerPoint = 25.4 / 72;

/** The pages of a finished PDF, out of its own bytes: what is looked at is what is printed. */
export async function printedPages(bytes: Uint8Array): Promise<readonly PrintedPage[]> {
  const doc = await PDFDocument.load(bytes, { updateMetadata: false });
  return doc.getPages().map((page): PrintedPage => {
    const stream = page.node.Contents();
    const { width, height } = page.getMediaBox();
    return { widthMm: width * mmPerPoint, heightMm: height * mmPerPoint, content: stream instanceof PDFRawStream ? new TextDecoder("latin1").decode(decodePDFRawStream(stream).decode()) : "" };
  });
}
