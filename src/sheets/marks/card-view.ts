import type { Half } from "#lines/feather.ts";
import type { Polyline } from "#plane/outline.ts";
import type { TapedHalf, TapedShell } from "#tape/taped-shell.ts";
import { textWidth } from "../lettering.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { cardHeights } from "./card-marks.ts";
import { half as halfMm } from "./strips.ts";
import { sideWords } from "./tape-marks.ts";

type Xy = readonly [number, number];

/** One half lying flat, feather edge down, as it is seen from outside, with the lengths written where they are taken. */
export function inkCardView(ink: PageInk, { side, ...tape }: TapedShell, name: Half, left: number, bottom: number, width: number): void {
  const half = tape[name];
  const { at } = laidDown(half, side === "left", left, bottom, width);
  const curve = ({ xy }: Polyline): number[] => Array.from({ length: xy.length / 2 }, (_, i) => at([xy[2 * i]!, xy[2 * i + 1]!])).flat();
  ink.style(0.18, [1.5, 1]);
  ink.stroke(curve(half.feather));
  ink.style(0.35);
  ink.stroke(curve(half.back));
  ink.stroke(curve(half.centre));
  ink.style(0.5);
  ink.stroke(curve(half.topline));
  inkHeights(ink, half, at);
  const throat = `throat ${halfMm(half.lengths.centre)}`, back = `back ${halfMm(half.lengths.back)}`;
  const beside = (text: string, line: Polyline): void => {
    const n = line.xy.length;
    const [a, b] = [at([line.xy[0]!, line.xy[1]!]), at([line.xy[n - 2]!, line.xy[n - 1]!])];
    const middle: Xy = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const room = middle[0] > left + width / 2;
    ink.text(text, room ? middle[0] + 3 : middle[0] - 3 - textWidth(text, letterMm), middle[1] - letterMm / 2, letterMm);
  };
  beside(throat, half.centre);
  beside(back, half.back);
  const words = `${sideWords[name]} half of the ${side} upper`;
  ink.text(words, left + width / 2 - textWidth(words, 2.5, true) / 2, bottom - 5, 2.5, { bold: true });
}

/** Each height as a thin line with its number above the topline. Where numbers would meet they stand in rows of their own: the lowest place often lies close to a quarter. */
function inkHeights(ink: PageInk, half: TapedHalf, at: (p: Xy) => Xy): void {
  const taken: { readonly from: number; readonly to: number; readonly low: number }[] = [];
  for (const { tick, height } of cardHeights(half)) {
    const [foot, top] = [at(height.foot), at(height.at)];
    const text = `${tick} ${halfMm(height.heightMm)}`;
    const wide = textWidth(text, letterMm);
    let low = top[1] + 1.4;
    while (taken.some((t) => t.from < top[0] + wide / 2 + 1 && t.to > top[0] - wide / 2 - 1 && Math.abs(t.low - low) < letterMm + 0.8)) low += 0.5;
    taken.push({ from: top[0] - wide / 2, to: top[0] + wide / 2, low });
    ink.style(0.18, tick === "low" ? [0.8, 0.8] : []);
    ink.line(...foot, ...top);
    ink.text(text, top[0] - wide / 2, low, letterMm);
  }
}

const letterMm = 2;

/** How high the view is at a width, mm. */
export const cardViewHeight = ({ medial, lateral }: TapedShell, width: number): number => Math.max(...[medial, lateral].map((half) => laidDown(half, false, 0, 0, width).heightMm));

/** Turns the half so that toe and seat lie level and the feather edge is below; a left one is mirrored back to how it is seen. */
function laidDown(half: TapedHalf, mirrored: boolean, left: number, bottom: number, width: number): { readonly at: (p: Xy) => Xy; readonly heightMm: number } {
  const { xy } = half.feather;
  const n = xy.length;
  const seat: Xy = [xy[0]!, xy[1]!], toe: Xy = [xy[n - 2]!, xy[n - 1]!];
  // The level line runs from toe to seat on the inner half and from seat to toe on the outer one, which puts the feather edge below.
  const [from, to] = half.half === "medial" ? [toe, seat] : [seat, toe];
  const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [c, s] = [(to[0] - from[0]) / size, (to[1] - from[1]) / size];
  const level = ([x, y]: Xy): Xy => [c * (x - from[0]) + s * (y - from[1]), c * (y - from[1]) - s * (x - from[0])];
  const all = [half.feather, half.back, half.topline, half.centre].flatMap((line) => Array.from({ length: line.xy.length / 2 }, (_, i) => level([line.xy[2 * i]!, line.xy[2 * i + 1]!])));
  const [minX, maxX] = [Math.min(...all.map((p) => p[0])), Math.max(...all.map((p) => p[0]))];
  const [minY, maxY] = [Math.min(...all.map((p) => p[1])), Math.max(...all.map((p) => p[1]))];
  const scale = width / (maxX - minX);
  return {
    heightMm: scale * (maxY - minY),
    at: (p) => {
      const [x, y] = level(p);
      return [left + scale * (mirrored ? maxX - x : x - minX), bottom + scale * (y - minY)];
    },
  };
}
