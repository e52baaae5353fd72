import { band, barMm, cardHalves, cardSheet, columns, rowsOf, squareMm, type CardPaper } from "#photo/card.ts";
import { brokenIntoLines } from "./lettering.ts";
import { marginMm, type Paper } from "./paper.ts";
import type { PageInk } from "./pdf/page-ink.ts";

const steps: readonly string[] = [
  `Print both sheets at 100 %. Measure the upright bar with your own rule: it must be ${barMm} mm. Write down what you read; if a printer is off, the program puts it right by this number.`,
  "Trim the right sheet along its left edge, lay it on the left sheet up to the squares, and tape it from behind. A millimetre off does no harm: the program finds how the sheets lie to each other.",
  "Is your tape pale? Cut out the window along the dashed line and lay the card on dark paper. Any colour will do that is clearly not that of the tape, nor of the pen you drew with.",
  "Lay the card flat on a hard table. Press the tape halves flat in the window, with a finger's width to every edge and between them: hold them down with a clean pane of glass, or with pins on a board. Slits may gape. Both halves in one picture, or one each.",
  "Drawing round a last instead? Hold the pen upright, draw on the sheet in the window, close the line.",
  "Stand so that no shadow falls on the card; daylight from a window, no flash, no lamp that mirrors in the glass.",
  "Hold the camera straight above the middle, as far up as the arm reaches, and zoom until the card fills the picture. All squares must be seen, none covered. Hold still, or lean on something. Do not crop, filter or send it through a messenger that shrinks it.",
  "A flatbed scanner large enough for the whole card does as well.",
];

/** The page on how to use the card: one drawing, the steps in order. */
export function inkCardGuide(ink: PageInk, paper: Paper, name: CardPaper): void {
  const left = marginMm + 8, width = paper.widthMm - 2 * left;
  let y = paper.heightMm - marginMm - 8;
  ink.text("How to take a picture that can be measured", left, y, 5, { bold: true });
  const scale = Math.min(0.36, width / (2 * columns * squareMm));
  const high = rowsOf[name] * squareMm * scale;
  inkDrawing(ink, left + (width - 2 * columns * squareMm * scale) / 2, y - 8 - high, scale, name);
  y -= 16 + high;
  steps.forEach((step, i) => {
    ink.text(`${i + 1}`, left, y, 3.5, { bold: true });
    for (const line of brokenIntoLines(step, 3, width - 8)) {
      ink.text(line, left + 8, y, 3);
      y -= 5.2;
    }
    y -= 2.2;
  });
  y -= 1;
  for (const line of brokenIntoLines("Knives: cut away from your hand, on a mat, with a steel rule.", 2.5, width - 8)) ink.text(line, left + 8, y, 2.5);
}

/** The joined card with two halves in its window, small. */
function inkDrawing(ink: PageInk, x: number, y: number, scale: number, name: CardPaper): void {
  const wide = 2 * columns, high = rowsOf[name], s = squareMm * scale;
  const squares: [number, number, number, number][] = [];
  for (const half of cardHalves) {
    const { black } = cardSheet(name, half);
    for (let i = 0; i < black.length; i += 2) squares.push([x + black[i]! * scale, y + black[i + 1]! * scale, s, s]);
  }
  ink.fill(squares);
  ink.style(0.25);
  ink.box(x, y, wide * s, high * s);
  ink.box(x + band * s, y + band * s, (wide - 2 * band) * s, (high - 2 * band) * s);
  ink.style(0.18, [1, 1]);
  ink.line(x + columns * s, y, x + columns * s, y + high * s);
  for (const [from, turned] of [[y + (band + 1.4) * s, false], [y + (high / 2 + 0.6) * s, true]] as const) inkHalf(ink, x + (band + 4) * s, from, s, turned);
}

/** A tape half about 24 squares long: feather edge with slits below, centre line at the toe, topline above, back at the heel. */
function inkHalf(ink: PageInk, x: number, y: number, s: number, turned: boolean): void {
  const at: number[] = [];
  const put = (u: number, v: number): void => void at.push(x + (turned ? 24 - u : u) * s, y + v * s);
  for (let k = 0; k <= 24; k++) {
    const t = k / 24;
    put(24 * t, 1.6 * Math.sin(Math.PI * t));
    if (k > 17 && k < 23) {
      put(24 * t + 0.1, 1.6 * Math.sin(Math.PI * t) + 1.5);
      put(24 * t + 0.3, 1.6 * Math.sin(Math.PI * t) - 0.05);
    }
  }
  for (let k = 1; k <= 8; k++) put(24 - (6 * k) / 8, (6.2 * k) / 8);
  for (let k = 1; k <= 24; k++) put(18 - (18.3 * k) / 24, 6.2 + k / 24 - 2.6 * Math.sin((Math.PI * k) / 24));
  for (let k = 1; k < 6; k++) put(-0.3 - 0.4 * Math.sin((Math.PI * k) / 6) + (0.3 * k) / 6, 7.2 * (1 - k / 6));
  ink.style(0.35);
  ink.stroke(at, true);
}
