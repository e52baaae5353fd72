import { PDFDict, PDFDocument, PDFName, PDFString, PrintScaling } from "@cantoo/pdf-lib";
import { facesOf, plainLetters } from "../lettering.ts";
import { pointsPerMm, type PageInk } from "./page-ink.ts";

/** Every sheet is dated the same, so that the same job gives the same bytes. */
const fixedDate = PDFString.of("D:20000101000000Z");

/** Binds finished pages to a PDF. Fonts are the standard ones, not embedded. Deterministic. */
export async function bindPdf(title: string, pages: readonly PageInk[]): Promise<Uint8Array> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  doc.setTitle(plainLetters(title));
  doc.setCreator("Lastwise");
  doc.setProducer("Lastwise");
  const info = doc.context.lookup(doc.context.trailerInfo.Info, PDFDict);
  for (const when of ["CreationDate", "ModDate"]) info.set(PDFName.of(when), fixedDate);
  // Readers that obey it offer true size instead of fitting to the page.
  const preferences = doc.catalog.getOrCreateViewerPreferences();
  preferences.setPrintScaling(PrintScaling.None);
  const fonts = PDFDict.withContext(doc.context);
  fonts.set(PDFName.of("Plain"), (await doc.embedFont(facesOf.plain)).ref);
  fonts.set(PDFName.of("Bold"), (await doc.embedFont(facesOf.bold)).ref);
  for (const ink of pages) {
    const page = doc.addPage([ink.page.fileWidthMm * pointsPerMm, ink.page.fileHeightMm * pointsPerMm]);
    const resources = PDFDict.withContext(doc.context);
    resources.set(PDFName.of("Font"), fonts);
    page.node.set(PDFName.of("Resources"), resources);
    page.node.set(PDFName.of("Contents"), doc.context.register(doc.context.flateStream(ink.content())));
  }
  return doc.save({ addDefaultPage: false, updateFieldAppearances: false });
}
