import type { Phase, Step } from "#making/steps/step.ts";
import { blockHigh, type Block, type Line } from "./block.ts";
import { stepAnchor, type PagedBook } from "./book.ts";
import type { Chapter } from "./flow.ts";
import { besideStep } from "./step-margin.ts";
import { tickBox } from "./table.ts";
import { blank, body, hanging, heading, labelled, large, line, lines, small, together, type Letters } from "./words.ts";

const numberMm = 13;
/** The column beside the steps: wider on broad paper. */
const sideOf = (width: number): number => Math.max(52, 0.28 * width);
const betweenMm = 4;
/** A step is read in one place, with what dries and what goes wrong: only a long one is parted, where so much of it stands on the page it begins on and so much goes on; mm. */
const leastMm = 90;
const leastRestMm = 16;
const number: Letters = { heightMm: 5.5, stepMm: 8, bold: true };

export const phaseWords: Readonly<Record<Phase, string>> = {
  pattern: "Pattern", cutting: "Cutting", closing: "Closing", "bottom parts": "Bottom parts", lasting: "Lasting", bottoming: "Bottoming", heel: "Heel", finishing: "Finishing",
};

/** The work step by step: what to do on the left, what it needs, how long it dries and what to take care of on the right. */
export function stepsChapter(book: PagedBook): Chapter | undefined {
  const { input: { making: { steps } }, room: { width } } = book;
  if (steps.length === 0) return undefined;
  const intro = "Tick each step for the left and the right shoe. A step begins when those it comes after are done and dry; write down when it does.";
  const blocks = steps.flatMap((step, i): readonly Block[] => {
    const opens = i === 0 || steps[i - 1]!.phase !== step.phase;
    const head: Block = { cells: [{ x: 0, lines: lines(phaseWords[step.phase], width, large) }], keep: true, gapMm: 4 };
    return [...(opens ? [head] : []), stepBlock(book, step, i)];
  });
  return { title: "Steps", blocks: [{ cells: [{ x: 0, lines: lines(intro, width, small) }], keep: true }, ...blocks] };
}

function stepBlock(book: PagedBook, step: Step, i: number): Block {
  const { width } = book.room, sideMm = sideOf(width), side = width - sideMm;
  const textMm = side - numberMm - betweenMm;
  const { first, needs, wait } = besideStep(book, step, sideMm);
  const told = [...doing(step, textMm)], shown: Line[] = [], words = [...first, ...needs];
  // A picture stands where the step grows least by it: beside what is done, or below.
  for (const { beside: narrow, below: broad } of book.pictures(step, sideMm, textMm)) {
    if (highOf([...words, ...shown, narrow]) <= highOf([...told, broad])) shown.push(narrow);
    else told.push(broad);
  }
  const beside = [...first, ...shown, ...needs];
  // What dries is told where there is room for it: beside the step, or below what is done.
  const below = wait && highOf([...beside, ...wait(sideMm)]) > highOf([...told, ...wait(textMm)]);
  const dry = wait && !below ? wait(sideMm) : [];
  const block: Block = {
    cells: [
      { x: 0, lines: [line(String(i + 1), number), tickBox(5, "L"), tickBox(5, "R"), blank(1)] },
      { x: numberMm, lines: [...told, ...(wait && below ? wait(textMm) : []), blank(1.2)] },
      { x: side, lines: [...first, ...shown, ...dry, ...needs, blank(1.2)] },
    ],
    ruleMm: 0.18,
    gapMm: 0.6,
    parts: true,
    again: [line(String(i + 1), number), line("goes on", small)],
    anchor: stepAnchor(step.id),
  };
  // Its cautions, its pictures and what dries beside it never go on to the next page.
  return { ...block, least: { first: Math.max(leastMm, blockHigh({ ...block, cells: [{ x: side, lines: [...first, ...shown, ...dry] }] })), rest: leastRestMm } };
}

const highOf = (all: readonly Line[]): number => blockHigh({ cells: [{ x: 0, lines: all }] });

function doing({ title, todo, right, fails }: Step, width: number): readonly Line[] {
  const told = (label: string, all: readonly string[], gapMm: number): readonly Line[] => (all.length > 0 ? [blank(gapMm), together(labelled(label, all.join(" "), width, small))] : []);
  return [...lines(title, width, heading), ...todo.map((words) => together(hanging("–", words, width, body))), ...told("Right when:", right, 0.8), ...told("Goes wrong:", fails, 0.4)];
}
