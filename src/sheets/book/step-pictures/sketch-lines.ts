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

/** A drawing as it stands beside a step, and as it stands below what is done, where there is more room across. */
export interface PictureLines {
  readonly beside: Line;
  readonly below: Line;
}

/** A drawing with its title above and what its letters stand for below it, or to its right; never parted. */
export function pictureLines({ title, sketch }: Picture, besideWide: number, belowWide: number): PictureLines {
  const { line: drawn, wide } = drawing(sketch);
  const told = (width: number): readonly Line[] => sketch.told.flatMap(([letter, words]) => (letter ? labelled(letter, words, width, fine) : lines(words, width, fine)));
  const head = (width: number): readonly Line[] => [blank(1), ...lines(title, width, { ...fine, bold: true })];
  const right = Math.max(wide, leastWideMm) + legendGapMm;
  return { beside: together([...head(besideWide), drawn, ...told(besideWide)]), below: together([...head(belowWide), sideBySide(drawn, right, together(told(belowWide - right)))]) };
}

const legendGapMm = 4, leastWideMm = 30;

/** Two lines beside one another, as high as the higher. */
const sideBySide = (first: Line, right: number, second: Line): Line => ({
  highMm: Math.max(first.highMm, second.highMm),
  ink: (ink, x, top) => {
    first.ink(ink, x, top);
    second.ink(ink, x + right, top);
  },
});

function drawing(sketch: Sketch): { readonly line: Line; readonly wide: number } {
  const letters = placedLetters(sketch);
  const { minX, minY, maxX, maxY } = extent(sketch, letters);
  const line: Line = {
    highMm: maxY - minY + 1.6,
    ink: (ink, x, top) => {
      const [dx, dy] = [x - minX, top - 0.8 - maxY];
      inkStrokes(ink, sketch, dx, dy);
      ink.style(lightMm);
      for (const { leader: l } of letters) if (l) ink.line(l[0] + dx, l[1] + dy, l[2] + dx, l[3] + dy);
      for (const { text, x: lx, y: ly } of letters) ink.text(text, lx + dx, ly + dy, letterMm, { bold: smallStrong.bold ?? false });
    },
  };
  return { line, wide: maxX - minX };
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
