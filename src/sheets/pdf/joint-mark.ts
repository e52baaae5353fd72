import { textWidth } from "../lettering.ts";
import type { PageInk } from "./page-ink.ts";

/**
 * The mark that two pages share across a joint. Lengths along the joint and square to it (`off`), mm, from the mark's middle.
 * - A long line square to the joint: a step in it is the shift along.
 * - Two slanting lines that cross on the joint, 1 off to 3 along: pages too far apart or too close by d break the cross open by
 *   3 d to either side.
 * - Ticks every 2 mm on one side and every 1.75 mm on the other (a vernier): the k-th pair meets where the shift along is
 *   k/4 mm. A fourth pair would meet together with another.
 */
export const slant = 3;
export const tickMm = [2, 1.75] as const;
const reachMm = 4;
const tickHighMm = 1.1;
/** Half its length along the joint; the short one stands where the long one finds no room. */
export const longMarkMm = 12;
export const shortMarkMm = 7;

type Xy = readonly [number, number];

/** The lines of one side of the mark (`side` is the sign of `off`), each from the joint outward. */
export function markLines(halfMm: number, side: 1 | -1): readonly (readonly [Xy, Xy])[] {
  const every = tickMm[side > 0 ? 0 : 1];
  const ticks = [1, 2, 3].flatMap((k) => [k * every, -k * every]);
  return [
    [[0, 0], [0, side * reachMm]],
    [[0, 0], [halfMm, (side * halfMm) / slant]],
    [[0, 0], [-halfMm, (side * halfMm) / slant]],
    ...ticks.map((at): readonly [Xy, Xy] => [[at, 0], [at, side * tickHighMm]]),
  ];
}

/** Draws both sides; `point` takes lengths along and off to the paper. Of a joined pair one number of each page is left to be seen. */
export function inkJointMark(ink: PageInk, point: (along: number, off: number) => Xy, { halfMm, upright, label }: { readonly halfMm: number; readonly upright: boolean; readonly label: string }): void {
  ink.style(0.18);
  for (const side of [1, -1] as const) {
    for (const [a, b] of markLines(halfMm, side)) ink.stroke([...point(...a), ...point(...b)]);
    inkNumber(ink, point, upright, label, side);
  }
}

/** Beside the long line, above or below the cross. */
function inkNumber(ink: PageInk, point: (along: number, off: number) => Xy, upright: boolean, label: string, side: 1 | -1): void {
  const wide = textWidth(label, 2.2, true);
  if (upright) {
    const [x, y] = point(0.9, side * 2.9);
    ink.text(label, x + 1.1, y, 2.2, { bold: true, angleDeg: 90 });
  } else {
    const [x, y] = point(0.9 + wide / 2, side * 2.9);
    ink.text(label, x - wide / 2, y - 1.1, 2.2, { bold: true });
  }
}
