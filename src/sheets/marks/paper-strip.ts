import { textWidth } from "../lettering.ts";
import { half, spread, tickName, zeroName, type Strip } from "./strips.ts";
import type { StripInk } from "./strip-ink.ts";

/** A place on a strip, mm from its zero. A draft stands by its number alone. */
export interface StripPlace {
  readonly key: string;
  readonly lengthMm: number;
  /** What is written, where a strip begins farther on. */
  readonly toldMm?: number;
  readonly letter?: string;
  readonly draft?: number;
}

/** A strip of paper that is cut out and stuck to one last. */
export interface PaperStrip {
  readonly name: string;
  readonly title: string;
  readonly zero: string;
  /** What is beyond the zero: folded under round the feather edge, stuck on, or cut off there. */
  readonly start: "fold" | "stick" | "cut";
  /** What is beyond its last place: paper to stick the next strip on, a little rest, or nothing. */
  readonly end: "stick" | "rest" | "cut";
  readonly places: readonly StripPlace[];
}

export const tabMm = 8;
const restMm = 2;
/** Rows from the measuring edge: drafts' numbers, marks' letters, title. */
const rows = { draft: 0.8, mark: 5.6, title: 11 } as const;
export const flankStripMm = 15;
/** Without drafts the other two rows move down. */
export const lowStripMm = 13.6;
/** A mark's tick ends so far below the foot of its letter. */
const belowLetterMm = 0.8;
const letterMm = 3.5, numberMm = 2.2, titleMm = 2.5;
export const foldDash = [6, 1.2, 0.8, 1.2, 0.8, 1.2] as const;

export const lengthOf = ({ places }: PaperStrip): number => Math.max(...places.map((p) => p.lengthMm));
export const beforeMm = ({ start }: PaperStrip): number => (start === "cut" ? 0 : tabMm);
export const afterMm = ({ end }: PaperStrip): number => (end === "stick" ? tabMm : end === "rest" ? restMm : 0);
const highOf = ({ places }: PaperStrip): number => (places.some((p) => p.draft !== undefined) ? flankStripMm : lowStripMm);

/** Draws a strip and returns what it is read back by. */
export function inkPaperStrip(ink: StripInk, strip: PaperStrip): Strip {
  const { name, title, zero, start, end, places } = strip;
  const high = highOf(strip), length = lengthOf(strip), drop = flankStripMm - high;
  const row = { mark: rows.mark - drop, title: rows.title - drop };
  ink.style(0.35);
  const [from, to] = [-beforeMm(strip), length + afterMm(strip)];
  ink.ring([from, 0, to, 0, to, high, from, high]);
  ink.style(start === "fold" ? 0.25 : 0.35, start === "fold" ? foldDash : []);
  ink.named(zeroName(name), 0, 0, 0, high);
  if (start !== "cut") ink.words(start === "fold" ? "fold" : "stick", from + 0.8, high - 3.4, 1.8);
  if (start === "fold") ink.words("under", from + 0.8, high - 6, 1.8);
  if (end === "stick") ink.words("stick", length + 0.8, high - 3.4, 1.8);
  ink.words(title, 1.2, row.title, titleMm, true);
  ink.words(zero, 1.2, row.mark, 1.8);
  inkMarks(ink, places.filter((p) => p.letter), { from: 1.2 + textWidth(zero, 1.8) + 1, to: length, high, row: row.mark, joined: end === "stick" });
  inkDrafts(ink, places, to);
  return { name, zero, title: [title], marks: places.filter((p) => p.lengthMm > 0).map((p) => ({ key: p.key, tick: p.letter ?? `${p.draft}`, words: "", lengthMm: p.lengthMm })) };
}

interface Row {
  readonly from: number;
  readonly to: number;
  readonly high: number;
  readonly row: number;
  readonly joined: boolean;
}

/** Marks: a tick from the measuring edge, the letter and its length before it, aside where others are in the way. */
function inkMarks(ink: StripInk, places: readonly StripPlace[], { from, to, high, row, joined }: Row): void {
  const sizes = places.map((p) => wide(p) + 1.4);
  const middles = spread(places.map((p, i) => p.lengthMm - sizes[i]! / 2), sizes, from, to);
  places.forEach((p, i) => {
    const last = joined && i === places.length - 1;
    ink.style(0.35);
    // Where the next strip is stuck on, the line runs right across.
    ink.named(tickName(p), p.lengthMm, 0, p.lengthMm, last ? high : row - belowLetterMm);
    const begin = middles[i]! - sizes[i]! / 2 + 0.3, end = begin + wide(p);
    if (p.lengthMm - end > 1.6 || p.lengthMm < end) {
      ink.style(0.18);
      ink.line(p.lengthMm, row - belowLetterMm, Math.min(Math.max(p.lengthMm, begin), end), row - 0.3);
    }
    // The letter is read first, whichever way the words run.
    const [letter, number] = [textWidth(p.letter!, letterMm, true), textWidth(told(p), numberMm)];
    ink.words(p.letter!, ink.backward ? begin + number + 0.7 : begin, row, letterMm, true);
    ink.words(told(p), ink.backward ? begin : begin + letter + 0.7, row, numberMm);
  });
}

const told = (p: StripPlace): string => half(p.toldMm ?? p.lengthMm);
const wide = (p: StripPlace): number => textWidth(p.letter!, letterMm, true) + 0.7 + textWidth(told(p), numberMm);

/** Drafts: a short tick and the number, on the side where no mark's tick is. */
function inkDrafts(ink: StripInk, places: readonly StripPlace[], to: number): void {
  for (const { key, draft, lengthMm } of places) {
    if (draft === undefined) continue;
    const text = draftWord(draft);
    const size = textWidth(text, titleMm, true);
    if (lengthMm > 0) {
      ink.style(0.35);
      ink.named(tickName({ key }), lengthMm, 0, lengthMm, 3.6);
    }
    const free = (a: number, b: number): boolean => a >= 0 && b <= to && places.every((p) => p.lengthMm <= a || p.lengthMm >= b || p.lengthMm === lengthMm);
    const right = free(lengthMm + 0.6, lengthMm + 0.6 + size) || lengthMm < size + 1;
    ink.words(text, right ? lengthMm + 0.6 : lengthMm - 0.6 - size, rows.draft, titleMm, true);
  }
}

/** A 6 and a 9 have a dot, as on the pieces. */
export const draftWord = (draft: number): string => (draft === 6 || draft === 9 ? `${draft}.` : String(draft));

/** A place must be so far from where a strip is cut in two, mm. */
const clearMm = 6;

/** The strip in as many parts as it takes for none to be longer than `roomMm`, each stuck on the one before. */
export function partsWithin(strip: PaperStrip, roomMm: number): readonly PaperStrip[] {
  const length = lengthOf(strip);
  if (beforeMm(strip) + length + afterMm(strip) <= roomMm) return [strip];
  const wished = Math.min(length / 2, roomMm - 2 * tabMm);
  const near = (u: number): number => Math.min(...strip.places.map((p) => Math.abs(p.lengthMm - u)));
  const cuts = Array.from({ length: 40 }, (_, k) => wished - k);
  const cut = cuts.find((u) => near(u) >= clearMm) ?? wished;
  const joint = { key: `${strip.name}-cut`, letter: "+", lengthMm: cut };
  const first: PaperStrip = { ...strip, title: `${strip.title}, 1`, end: "stick", places: [...strip.places.filter((p) => p.lengthMm < cut), joint] };
  const rest: PaperStrip = {
    ...strip,
    name: `${strip.name}-on`,
    title: `${strip.title}, 2`,
    zero: `+ ${half(cut)}`,
    start: "cut",
    places: strip.places.filter((p) => p.lengthMm > cut).map((p) => ({ ...p, lengthMm: p.lengthMm - cut, toldMm: p.toldMm ?? p.lengthMm })),
  };
  return [first, ...partsWithin(rest, roomMm)];
}
