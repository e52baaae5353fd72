import { band, barAcrossMm, barMm, cardSheet, columns, cutMm, markerMm, rowsOf, squareMm, type CardHalf, type CardPaper } from "#photo/card.ts";
import { textWidth } from "./lettering.ts";
import { marginMm, type Paper } from "./paper.ts";
import type { PageInk } from "./pdf/page-ink.ts";

/** Names by which bars are found again in the file. */
export const cardBarNames = { up: "card-up", across: "card-across" } as const;

/** Where the lower left corner of a sheet's squares lies on the paper, mm. The open side has the printer's margin and no more. */
export function cardOnPaper(paper: Paper, name: CardPaper, half: CardHalf): { readonly x: number; readonly y: number } {
  return {
    x: half === "left" ? paper.widthMm - marginMm - columns * squareMm : marginMm,
    y: paper.heightMm - marginMm - rowsOf[name] * squareMm,
  };
}

/** One sheet of the card: squares with their markers, both bars, the lines to cut along, and what it is. */
export function inkCardSheet(ink: PageInk, paper: Paper, name: CardPaper, half: CardHalf): void {
  const { x, y } = cardOnPaper(paper, name, half);
  const dx = x - (half === "left" ? 0 : columns * squareMm);
  inkSquares(ink, name, half, dx, y);
  inkCuts(ink, paper, name, half, x, y);
  inkBars(ink, half, x, y);
  inkWords(ink, paper, half, x, y);
}

function inkSquares(ink: PageInk, name: CardPaper, half: CardHalf, dx: number, dy: number): void {
  const { black, markers } = cardSheet(name, half);
  // One filling each: black squares meet at corners only, the white of a marker lies inside its black.
  for (let i = 0; i < black.length; i += 2) ink.fill([[black[i]! + dx, black[i + 1]! + dy, squareMm, squareMm]]);
  const edge = (squareMm - markerMm) / 2;
  for (const { xMm, yMm, white } of markers) {
    const field = markerMm / (white.length + 2);
    const x0 = xMm + dx + edge, y0 = yMm + dy + edge;
    const fields = white.flatMap((row, r) => row.flatMap((on, c): [number, number, number, number][] => (on ? [[x0 + (c + 1) * field, y0 + (white.length - r) * field, field, field]] : [])));
    ink.fill([[x0, y0, markerMm, markerMm], ...fields]);
  }
}

/** Where the window may be cut out, and where the right sheet is trimmed to be laid on the left one. */
function inkCuts(ink: PageInk, paper: Paper, name: CardPaper, half: CardHalf, x: number, y: number): void {
  const inset = band * squareMm + cutMm;
  const wide = columns * squareMm, high = rowsOf[name] * squareMm;
  const [open, shut] = half === "left" ? [x + wide, x + inset] : [x, x + wide - inset];
  ink.style(0.18, [2, 2]);
  ink.stroke([open, y + inset, shut, y + inset, shut, y + high - inset, open, y + high - inset]);
  const cut = "If your tape is pale, cut out the window along this dashed line and lay a dark sheet beneath.";
  ink.text(cut, Math.min(open, shut) + 4, y + inset - 2.3, 1.6);
  ink.style(0.25, half === "left" ? [] : [4, 2]);
  if (half === "right") {
    ink.line(x, 3, x, y);
    ink.line(x, y + high, x, paper.heightMm - 3);
    ink.text("trim off along this edge", x - 2.2, y + high - band * squareMm - 40, 1.8, { angleDeg: 90 });
    ink.line(x, y + inset, x, y + high - inset);
  } else ink.text("lay the trimmed edge of the right sheet here", x + wide + 3.2, y + high - band * squareMm - 60, 1.8, { angleDeg: 90 });
}

function inkBars(ink: PageInk, half: CardHalf, x: number, y: number): void {
  const up = half === "left" ? x - 3 : x + columns * squareMm + 3;
  const out = half === "left" ? -1 : 1;
  const from = y + 20;
  ink.style(0.35);
  ink.named(cardBarNames.up, () => ink.line(up, from, up, from + barMm));
  ink.style(0.25);
  for (const [at, long] of [[0, 4], [barMm, 4]] as const) ink.line(up, from + at, up + out * long, from + at);
  const words = `This bar must measure ${barMm} mm. Tell the program what your rule reads, to half a millimetre.`;
  ink.text(words, half === "left" ? up - 2.2 : up + 4, from + (barMm - textWidth(words, 2.5)) / 2, 2.5, { angleDeg: 90 });
  const left = half === "left" ? x + columns * squareMm - barAcrossMm - 2 : x + 2;
  const low = y - 4;
  ink.style(0.35);
  ink.named(cardBarNames.across, () => ink.line(left, low, left + barAcrossMm, low));
  ink.style(0.25);
  for (const at of [0, barAcrossMm]) ink.line(left + at, low, left + at, low - 3);
  const across = `and this bar ${barAcrossMm} mm`;
  ink.text(across, left + (barAcrossMm - textWidth(across, 2.5)) / 2, low - 3.4, 2.5);
}

function inkWords(ink: PageInk, paper: Paper, half: CardHalf, x: number, y: number): void {
  const low = y - 16;
  ink.text(`Card for photographs, ${half} sheet`, half === "left" ? x : x + 2, low, 4, { bold: true });
  const note = `Print at 100 %, not 'fit to page'. ${paper.name}.`;
  const from = half === "left" ? x + columns * squareMm - 2 - textWidth(note, 2.5) : x + columns * squareMm - textWidth(note, 2.5);
  ink.text(note, from, low, 2.5);
}
