import type { CommonSheet } from "../arrange.ts";
import { textWidth } from "../lettering.ts";
import type { Tiling } from "../tiling.ts";
import type { PageInk } from "./page-ink.ts";

/** Where a map may stand: upper left corner and size, mm. */
export interface MapRoom {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Pages that are joined to one, and the box round them on the sheet, mm. */
interface Patch {
  readonly tiles: readonly number[];
  readonly x0: number;
  readonly y1: number;
  readonly width: number;
  readonly height: number;
}
/** A patch on the map: its upper left corner, measured right and down from the map's. */
interface Spot {
  readonly patch: Patch;
  readonly right: number;
  readonly down: number;
}

const gapMm = 2;
/** Widths of a page on the map that are tried, mm. */
const pageWidthsMm = [9, 8, 7, 6.5, 6, 5.5, 5, 4.5, 4, 3.5, 3, 2.5, 2, 1.5, 1];

/** All pages at a small scale, patch by patch as they are joined, largest scale that fits. */
export function inkMap(ink: PageInk, sheet: CommonSheet, tiling: Tiling, covers: number, room: MapRoom): void {
  const groups = [...new Set(tiling.tiles.map((t) => t.group))];
  inkPatches(ink, sheet, tiling, groups.map((g) => patchOf(sheet, tiling, g)), undefined, covers, room);
}

/** The pages that are joined with one page, this one bold. */
export function inkThumbnail(ink: PageInk, sheet: CommonSheet, tiling: Tiling, page: number, covers: number, room: MapRoom): void {
  inkPatches(ink, sheet, tiling, [patchOf(sheet, tiling, tiling.tiles[page]!.group)], page, covers, room);
}

function patchOf({ grid: { windowWidthMm: w } }: CommonSheet, tiling: Tiling, group: number): Patch {
  const tiles = tiling.tiles.flatMap((t, i) => (t.group === group ? [i] : []));
  const xs = tiles.map((i) => tiling.tiles[i]!.xMm), lows = tiles.map((i) => tiling.tiles[i]!.yMm);
  const x0 = Math.min(...xs), y1 = Math.max(...tiles.map((i) => tiling.tiles[i]!.yMm + tiling.tiles[i]!.heightMm));
  return { tiles, x0, y1, width: Math.max(...xs) + w - x0, height: y1 - Math.min(...lows) };
}

function inkPatches(ink: PageInk, sheet: CommonSheet, tiling: Tiling, patches: readonly Patch[], page: number | undefined, covers: number, room: MapRoom): void {
  const { windowWidthMm: w } = sheet.grid;
  let scale = 0;
  let spots: readonly Spot[] | undefined;
  for (const mm of pageWidthsMm) {
    scale = mm / w;
    spots = flow(patches, scale, room);
    if (spots) break;
  }
  // Where a page is too small for figures that can be read, none.
  const widest = (mm: number) => Math.max(...patches.flatMap((p) => p.tiles.map((i) => textWidth(String(i + 1 + covers), mm, true))));
  const figures = [3.5, 2.5].find((mm) => widest(mm) < 0.8 * scale * w);
  for (const { patch, right, down } of spots ?? []) {
    const left = room.x + right - scale * patch.x0, low = room.y - down - scale * patch.y1;
    const outlines = sheet.placed.flatMap(({ outline }, p) => (patch.tiles.some((i) => tiling.tilesOfPiece[p]!.includes(i)) ? [reduced(outline, left, low, scale)] : []));
    for (const i of patch.tiles) {
      const t = tiling.tiles[i]!;
      const [x, y, width, height] = [left + scale * t.xMm, low + scale * t.yMm, scale * w, scale * t.heightMm];
      const label = figures ? String(i + 1 + covers) : "";
      const labelWide = figures ? textWidth(label, figures, true) + 1.2 : 0;
      // No line through a figure: the pieces are drawn beside it and above it.
      const draw = () => outlines.forEach((xy) => ink.stroke(xy, true));
      const band = figures ? Math.min(height, figures + 1.4) : 0;
      for (const [high, wide, from] of [[height - band, width, band], [band, width - labelWide, 0]] as const) {
        if (high <= 0 || wide <= 0) continue;
        ink.clipped(x, y + from, wide, high, () => {
          ink.style(0.18);
          draw();
        });
      }
      ink.style(i === page ? 0.5 : 0.18);
      ink.box(x, y, width, height);
      if (figures) ink.text(label, x + width - labelWide + 0.6, y + 0.8, figures, { bold: true });
    }
  }
}

/** Patches in rows from left to right; none where they do not fit. */
function flow(patches: readonly Patch[], scale: number, room: MapRoom): readonly Spot[] | undefined {
  const spots: Spot[] = [];
  let right = 0, down = 0, rowHigh = 0;
  for (const patch of patches) {
    const width = scale * patch.width, height = scale * patch.height;
    if (right > 0 && right + width > room.width) {
      down += rowHigh + gapMm;
      right = rowHigh = 0;
    }
    if (width > room.width || down + height > room.height) return undefined;
    spots.push({ patch, right, down });
    right += width + gapMm;
    rowHigh = Math.max(rowHigh, height);
  }
  return spots;
}

/** About sixty points of an outline, put on the map. */
function reduced(xy: Float64Array, left: number, low: number, scale: number): readonly number[] {
  const every = 2 * Math.max(1, Math.floor(xy.length / 120));
  const out: number[] = [];
  for (let i = 0; i < xy.length; i += every) out.push(left + scale * xy[i]!, low + scale * xy[i + 1]!);
  return out;
}
