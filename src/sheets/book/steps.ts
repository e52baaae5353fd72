import type { HazardId } from "#making/care/hazards.ts";
import type { Phase, Step, Wait } from "#making/steps/step.ts";
import { blockHigh, type Block, type Line } from "./block.ts";
import { cautionAnchor, stepAnchor, type PagedBook } from "./book.ts";
import { listed } from "./choice-words.ts";
import type { Chapter } from "./flow.ts";
import { timeWords, upperFirst, waitWords } from "./numbers.ts";
import { tickBox } from "./table.ts";
import { blank, body, hanging, heading, labelled, large, line, lines, small, smallStrong, together, type Letters } from "./words.ts";

const numberMm = 15;
/** The column beside the steps: wider on broad paper. */
const sideOf = (width: number): number => Math.max(54, 0.27 * width);
const betweenMm = 5;
/** Higher than this a step may be parted, mm. */
const mostWholeMm = 62;
const number: Letters = { heightMm: 5.5, stepMm: 8, bold: true };

const phaseWords: Readonly<Record<Phase, string>> = {
  pattern: "Pattern", cutting: "Cutting", closing: "Closing", "bottom parts": "Bottom parts", lasting: "Lasting", bottoming: "Bottoming", heel: "Heel", finishing: "Finishing",
};

/** The work step by step: what to do on the left, what it needs, how long it dries and what to take care of on the right. */
export function stepsChapter(book: PagedBook): Chapter | undefined {
  const { input: { making: { steps } }, room: { width } } = book;
  if (steps.length === 0) return undefined;
  const intro = "Tick each step for the left and the right shoe. A step begins when those it comes after are done and dry; write down when it does.";
  const blocks = steps.flatMap((step, i): readonly Block[] => {
    const opens = i === 0 || steps[i - 1]!.phase !== step.phase;
    const head: Block = { cells: [{ x: 0, lines: lines(phaseWords[step.phase], width, large) }], keep: true, gapMm: 6 };
    return [...(opens ? [head] : []), stepBlock(book, step, i)];
  });
  return { title: "Steps", blocks: [{ cells: [{ x: 0, lines: lines(intro, width, small) }], keep: true }, ...blocks] };
}

function stepBlock(book: PagedBook, step: Step, i: number): Block {
  const { width } = book.room, sideMm = sideOf(width);
  const textMm = width - numberMm - sideMm - betweenMm;
  const block: Block = {
    cells: [
      { x: 0, lines: [line(String(i + 1), number), tickBox(5, "L"), tickBox(5, "R"), blank(1)] },
      { x: numberMm, lines: [...doing(step, textMm), blank(2)] },
      { x: width - sideMm, lines: [...beside(book, step), blank(2)] },
    ],
    ruleMm: 0.18,
    gapMm: 1,
    again: [line(String(i + 1), number), line("goes on", small)],
    anchor: stepAnchor(step.id),
  };
  // A step is read in one place; only a long one goes on on the next page.
  return { ...block, parts: blockHigh(block) > mostWholeMm };
}

function doing({ title, todo, right, fails }: Step, width: number): readonly Line[] {
  return [
    ...lines(title, width, heading),
    ...todo.flatMap((told) => hanging("–", told, width, body)),
    ...(right.length > 0 ? [blank(1), ...labelled("Right when:", right.join(" "), width, small)] : []),
    ...(fails.length > 0 ? [blank(0.6), ...labelled("Goes wrong:", fails.join(" "), width, small)] : []),
  ];
}

/** What stands beside a step: time, what it comes after, what it needs, the wait with room for the clock, and cautions with their page. */
function beside(book: PagedBook, step: Step): readonly Line[] {
  const { steps, cautions } = book.input.making;
  const place = (id: string): number => steps.findIndex((s) => s.id === id) + 1;
  const own = place(step.id), after = step.after.map(place).filter((n) => n > 0).sort((a, b) => a - b);
  const afterWords = after.length === 0 || (after.length === 1 && after[0] === own - 1) ? "" : `After ${after.length === 1 ? "step" : "steps"} ${listed(after.map(String))}.`;
  const needs = listed([...step.needs.goods, ...step.needs.tools]);
  const sideMm = sideOf(book.room.width);
  const care = step.hazards.filter((h) => cautions.some((c) => c.hazard === h));
  return [
    ...lines(`${timeWords(step.minutes)}${step.shoes === "together" ? ", both shoes together" : ", one shoe after the other"}. ${afterWords}`, sideMm, small),
    ...(needs ? [blank(0.8), together(lines(`${upperFirst(needs)}.`, sideMm, small))] : []),
    ...(care.length > 0 ? [blank(1), barred(careWords(book, care).flatMap((told) => lines(told, sideMm - 3, smallStrong)))] : []),
    ...(step.wait ? [blank(1), together(waitLines(step.wait, sideMm))] : []),
  ];
}

/** "Take care", then hazards by the page on which they stand in full. */
function careWords(book: PagedBook, care: readonly HazardId[]): readonly string[] {
  const pages = new Map<string, HazardId[]>();
  for (const hazard of care) {
    const page = book.pageOf(cautionAnchor(hazard));
    pages.set(page, [...(pages.get(page) ?? []), hazard]);
  }
  return ["Take care", ...[...pages].map(([page, hazards]) => `page ${page}: ${hazards.join(", ")}`)];
}

/** Lines with an upright line beside them. */
function barred(told: readonly Line[]): Line {
  const words = together(told, 3);
  return {
    highMm: words.highMm,
    ink: (ink, x, top) => {
      ink.style(0.7);
      ink.line(x + 0.4, top - 0.2, x + 0.4, top - words.highMm + 0.4);
      words.ink(ink, x, top);
    },
  };
}

function waitLines({ leastMin, wellMin, mostMin, what }: Wait, sideMm: number): readonly Line[] {
  const most = mostMin === undefined ? "" : ` Go on within ${waitWords(mostMin)}.`;
  const long = leastMin === wellMin ? waitWords(wellMin) : `${waitWords(leastMin)}, better ${waitWords(wellMin)}`;
  return [...lines(`Then wait ${long}:`, sideMm, smallStrong), ...lines(`${what}.${most}`, sideMm, small), clockLine("L", sideMm), clockLine("R", sideMm)];
}

/** Room to write from when and until when. */
function clockLine(shoe: string, sideMm: number): Line {
  return {
    highMm: 6.4,
    ink: (ink, x, top) => {
      const y = top - 5.2;
      ink.text(`${shoe}  from`, x, y, 2);
      ink.text("until", x + 28, y, 2);
      ink.style(0.18);
      ink.line(x + 10, y - 0.6, x + 27, y - 0.6);
      ink.line(x + 35, y - 0.6, x + sideMm, y - 0.6);
    },
  };
}
