import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { cardHalves, cardPapers, cardSheet, markerMm, squareMm, type CardHalf, type CardMarker, type CardPaper, type CardSheet } from "./card.ts";
import { findMarkers, type SeenMarker } from "./find-markers.ts";
import type { Grey } from "./grey.ts";
import { homographyOf, through } from "./homography.ts";
import type { Picture } from "./picture.ts";
import { refineCorner } from "./refine-corner.ts";

/** A corner of the squares that was seen: where it is printed (mm, sheets joined without error) and where it is seen (px). */
export interface SeenCorner {
  readonly half: CardHalf;
  readonly xMm: number;
  readonly yMm: number;
  readonly xPx: number;
  readonly yPx: number;
}

export interface SeenCard {
  readonly paper: CardPaper;
  readonly corners: readonly SeenCorner[];
}

/** Share of a sheet's markers that must be read: hands and shadows may hide some. */
const enoughMarkers = 0.5;
/** Share of the corners in each quarter of the card: without them the fit would guess there. */
const enoughCorners = 0.4;

/**
 * Finds the card's corners to a few hundredths of a pixel.
 * @throws Refusal when there is no card, or a part of it is missing
 */
export function seeCard(picture: Picture, grey: Grey): SeenCard {
  const markers = new Map(findMarkers(picture).map((m) => [m.id, m]));
  const counted = cardPapers.map((paper) => ({ paper, sheets: cardHalves.map((half) => cardSheet(paper, half)) }));
  const seenOn = (sheet: CardSheet): number => sheet.markers.filter(({ id }) => markers.has(id)).length;
  const best = counted.reduce((a, b) => (b.sheets.reduce((n, s) => n + seenOn(s), 0) > a.sheets.reduce((n, s) => n + seenOn(s), 0) ? b : a));
  const shares = best.sheets.map((sheet) => seenOn(sheet) / sheet.markers.length);
  const seen = best.sheets.reduce((n, s) => n + seenOn(s), 0);
  if (seen < 6) throw new Refusal(finding("photo-no-card", { markers: seen }));
  shares.forEach((share, i) => {
    if (share < enoughMarkers) throw new Refusal(finding("photo-half-card", { missing: best.sheets[i]!.half, seen, of: best.sheets.reduce((n, s) => n + s.markers.length, 0) }));
  });
  const corners = best.sheets.flatMap((sheet) => cornersOf(sheet, markers, grey));
  for (const sheet of best.sheets) judgeQuarters(sheet, corners, seen);
  return { paper: best.paper, corners };
}

function judgeQuarters(sheet: CardSheet, corners: readonly SeenCorner[], seen: number): void {
  const middle = (sheet.corners.reduce((m, v, i) => (i % 2 === 1 ? Math.max(m, v) : m), 0) + squareMm) / 2;
  for (const upper of [true, false]) {
    let of = 0;
    for (let i = 1; i < sheet.corners.length; i += 2) if (sheet.corners[i]! > middle === upper) of++;
    const here = corners.filter((c) => c.half === sheet.half && c.yMm > middle === upper).length;
    if (here < enoughCorners * of) throw new Refusal(finding("photo-half-card", { missing: `${upper ? "upper" : "lower"} ${sheet.half}`, seen, of: 2 * sheet.markers.length }));
  }
}

/** A corner is first guessed from the two markers that touch it, then refined in the full picture. */
function cornersOf(sheet: CardSheet, markers: ReadonlyMap<number, SeenMarker>, grey: Grey): SeenCorner[] {
  const placed = sheet.markers.flatMap((marker) => {
    const seen = markers.get(marker.id);
    return seen ? [{ marker, h: homographyOf(printedCorners(marker), seen.corners), pxPerMm: sideOf(seen) / markerMm }] : [];
  });
  const out: SeenCorner[] = [];
  for (let i = 0; i < sheet.corners.length; i += 2) {
    const x = sheet.corners[i]!, y = sheet.corners[i + 1]!;
    const near = placed.filter(({ marker: m }) => Math.abs(m.xMm + squareMm / 2 - x) < squareMm && Math.abs(m.yMm + squareMm / 2 - y) < squareMm);
    if (near.length === 0) continue;
    const guesses = near.map(({ h }) => through(h, x, y));
    const gx = guesses.reduce((s, g) => s + g[0], 0) / near.length;
    const gy = guesses.reduce((s, g) => s + g[1], 0) / near.length;
    // The white left between the corner and the markers' black, less a hair for blur.
    const reach = Math.max(2, ((squareMm - markerMm) / 2) * 1.25 * near[0]!.pxPerMm);
    const found = refineCorner(grey, gx, gy, reach);
    if (found) out.push({ half: sheet.half, xMm: x, yMm: y, xPx: found[0], yPx: found[1] });
  }
  return out;
}

/** The four corners of a marker's black as printed, from its upper left clockwise. */
function printedCorners({ xMm, yMm }: CardMarker): number[] {
  const edge = (squareMm - markerMm) / 2;
  const x0 = xMm + edge, x1 = xMm + squareMm - edge, y0 = yMm + edge, y1 = yMm + squareMm - edge;
  return [x0, y1, x1, y1, x1, y0, x0, y0];
}

function sideOf({ corners: c }: SeenMarker): number {
  let sum = 0;
  for (let i = 0; i < 4; i++) {
    const j = (i + 1) % 4;
    sum += Math.sqrt((c[2 * i]! - c[2 * j]!) ** 2 + (c[2 * i + 1]! - c[2 * j + 1]!) ** 2);
  }
  return sum / 4;
}
