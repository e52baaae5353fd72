import { bounds, type Bounds } from "#plane/measure.ts";
import type { Outline, Polyline } from "#plane/outline.ts";

interface Frame {
  readonly width: number;
  readonly height: number;
}

/** How a flattened photograph lies in its frame: which place of the card's plane is in the middle, and how large. */
export interface PhotoPlace {
  readonly pxPerMm: number;
  readonly midX: number;
  readonly midY: number;
}

/** Nearer than this a photograph shows only its grain, px per mm. */
const nearest = 24;
/** Free px round the box that is fitted. */
const rim = 26;

/** The whole box as large as the frame has room for. */
export function fitted(box: Bounds, { width, height }: Frame): PhotoPlace {
  const pxPerMm = Math.max(0.05, Math.min((width - 2 * rim) / (box.maxX - box.minX), (height - 2 * rim) / (box.maxY - box.minY), nearest));
  return { pxPerMm, midX: (box.minX + box.maxX) / 2, midY: (box.minY + box.maxY) / 2 };
}

export const toFrame = (p: PhotoPlace, { width, height }: Frame, x: number, y: number): readonly [number, number] => [width / 2 + (x - p.midX) * p.pxPerMm, height / 2 - (y - p.midY) * p.pxPerMm];

export const toPlane = (p: PhotoPlace, { width, height }: Frame, px: number, py: number): readonly [number, number] => [p.midX + (px - width / 2) / p.pxPerMm, p.midY - (py - height / 2) / p.pxPerMm];

/** Nearer (`by` > 1) or farther, with what lies under the finger (px in the frame) staying there; no farther than the whole picture. */
export function zoomed(p: PhotoPlace, by: number, frame: Frame, at: readonly [number, number], box: Bounds): PhotoPlace {
  const pxPerMm = Math.min(nearest, Math.max(fitted(box, frame).pxPerMm, p.pxPerMm * by));
  const [x, y] = toPlane(p, frame, ...at);
  return kept({ pxPerMm, midX: x - (at[0] - frame.width / 2) / pxPerMm, midY: y + (at[1] - frame.height / 2) / pxPerMm }, frame, box);
}

/** Shifted by so many px, but never away from the picture. */
export function shifted(p: PhotoPlace, dx: number, dy: number, frame: Frame, box: Bounds): PhotoPlace {
  return kept({ ...p, midX: p.midX - dx / p.pxPerMm, midY: p.midY + dy / p.pxPerMm }, frame, box);
}

/** Where the picture is smaller than the frame it stays in the middle; else its edge does not come inside the frame's. */
function kept(p: PhotoPlace, { width, height }: Frame, box: Bounds): PhotoPlace {
  const along = (mid: number, min: number, max: number, px: number): number => {
    const room = Math.max(0, (max - min) / 2 - (px / 2 - rim) / p.pxPerMm);
    return Math.min((min + max) / 2 + room, Math.max((min + max) / 2 - room, mid));
  };
  return { ...p, midX: along(p.midX, box.minX, box.maxX, width), midY: along(p.midY, box.minY, box.maxY, height) };
}

/** The box round several lines, with so many mm of room on each side. */
export function boxRound(lines: readonly (Outline | Polyline)[], roomMm = 0): Bounds {
  const all = lines.map(bounds);
  return {
    minX: Math.min(...all.map((b) => b.minX)) - roomMm,
    minY: Math.min(...all.map((b) => b.minY)) - roomMm,
    maxX: Math.max(...all.map((b) => b.maxX)) + roomMm,
    maxY: Math.max(...all.map((b) => b.maxY)) + roomMm,
  };
}
