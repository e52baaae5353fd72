import type { Piece } from "#pieces/piece.ts";
import type { CommonSheet } from "./arrange.ts";
import { setOf, type PrintSet } from "./print-plan.ts";
import type { Tiling } from "./tiling.ts";

/** Pieces of one name and material, both sides, as one entry of the index. */
export interface IndexEntry {
  /** The one that is pictured. */
  readonly piece: Piece;
  readonly set: PrintSet;
  /** Each with the tiles it lies on, as indices. */
  readonly sides: readonly { readonly piece: Piece; readonly tiles: readonly number[] }[];
}

/** Every piece of the sheet in exactly one entry: cards first, then what is cut, in the order of the pieces. */
export function indexEntries({ placed }: CommonSheet, tiling: Tiling): readonly IndexEntry[] {
  const entries = new Map<string, { piece: Piece; set: PrintSet; sides: { piece: Piece; tiles: readonly number[] }[] }>();
  placed.forEach(({ piece }, i) => {
    const key = JSON.stringify([piece.name, piece.material, piece.net]);
    const entry = entries.get(key) ?? { piece, set: setOf(piece), sides: [] };
    entry.sides.push({ piece, tiles: tiling.tilesOfPiece[i]! });
    entries.set(key, entry);
  });
  return [...entries.values()].sort((a, b) => Number(a.set === "cutting") - Number(b.set === "cutting"));
}

/** "cut 1 right on page 4, 1 left on pages 5, 6", by printed page numbers. */
export function countsInWords({ sides }: IndexEntry, covers: number): string {
  return `cut ${sides.map(({ piece, tiles }) => `${piece.perPair} ${piece.side} on ${pagesInWords(tiles.map((t) => t + 1 + covers))}`).join("; ")}`;
}

/** "1.83 dm²". */
export const areaInWords = ({ areaMm2 }: Piece): string => `${(areaMm2 / 1e4).toFixed(2)} dm²`;

/** "page 3", "pages 2 to 5", "pages 2, 4 and 7 to 9". */
export function pagesInWords(pages: readonly number[]): string {
  const runs: string[] = [];
  for (let i = 0; i < pages.length; ) {
    let j = i;
    while (j + 1 < pages.length && pages[j + 1] === pages[j]! + 1) j++;
    runs.push(j > i + 1 ? `${pages[i]} to ${pages[j]}` : pages.slice(i, j + 1).join(", "));
    i = j + 1;
  }
  return `${pages.length === 1 ? "page" : "pages"} ${runs.join(", ")}`;
}
