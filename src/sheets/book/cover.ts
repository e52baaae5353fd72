import type { Making } from "#making/making.ts";
import type { Step } from "#making/steps/step.ts";
import type { Piece } from "#pieces/piece.ts";
import { correctedWords } from "../corrected.ts";
import { cardMarks } from "../marks/card-marks.ts";
import { profileOf, type Profile } from "../shoe-picture.ts";
import { blockHigh, type Block, type Cell, type Line } from "./block.ts";
import type { Book } from "./book.ts";
import { choiceWords } from "./choice-words.ts";
import { wholeWidth, type Chapter } from "./flow.ts";
import { laidPanels } from "./lay-panels.ts";
import { halfMm, pairsWords, timeWords, waitWords } from "./numbers.ts";
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
/** The last is drawn no higher than its numbers beside it, mm. */
const mostShoeMm = 78;

/** Whose shoe it is and what it will be, on one page to hang up. */
export function coverChapter(book: Book): Chapter {
  const { input } = book, width = wholeWidth(book.room);
  const above: readonly Block[] = [titleBlock(input.title || "A pair of pumps", input.size, width), shoeBlock(book)];
  const below: readonly Block[] = [wordsBlock(book)];
  const taken = [...above, ...below].reduce((mm, b) => mm + blockHigh(b) + (b.gapMm ?? 0), 0);
  const upper = upperBlock(input.pieces, width, book.room.top - book.room.low - taken - gapMm);
  return { title: "Making this pair", wide: true, blocks: [...above, ...(upper ? [upper] : []), ...below] };
}

function titleBlock(text: string, size: string, width: number): Block {
  const letters = brokenWords(text, width, title).length > mostTitleLines ? lesserTitle : title;
  const broken = brokenWords(text, width, letters);
  const shown = broken.length > 2 * mostTitleLines ? [...broken.slice(0, 2 * mostTitleLines - 1), "…"] : broken;
  const sized = size ? brokenWords(`Size ${size}, left and right`, width, sizeLetters).map((l) => line(l, sizeLetters)) : [line("Left and right", sizeLetters)];
  return { cells: [{ x: 0, lines: [...shown.map((l) => line(l, letters)), blank(2), ...sized] }] };
}

/** The last from its outside with its topline, and beside it the numbers that make the shoe. */
function shoeBlock({ input, room }: Book): Block {
  const width = wholeWidth(room);
  const numbers: Cell = { x: width - numbersMm + gapMm, lines: keyNumbers(input).flatMap(([told, mm]) => [line(told, small), line(mm, figure), blank(1.6)]) };
  if (input.from === "tape") return { cells: [{ ...numbers, x: 0 }], gapMm: 3 };
  const profile = profileOf(input.last, input.lines, 200);
  const one = smallness.find((n) => profile.widthMm / n <= width - numbersMm && profile.heightMm / n <= mostShoeMm) ?? 10;
  return { cells: [{ x: 0, lines: [shoeLine(profile, 1 / one), line(`The last from outside, 1 : ${one}`, small)] }, numbers], gapMm: 3 };
}

function keyNumbers({ made, ...input }: Book["input"]): readonly (readonly [string, string])[] {
  const heel = made?.heel ? [["Heel", `${halfMm(made.heel.backMm)} mm`] as const] : [];
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

/** The flat upper true to shape, as large as the page allows. */
function upperBlock(pieces: readonly Piece[], width: number, roomMm: number): Block | undefined {
  const own = upperPieces(pieces);
  if (own.length === 0) return undefined;
  const told = (one: number) => lines(`The upper lying flat, ${own[0]!.side} shoe, 1 : ${one}, allowances included. Full line: cut. Dots: stitches. Long dashes: net. The other shoe is its mirror.`, width, small);
  const most = smallness[smallness.length - 1]!;
  for (const one of smallness) {
    const laid = laidPanels(own, 1 / one, width, roomMm - told(one).length * small.stepMm, one === most);
    if (laid) return { cells: [{ x: 0, lines: [laid.line, ...told(one)] }], gapMm, drawn: laid.drawn };
  }
  return undefined;
}

function wordsBlock({ input, room }: Book): Block {
  const { width } = room;
  return { cells: [{ x: 0, lines: [...lines(choiceWords(input), width, body), ...correctedLines(input, width), ...lines(workWords(input.making), width, body)] }], gapMm: 3 };
}

const correctedLines = (input: Book["input"], width: number): readonly Line[] => (input.from === "last" && input.corrected ? lines(correctedWords(input.corrected), width, body) : []);

/** "About 9 h 40 min of work for one pair, …". */
function workWords({ cost, steps, calendar, pairs }: Making): string {
  const minutes = cost.minutes > 0 ? cost.minutes : steps.reduce((sum, s) => sum + s.minutes, 0);
  const rests = restMin(steps);
  const times = calendar?.sessions.length ?? 0;
  const planned = times > 0 ? ` In your calendar it is ${times === 1 ? "one time" : `${times} times`} at the bench${pairs > 1 ? ` for ${pairsWords(pairs)}` : ""}.` : "";
  return `About ${timeWords(minutes)} of work for one pair, in ${steps.length} steps.${rests > 0 ? ` Drying and resting alone take ${waitWords(rests)}.` : ""}${planned}`;
}

/** The longest chain of waits, each as long as a careful maker would wait, minutes; what dries at the same time counts once. */
export function restMin(steps: readonly Pick<Step, "id" | "after" | "wait">[]): number {
  const until = new Map<string, number>();
  for (const { id, after, wait } of steps) until.set(id, Math.max(0, ...after.map((a) => until.get(a) ?? 0)) + (wait?.wellMin ?? 0));
  return Math.max(0, ...until.values());
}
