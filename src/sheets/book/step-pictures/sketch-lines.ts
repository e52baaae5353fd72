import { bounds } from "#plane/measure.ts";
import type { Line } from "../block.ts";
import { fine, labelled, lines, smallStrong, together, blank } from "../words.ts";
import { letterMm, placedLetters, type PlacedLetter } from "./lettered.ts";
import { inkStrokes, lightMm, type Sketch } from "./sketch.ts";

/** What a step shows: a drawing and what is written above it. */
export interface Picture {
  readonly title: string;
  readonly sketch: Sketch;
}

/** A drawing with its title above and what its letters stand for below it, never parted. */
export function pictureLine({ title, sketch }: Picture, width: number): Line {
  return together([blank(1), ...lines(title, width, { ...fine, bold: true }), drawingLine(sketch), ...sketch.told.flatMap(([letter, words]) => (letter ? labelled(letter, words, width, fine) : lines(words, width, fine)))]);
}

function drawingLine(sketch: Sketch): Line {
  const letters = placedLetters(sketch);
  const { minX, minY, maxY } = extent(sketch, letters);
  return {
    highMm: maxY - minY + 1.6,
    ink: (ink, x, top) => {
      const [dx, dy] = [x - minX, top - 0.8 - maxY];
      inkStrokes(ink, sketch, dx, dy);
      ink.style(lightMm);
      for (const { leader: l } of letters) if (l) ink.line(l[0] + dx, l[1] + dy, l[2] + dx, l[3] + dy);
      for (const { text, x: lx, y: ly } of letters) ink.text(text, lx + dx, ly + dy, letterMm, { bold: smallStrong.bold ?? false });
    },
  };
}

/** The box of strokes and letters, mm. */
export function extent({ strokes }: Sketch, letters: readonly PlacedLetter[]): { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number } {
  const boxes = [...strokes.map(({ xy }) => bounds({ xy: Float64Array.from(xy) })), ...letters.map(({ box }) => box)];
  return { minX: Math.min(...boxes.map((b) => b.minX)), minY: Math.min(...boxes.map((b) => b.minY)), maxX: Math.max(...boxes.map((b) => b.maxX)), maxY: Math.max(...boxes.map((b) => b.maxY)) };
}

/** Letters beside a drawing need so much at either side, mm. */
export const besideMm = 3.4;

const larger = [4, 3, 2.5, 2, 1.5] as const;
const smaller = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 30] as const;

/** The largest even scale at which something so large has room; drawn over true size, and in words. */
export function scaleFor(wideMm: number, highMm: number, roomWide: number, roomHigh: number): { readonly scale: number; readonly words: string } {
  const fits = (scale: number): boolean => scale * wideMm <= roomWide && scale * highMm <= roomHigh;
  const up = larger.find(fits);
  if (up) return { scale: up, words: `${up} : 1` };
  const down = smaller.find((one) => fits(1 / one)) ?? smaller[smaller.length - 1]!;
  return { scale: 1 / down, words: `1 : ${down}` };
}
