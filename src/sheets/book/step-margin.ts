import { minutesWords } from "#making/amounts/time-words.ts";
import type { HazardId } from "#making/care/hazards.ts";
import type { Step, Wait } from "#making/steps/step.ts";
import type { Line } from "./block.ts";
import { cautionAnchor, type PagedBook } from "./book.ts";
import { capital, listed } from "#base/listed.ts";
import { waitWords } from "./numbers.ts";
import { blank, labelled, lines, reading, readingStrong, small, together } from "./words.ts";

export interface StepMargin {
  /** Time, what it comes after and what to take care of: on the page that the step begins on. */
  readonly first: readonly Line[];
  /** What it needs. */
  readonly needs: readonly Line[];
  /** What dries or rests and how long, with room for the clock; so wide, mm. */
  readonly wait?: (width: number) => readonly Line[];
}

/** What stands beside a step. */
export function besideStep(book: PagedBook, step: Step, sideMm: number): StepMargin {
  const { steps } = book.input.making;
  const place = (id: string): number => steps.findIndex((s) => s.id === id) + 1;
  const own = place(step.id), after = step.after.map(place).filter((n) => n > 0).sort((a, b) => a - b);
  const afterWords = after.length === 0 || (after.length === 1 && after[0] === own - 1) ? "" : `After ${after.length === 1 ? "step" : "steps"} ${listed(after.map(String))}.`;
  const needed = listed([...step.needs.goods, ...step.needs.tools]);
  return {
    first: [...lines(`${minutesWords(step.minutes)}${step.shoes === "together" ? ", both shoes together" : ", one shoe after the other"}. ${afterWords}`, sideMm, small), ...careLines(book, step, sideMm)],
    needs: needed ? [blank(0.8), together(lines(`${capital(needed)}.`, sideMm, small))] : [],
    ...(step.wait && { wait: (width: number) => [blank(1), together(waitLines(step.wait!, width))] }),
  };
}

/** "Take care", then each caution in a line with the page that tells all of it; what the page has told above already by name. */
function careLines(book: PagedBook, { id, hazards }: Step, sideMm: number): readonly Line[] {
  const { cautions } = book.input.making;
  const care = hazards.flatMap((hazard) => cautions.filter((c) => c.hazard === hazard));
  if (care.length === 0) return [];
  const placed = (hazard: HazardId): string => `${hazard}, page ${book.pageOf(cautionAnchor(hazard))}`;
  const full = care.filter(({ hazard }) => book.inFull(id, hazard)), named = care.filter((c) => !full.includes(c));
  const told = [
    ...lines("Take care", sideMm - 3, readingStrong),
    ...full.flatMap(({ hazard, short }) => labelled(`${capital(placed(hazard))}:`, short, sideMm - 3, reading)),
    ...(named.length > 0 ? labelled("As above:", `${named.map(({ hazard }) => placed(hazard)).join("; ")}.`, sideMm - 3, reading) : []),
  ];
  return [blank(0.8), barred(told)];
}

/** Lines with an upright line beside them. */
function barred(told: readonly Line[]): Line {
  const words = together(told, 3);
  return {
    ...words,
    ink: (ink, x, top) => {
      ink.style(0.7);
      ink.line(x + 0.4, top - 0.2, x + 0.4, top - words.highMm + 0.4);
      words.ink(ink, x, top);
    },
  };
}

function waitLines({ leastMin, wellMin, mostMin, what }: Wait, width: number): readonly Line[] {
  const most = mostMin === undefined ? "" : ` Go on within ${waitWords(mostMin)}.`;
  const long = leastMin === wellMin ? waitWords(wellMin) : `${waitWords(leastMin)}, better ${waitWords(wellMin)}`;
  const clocks = width >= 2 * clockMm + clockGapMm ? [clockLine(["L", "R"])] : [clockLine(["L"]), clockLine(["R"])];
  return [...labelled(wellMin === 0 ? "Then at once:" : `Then wait ${long}:`, `${what}.${most}`, width, small), ...clocks];
}

const clockMm = 44;
const clockGapMm = 6;

/** Room to write from when and until when, for one shoe or for both side by side. */
const clockLine = (shoes: readonly string[]): Line => ({
  highMm: 6.4,
  ink: (ink, x, top) => {
    const y = top - 5.2;
    ink.style(0.18);
    shoes.forEach((shoe, i) => {
      const left = x + i * (clockMm + clockGapMm);
      ink.text(`${shoe}  from`, left, y, 2);
      ink.line(left + 10, y - 0.6, left + 25, y - 0.6);
      ink.text("until", left + 26, y, 2);
      ink.line(left + 33, y - 0.6, left + clockMm, y - 0.6);
    });
  },
});
