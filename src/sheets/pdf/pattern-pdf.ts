import type { CommonSheet } from "../arrange.ts";
import type { SheetInput } from "../input.ts";
import { leftStripMm, marginMm, papers } from "../paper.ts";
import { traceCut, traceRest, type PieceDrawing } from "../piece-drawing.ts";
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

/** The pattern on pages: one that tells how to print, check and join, then every page that carries ink. */
export async function patternPdf(input: SheetInput, sheet: CommonSheet, tiling: Tiling, drawings: readonly PieceDrawing[], profile: Profile | undefined): Promise<Uint8Array> {
  const paper = papers[input.paper];
  const heading = headingOf(input);
  const joints = drawJoints(sheet, tiling, drawings);
  const covers = inkCovers({ heading, title: input.title, size: input.size, paper, sheet, tiling, profile });
  const pages = tiling.tiles.length + covers.length;
  const inks = tiling.tiles.map((tile, t) => {
    const ink = new PageInk();
    const window = windowOf(tile, sheet);
    const here = tiling.tilesOfPiece.flatMap((tiles, i) => (tiles.includes(t) ? [sheet.placed[i]!.piece] : []));
    inkFrame(ink, paper, { title: input.title, size: input.size, page: t + 1 + covers.length, pages, shows: piecesInWords(here) });
    inkThumbnail(ink, sheet, tiling, t, covers.length, { x: marginMm, y: paper.heightMm - marginMm - 12, width: leftStripMm - 2, height: thumbnailMm });
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
  return bindPdf(heading, paper, [...covers, ...inks]);
}

/** One line that says whose pattern this is. */
export const headingOf = ({ title, size }: SheetInput): string => [title, size && `size ${size}`].filter(Boolean).join(", ") || "Pattern of one pair";
