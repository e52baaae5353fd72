import type { CommonSheet } from "../arrange.ts";
import { correctedWords } from "../corrected.ts";
import type { SheetInput } from "../input.ts";
import { leftStripMm, marginMm } from "../paper.ts";
import { traceCut, traceRest, type PieceDrawing } from "../piece-drawing.ts";
import { setOf, setWords } from "../print-plan.ts";
import { pageSize, type PageSize, type PrintPaper } from "../print-paper.ts";
import type { Profile } from "../shoe-picture.ts";
import type { Tiling } from "../tiling.ts";
import { inkCovers } from "./cover.ts";
import { bindPdf } from "./document.ts";
import { drawJoints, inkJoint } from "./joints.ts";
import { inkFrame, piecesInWords, thumbnailMm, windowOf } from "./page-frame.ts";
import { PageInk } from "./page-ink.ts";
import { inkThumbnail } from "./page-map.ts";
import { PdfPen } from "./pdf-pen.ts";

/** The name by which a piece's cutting line is found again in the file. */
export const cutName = (piece: number): string => `cut-${piece}`;

/** A finished file and the sizes of its pages, by which it is read back. */
export interface BoundPages {
  readonly bytes: Uint8Array;
  readonly pages: readonly PageSize[];
}

/** The pattern on pages: first how to print, check and join and the index of the pieces, then every page that carries ink. */
export async function patternPdf(input: SheetInput, paper: PrintPaper, sheet: CommonSheet, tiling: Tiling, drawings: readonly PieceDrawing[], profile: Profile | undefined): Promise<BoundPages> {
  const heading = headingOf(input);
  const joints = drawJoints(sheet, tiling, drawings);
  const covers = inkCovers({ heading, title: input.title, size: input.size, paper, sheet, tiling, profile, strips: input.strips, ...(input.from === "last" && input.corrected && { corrected: `${correctedWords(input.corrected)} Cards are left as they lie on the last.` }) });
  const pages = tiling.tiles.length + covers.length;
  const titles = pageTitles(sheet, tiling);
  const inks = tiling.tiles.map((tile, t) => {
    const ink = new PageInk(pageSize(paper, tile.heightMm));
    const window = windowOf(tile, sheet);
    inkFrame(ink, { title: input.title, size: input.size, page: t + 1 + covers.length, pages, ...titles[t]! });
    inkThumbnail(ink, sheet, tiling, t, covers.length, { x: marginMm, y: ink.page.heightMm - marginMm - 12, width: leftStripMm - 2, height: thumbnailMm });
    ink.clipped(window.leftOnPaperMm, window.bottomOnPaperMm, window.widthMm, window.heightMm, () => {
      const pen = new PdfPen(ink, window);
      drawings.forEach((drawing, i) => {
        if (tiling.tiles[tiling.tilesOfPiece[i]![0]!]!.group !== tile.group) return;
        ink.named(cutName(i), () => traceCut(drawing, pen));
        traceRest(drawing, pen);
      });
      for (const drawn of joints) {
        if (drawn.joint.over !== t && drawn.joint.under !== t) continue;
        inkJoint(ink, drawn, window, drawn.joint.over === t ? "over" : "under", drawn.joint.under + 1 + covers.length, drawn.joint.over + 1 + covers.length);
      }
    });
    return ink;
  });
  const all = [...covers, ...inks];
  return { bytes: await bindPdf(heading, all), pages: all.map((ink) => ink.page) };
}

/** For each page its set and its pieces in words; a piece that has pages to itself says which of them this is. */
export function pageTitles(sheet: CommonSheet, tiling: Tiling): readonly { readonly set: string; readonly shows: string }[] {
  const piecesOn = tiling.tiles.map((_, t) => tiling.tilesOfPiece.flatMap((tiles, i) => (tiles.includes(t) ? [i] : [])));
  return tiling.tiles.map((_, t) => {
    const here = piecesOn[t]!;
    const pieces = here.map((i) => sheet.placed[i]!.piece);
    const own = tiling.tilesOfPiece[here[0]!]!;
    const alone = own.length > 1 && own.every((k) => piecesOn[k]!.length === 1);
    return { set: setWords[setOf(pieces[0]!)], shows: piecesInWords(pieces) + (alone ? `, sheet ${own.indexOf(t) + 1} of ${own.length}` : "") };
  });
}

/** One line that says whose pattern this is. */
export const headingOf = ({ title, size }: SheetInput): string => [title, size && `size ${size}`].filter(Boolean).join(", ") || "Pattern of one pair";
