import type { Piece } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";
import type { CommonSheet } from "../arrange.ts";
import { brokenIntoLines, shortenedTo, textWidth } from "../lettering.ts";
import { leftStripMm, marginMm, topStripMm, type Paper } from "../paper.ts";
import { strokeStyles, type StrokeKind } from "../pen.ts";
import { edgeNote } from "../piece-words.ts";
import { partOf, shoePicture, type Profile } from "../shoe-picture.ts";
import type { Tiling } from "../tiling.ts";
import { PageInk } from "./page-ink.ts";
import { inkFrame } from "./page-frame.ts";
import { inkMap } from "./page-map.ts";

interface Cover {
  readonly heading: string;
  readonly title: string;
  readonly size?: string;
  readonly paper: Paper;
  readonly sheet: CommonSheet;
  readonly tiling: Tiling;
  /** Without one no little pictures are drawn. */
  readonly profile?: Profile | undefined;
}

/** Pieces of one name, both sides, in one row of the list. */
interface Row {
  readonly piece: Piece;
  readonly both: readonly { readonly piece: Piece; readonly tiles: readonly number[] }[];
}

const steps = [
  "Print every page at 100 % (actual size), not 'fit to page'. Lay a ruler on both bars of each page: they must measure 100 mm, at most half a millimetre off. If they do not, do not cut; set the printer right first.",
  "Join only pages that have diamonds. Cut a page along its dashed line, left or top, and lay it on its neighbour so that the halves of each diamond with the same number meet. A step or a gap in a diamond is the error: shift until there is none, then tape.",
  "Glue to card and cut on the full outer line, on a mat, with the knife moving away from your fingers. Upper and lining are seen from outside: the upper shows its grain, the lining its flesh side, for its grain lies against the foot. The bottom is seen from above. Left is the exact mirror of right.",
];

/** Height of the instructions above the list, of the legend below it, and the least of a row, mm. */
const howToMm = 84;
const legendMm = 13;
const leastRowMm = 15;
const rowsIn = (top: number): number => Math.max(1, Math.floor((top - legendMm - marginMm) / leastRowMm));

/** The first page or pages: how to print, check and join, and the list of pieces. */
export function inkCovers(cover: Cover): readonly PageInk[] {
  const rows = rowsOf(cover);
  const { paper } = cover;
  const top = paper.heightMm - marginMm - topStripMm;
  const listTop = top - howToMm;
  const chunks = [rows.slice(0, rowsIn(listTop))];
  for (let i = chunks[0]!.length; i < rows.length; i += rowsIn(top - 4)) chunks.push(rows.slice(i, i + rowsIn(top - 4)));
  const pages = cover.tiling.tiles.length + chunks.length;
  return chunks.map((chunk, i) => {
    const ink = new PageInk();
    if (i === 0) inkHowTo(ink, cover, chunks.length, top - 6);
    inkFrame(ink, paper, { title: cover.title, size: cover.size ?? "", page: i + 1, pages, shows: "how to print and join" });
    const y = i === 0 ? listTop : top - 4;
    const height = Math.min(27, (y - legendMm - marginMm) / chunk.length);
    chunk.forEach((row, k) => inkRow(ink, cover, row, chunks.length, y - k * height, height));
    inkLegend(ink);
    return ink;
  });
}

/** Steps, thumbnail and sample marks. */
function inkHowTo(ink: PageInk, { heading, title, size = "", paper, sheet, tiling }: Cover, covers: number, top: number): void {
  const left = marginMm + leftStripMm;
  const width = paper.widthMm - marginMm - left;
  const thumb = 46;
  const sizeWords = size && `size ${size}`;
  // The size stands alone in the line below where both do not fit in one.
  const oneLine = textWidth(heading, 5, true) <= width - thumb - 4;
  ink.text(oneLine ? heading : shortenedTo(width - thumb - 4, title, 5, true), left, top - (oneLine ? 5 : 4), 5, { bold: true });
  if (!oneLine && sizeWords) ink.text(sizeWords, left, top - 9.3, 3.5, { bold: true });
  let y = top - 15;
  steps.forEach((step, i) => {
    ink.text(String(i + 1), left, y, 3.5, { bold: true });
    for (const line of brokenIntoLines(step, 2.5, width - thumb - 12)) {
      ink.text(line, left + 6, y, 2.5);
      y -= 4.4;
    }
    y -= 1.6;
  });
  inkMap(ink, sheet, tiling, covers, { x: paper.widthMm - marginMm - thumb, y: top, width: thumb, height: 53 });
  inkSampleMark(ink, paper.widthMm - marginMm - thumb + 8, top - 64, 0, "right");
  inkSampleMark(ink, paper.widthMm - marginMm - thumb + 28, top - 64, 1, "wrong");
}

/** A joined diamond, its halves `shift` mm out of step. */
function inkSampleMark(ink: PageInk, x: number, y: number, shift: number, word: string): void {
  ink.style(0.25);
  ink.stroke([x, y + 4, x - 4, y, x, y - 4]);
  ink.line(x - 4, y, x, y);
  ink.stroke([x + shift * 0.4, y + 4 + shift, x + 4 + shift * 0.4, y + shift, x + shift * 0.4, y - 4 + shift]);
  ink.line(x + shift * 0.4, y + shift, x + 4 + shift * 0.4, y + shift);
  ink.style(0.18);
  ink.line(x, y - 7, x, y + 7);
  ink.text(word, x + 6.5, y - 1.2, 2.5);
}

function rowsOf({ sheet, tiling }: Cover): readonly Row[] {
  const rows = new Map<string, { piece: Piece; both: { piece: Piece; tiles: readonly number[] }[] }>();
  sheet.placed.forEach(({ piece }, i) => {
    const key = `${piece.name}|${piece.material}|${piece.net}`;
    const row = rows.get(key) ?? { piece, both: [] };
    row.both.push({ piece, tiles: tiling.tilesOfPiece[i]! });
    rows.set(key, row);
  });
  return [...rows.values()];
}

function inkRow(ink: PageInk, { paper, profile, title }: Cover, { piece, both }: Row, covers: number, top: number, height: number): void {
  const left = marginMm + leftStripMm;
  ink.style(0.18);
  ink.line(left, top, paper.widthMm - marginMm, top);
  inkSmall(ink, piece, left, top - height + 1, 34, height - 2);
  if (profile) inkPicture(ink, profile, piece, left + 38, top - height + 1.5, height - 3);
  const x = left + 78;
  const name = piece.name.charAt(0).toUpperCase() + piece.name.slice(1);
  const width = paper.widthMm - marginMm - x;
  const note = brokenIntoLines(`${piece.material}: ${edgeNote(piece, title)}`, 2.5, width);
  const counts = both.map(({ piece: p, tiles }) => `cut ${p.perPair} ${p.side} (${pagesInWords(tiles.map((t) => t + 1 + covers))})`);
  const lines = [...note.slice(0, 2), shortenedTo(width, counts.join(", "), 2.5)];
  const step = Math.min(5.2, (height - 2) / (lines.length + 1.2));
  ink.text(name, x, top - 1 - step, Math.min(4, step), { bold: true });
  lines.forEach((line, i) => ink.text(line, x, top - 1 - (i + 2) * step, 2.5));
}

/** Where on the shoe the piece lies, its lower left corner at (x, y). */
function inkPicture(ink: PageInk, profile: Profile, piece: Piece, x: number, y: number, height: number): void {
  const pictureMm = Math.min(36, (height * profile.widthMm) / profile.heightMm);
  const picture = shoePicture(profile, partOf(piece.name), true, [x, y], pictureMm);
  ink.style(0.18);
  for (const xy of picture.thin) ink.stroke(xy);
  ink.style(0.5);
  for (const xy of picture.bold) ink.stroke(xy);
}

/** The outline of a piece within a box, longer side along. */
function inkSmall(ink: PageInk, piece: Piece, x: number, y: number, width: number, height: number): void {
  const box = bounds(piece.outline);
  const scale = Math.min(width / (box.maxX - box.minX), height / (box.maxY - box.minY));
  ink.style(0.25);
  ink.stroke(piece.outline.xy.map((v, i) => (i % 2 === 0 ? x + scale * (v - box.minX) : y + scale * (v - box.minY))), true);
}

/** "page 3", "pages 2 to 5", "pages 2, 4 and 7 to 9". */
function pagesInWords(pages: readonly number[]): string {
  const runs: string[] = [];
  for (let i = 0; i < pages.length; ) {
    let j = i;
    while (j + 1 < pages.length && pages[j + 1] === pages[j]! + 1) j++;
    runs.push(j > i + 1 ? `${pages[i]} to ${pages[j]}` : pages.slice(i, j + 1).join(", "));
    i = j + 1;
  }
  return `${pages.length === 1 ? "page" : "pages"} ${runs.join(", ")}`;
}

const legend: readonly (readonly [StrokeKind, string])[] = [
  ["cut", "cut: full"],
  ["net", "net line: dashes"],
  ["stitch", "stitch: dots"],
  ["fold", "fold: dash, two dots"],
  ["centre", "centre: dash, dot"],
  ["joint", "joint line: thin"],
];

/** Two rows of three, each sample long enough to show its dashes. */
function inkLegend(ink: PageInk): void {
  const left = marginMm + leftStripMm;
  ink.text("Lines:", left, marginMm + 6.8, 2.5, { bold: true });
  legend.forEach(([kind, words], i) => {
    const x = left + 13 + 54 * (i % 3), y = marginMm + (i < 3 ? 8 : 3);
    ink.style(strokeStyles[kind].widthMm, strokeStyles[kind].dashMm);
    ink.line(x, y, x + 16, y);
    ink.text(words, x + 17, y - 1.2, 2.5);
  });
}
