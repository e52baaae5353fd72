import { bounds } from "#plane/measure.ts";
import type { Outline } from "#plane/outline.ts";
import { photograph, type Shot } from "../photo/support/camera.ts";
import { paintTable, type Table } from "../photo/support/plane.ts";
import { demoTape } from "./demo-tape.ts";
import { pngOf } from "./png.ts";
import { laid } from "./taped-outlines.ts";

// Photographs of the example pair's own flat pattern as a maker would take them; invented, taken by a camera of our own.

const tape = [0.65, 0.55, 0.3] as const;
const cloth = [0.05, 0.06, 0.1] as const;
const pencil = [0.02, 0.02, 0.02] as const;

/** Turned, and its box moved to begin at a place of the card. */
function at(outline: Outline, degrees: number, x: number, y: number): Outline {
  const turned = laid(outline, degrees, [0, 0]);
  const box = bounds(turned);
  return laid(turned, 0, [x - box.minX, y - box.minY]);
}

const taken = (table: Omit<Table, "paper">, shot: Partial<Shot> = {}): Uint8Array =>
  pngOf(photograph(paintTable({ paper: "A4", ...table }), { width: 2000, height: 1500, tiltDeg: 9, fromDeg: 60, k1: -0.05, grain: 2, darkest: 0.75, ...shot }));

/** Both halves inside the card's frame, on dark cloth. */
export const bothHalves = (): Uint8Array => taken({ ground: cloth, shapes: [{ xy: at(demoTape().medial, 204.5, 36, 29).xy, colour: tape }, { xy: at(demoTape().lateral, -22, 36, 127).xy, colour: tape }] });

/** The same tape on a table without the card. */
export const withoutCard = (): Uint8Array => taken({ sheets: [], shapes: [{ xy: at(demoTape().medial, 204.5, 36, 29).xy, colour: tape }] });

/** A line drawn round the bottom, on the card's own paper. */
export const bottomDrawn = (outline: Outline): Uint8Array => taken({ shapes: [{ xy: at(outline, 0, 45, 80).xy, colour: pencil, strokeMm: 0.6 }] });
