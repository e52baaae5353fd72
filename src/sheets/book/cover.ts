import { minutesWords } from "#making/amounts/time-words.ts";
import type { Making } from "#making/making.ts";
import { mmMeasured } from "#making/steps/words.ts";
import type { Piece } from "#pieces/piece.ts";
import { correctedWords } from "../corrected.ts";
import type { LastInput } from "../input.ts";
import { cardMarks } from "../marks/card-marks.ts";
import { profileOf, type Profile } from "../shoe-picture.ts";
import { blockHigh, type Block, type Cell, type Drawn, type Line } from "./block.ts";
import type { Book } from "./book.ts";
import { choiceWords } from "./choice-words.ts";
import { daysBlocks, restMin } from "./days.ts";
import { wholeWidth, type Chapter } from "./flow.ts";
import { laidPanels } from "./lay-panels.ts";
import { halfMm, pairsWords, waitWords } from "./numbers.ts";
import { blank, body, brokenWords, line, lines, small, type Letters } from "./words.ts";

/** So many times smaller than true: the upper, and the shoe beside its numbers. */
const smallness = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10] as const;
const title: Letters = { heightMm: 10, stepMm: 14.5, bold: true };
const lesserTitle: Letters = { heightMm: 6, stepMm: 9, bold: true };
const sizeLetters: Letters = { heightMm: 6, stepMm: 11, bold: true };
const figure: Letters = { heightMm: 6, stepMm: 8.2, bold: true };
/** A title takes no more than this, in smaller letters where it would. */
const mostTitleLines = 3;
const numbersMm = 54;
const gapMm = 6;
const shoeGapMm = 3;
/** The last is drawn no larger than this, mm: the upper is what is made. */
const mostShoeMm = { wide: 125, high: 62 };

/** Whose shoe it is, what it will be and how the days go, on one page to hang up. */
export function coverChapter(book: Book): Chapter {
  const { input } = book, width = wholeWidth(book.room);
  const above = titleBlock(input.title || "A pair of pumps", input.size, width);
  const below: readonly Block[] = [wordsBlock(book), ...daysBlocks(book, width)];
  const taken = [above, ...below].reduce((mm, b) => mm + blockHigh(b) + (b.gapMm ?? 0), 0);
  return { title: "Making this pair", wide: true, blocks: [above, shoeBlock(book, width, book.room.top - book.room.low - taken - shoeGapMm), ...below] };
}

function titleBlock(text: string, size: string, width: number): Block {
  const letters = brokenWords(text, width, title).length > mostTitleLines ? lesserTitle : title;
  const broken = brokenWords(text, width, letters);
  const shown = broken.length > 2 * mostTitleLines ? [...broken.slice(0, 2 * mostTitleLines - 1), "…"] : broken;
  const sized = size ? brokenWords(`Size ${size}, left and right`, width, sizeLetters).map((l) => line(l, sizeLetters)) : [line("Left and right", sizeLetters)];
  return { cells: [{ x: 0, lines: [...shown.map((l) => line(l, letters)), blank(2), ...sized] }] };
}

/** The last from its outside with its topline, the flat upper as large as the page allows, and the numbers that make the shoe: beside both, or beside the last alone where the upper is the larger for it. */
function shoeBlock({ input }: Book, width: number, roomMm: number): Block {
  const numbers: Cell = { x: width - numbersMm + gapMm, lines: keyNumbers(input).flatMap(([told, mm]) => [line(told, small), line(mm, figure), blank(1.6)]) };
  const last = input.from === "last" ? lastLines(input, width - numbersMm) : [];
  const own = upperPieces(input.pieces), lastMm = highOf(last), besideMm = Math.max(lastMm, highOf(numbers.lines));
  const smallest = smallness[smallness.length - 1]!;
  for (const one of own.length > 0 ? smallness : []) {
    const beside = upperLines(own, one, width - numbersMm, roomMm - lastMm - gapMm, false);
    if (beside) return { cells: [{ x: 0, lines: [...last, blank(last.length > 0 ? gapMm : 0), ...beside.lines] }, numbers], gapMm: shoeGapMm, drawn: beside.drawn };
    const below = upperLines(own, one, width, roomMm - besideMm - gapMm, one === smallest);
    if (below) return { cells: [{ x: 0, lines: [...last, blank(besideMm - lastMm + gapMm), ...below.lines] }, numbers], gapMm: shoeGapMm, drawn: below.drawn };
  }
  return { cells: [{ x: 0, lines: last }, numbers], gapMm: shoeGapMm };
}

const highOf = (all: readonly Line[]): number => blockHigh({ cells: [{ x: 0, lines: all }] });

function lastLines({ last, lines: drawn }: LastInput, width: number): readonly Line[] {
  const profile = profileOf(last, drawn, 200);
  const one = smallness.find((n) => profile.widthMm / n <= Math.min(width, mostShoeMm.wide) && profile.heightMm / n <= mostShoeMm.high) ?? 10;
  return [shoeLine(profile, 1 / one), line(`The last from outside, 1 : ${one}`, small)];
}

function keyNumbers({ made, ...input }: Book["input"]): readonly (readonly [string, string])[] {
  const heel = made?.heel ? [["Heel, at the back", mmMeasured(made.heel.backMm)] as const] : [];
  if (input.from === "last") {
    const { throatDepthMm, backHeightMm, sideHeightMedialMm, sideHeightLateralMm } = input.lines.settings;
    return [["Throat, from the toe", `${halfMm(throatDepthMm)} mm`], ["Back, from the seat", `${halfMm(backHeightMm)} mm`], ["Lowest, inside", `${halfMm(sideHeightMedialMm)} mm`], ["Lowest, outside", `${halfMm(sideHeightLateralMm)} mm`], ...heel];
  }
  const { throat, back } = cardMarks(input.tape);
  return [["Throat, from the toe", `${halfMm(throat.lengthMm)} mm`], ["Back, from the seat", `${halfMm(back.lengthMm)} mm`], ...heel];
}

function shoeLine({ silhouette, upper, topline, heightMm }: Profile, scale: number): Line {
  return {
    highMm: scale * heightMm + 3,
    ink: (ink, x, top) => {
      const set = (xy: Float64Array) => xy.map((v, i) => scale * v + (i % 2 === 0 ? x : top - scale * heightMm - 0.5));
      ink.style(0.25);
      ink.stroke(set(silhouette));
      ink.style(0.25, [1.5, 1]);
      ink.stroke(set(upper));
      ink.style(0.7);
      ink.stroke(set(topline));
    },
  };
}

const panels = ["upper", "whole", "vamp", "inner quarter", "outer quarter"];
/** The panels of one upper, as they are cut. */
export const upperPieces = (pieces: readonly Piece[]): readonly Piece[] => {
  const side = pieces.some((p) => p.side === "right") ? "right" : "left";
  return pieces.filter((p) => p.side === side && p.material === "upper leather" && p.ground !== undefined && panels.includes(p.ground) && p.name !== "toe cap");
};

/** The flat upper true to shape at a scale; nothing where it needs more room, unless it is wanted `anyway`. */
function upperLines(own: readonly Piece[], one: number, width: number, roomMm: number, anyway: boolean): { readonly lines: readonly Line[]; readonly drawn: readonly Drawn[] } | undefined {
  const told = lines(`The upper lying flat, ${own[0]!.side} shoe, 1 : ${one}, allowances included. Full line: cut. Dots: stitches. Long dashes: net. The other shoe is its mirror.`, width, small);
  const laid = laidPanels(own, 1 / one, width, roomMm - highOf(told), anyway);
  return laid && { lines: [laid.line, ...told], drawn: laid.drawn };
}

function wordsBlock({ input, room }: Book): Block {
  const { width } = room;
  return { cells: [{ x: 0, lines: [...lines(choiceWords(input), width, body), ...correctedLines(input, width), ...lines(workWords(input.making), width, body)] }], gapMm: 3 };
}

const correctedLines = (input: Book["input"], width: number): readonly Line[] => (input.from === "last" && input.corrected ? lines(correctedWords(input.corrected), width, body) : []);

/** "About 9 h 40 min of work for one pair, …". */
function workWords({ cost: { minutes }, steps, calendar, pairs }: Making): string {
  const rests = restMin(steps);
  const times = calendar?.sessions.length ?? 0;
  const planned = times > 0 ? ` In your calendar it is ${times === 1 ? "one time" : `${times} times`} at the bench${pairs > 1 ? ` for ${pairsWords(pairs)}` : ""}.` : "";
  return `About ${minutesWords(minutes)} of work for one pair${pairs > 1 ? ` with its share of the pattern, which is made once for ${pairsWords(pairs)}` : ""}, in ${steps.length} steps.${rests > 0 ? ` Drying and resting alone take ${waitWords(rests)}.` : ""}${planned}`;
}
