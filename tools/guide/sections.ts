import type { Xy } from "#pieces/piece.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Lettering, Stroke } from "#sheets/pen.ts";

/**
 * Sections through edges and seams of the upper, many times as large as they are. Along x to the right the edge is reached at 0, y up is
 * the grain side of the upper, mm of the shoe; widths and thicknesses are those of the rules.
 */
export interface Section {
  readonly words: string;
  readonly leathers: readonly (readonly Xy[])[];
  /** Where the thread goes through. */
  readonly stitches: readonly (readonly [Xy, Xy])[];
  readonly named: readonly { readonly text: string; readonly at: Xy; readonly of: Xy }[];
}

/** What is left of a skived fold or seam, tape and thread are thin (common practice, no source). */
const skivedMm = 0.5;
const tapeMm = 0.25;
const farMm = -17;

/** Leather along a line of its middle: its two faces, `thick` across at each point. */
function leather(line: readonly Xy[], thick: (x: number, i: number) => number): readonly Xy[] {
  const faces = line.map(([x, y], i) => {
    const [ax, ay] = line[Math.max(0, i - 1)]!, [bx, by] = line[Math.min(line.length - 1, i + 1)]!;
    const long = Math.hypot(bx - ax, by - ay) || 1, half = thick(x, i) / 2;
    const n = [(-half * (by - ay)) / long, (half * (bx - ax)) / long] as const;
    return [[x + n[0], y + n[1]], [x - n[0], y - n[1]]] as const;
  });
  return [...faces.map(([a]) => a), ...faces.map(([, b]) => b).reverse()];
}

/** Half a circle round (x, y) from straight above to straight below, `sign` 1 to the right, in steps by a rational parameter. */
const turn = (x: number, y: number, r: number, sign: 1 | -1, down: 1 | -1): readonly Xy[] =>
  Array.from({ length: 13 }, (_, k): Xy => {
    const t = k / 6 - 1, size = 1 + t * t;
    return [x + (sign * r * (1 - t * t)) / size, y - (down * 2 * r * t) / size];
  });
const flat = (from: number, to: number, y: number): readonly Xy[] => Array.from({ length: 9 }, (_, k): Xy => [from + ((to - from) * k) / 8, y]);
const sheet = (from: number, to: number, top: number, thick: number): readonly Xy[] => leather(flat(from, to, top - thick / 2), () => thick);

export function edgeSections(s: PieceSettings): readonly Section[] {
  const upper = s.upperThicknessMm, lining = s.liningThicknessMm, fold = s.toplineFoldMm;
  const folded = (tape: boolean): Section => {
    const gap = tape ? tapeMm : 0.1, r = (skivedMm + gap) / 2, begins = -(fold + s.skiveFoldMoreMm);
    const thick = (x: number, i: number): number => (i > 16 || x > begins ? skivedMm : x > begins - 2 ? skivedMm + ((upper - skivedMm) * (begins - x)) / 2 : upper);
    const middle = flat(farMm, -r, 0).map(([x], i): Xy => [x, -thick(x, i) / 2]);
    const under = -skivedMm / 2 - 2 * r;
    // Closer points where the skive begins.
    const top = [...middle, ...flat(begins - 2, -r, 0).map(([x], i): Xy => [x, -thick(x, i) / 2])].sort((a, b) => a[0] - b[0]);
    const line = [...top, ...turn(-r, -skivedMm / 2 - r, r, 1, 1), ...flat(-r, -fold, under)];
    const lies = under - skivedMm / 2 - 0.15;
    const name = tape ? [{ text: `tape ${s.foldTapeMm}`, at: [-6.5, 2.6] as Xy, of: [-2.4, -skivedMm - 0.1] as Xy }] : [];
    return {
      words: tape ? "taped" : "folded",
      leathers: [leather(line, (x, i) => (i >= top.length ? skivedMm : thick(x, 0))), ...(tape ? [sheet(-s.foldTapeMm - 0.1, -r / 2, -skivedMm - 0.02, 0.2)] : []), sheet(farMm, s.liningTrimMm, lies, lining)],
      stitches: [through(-s.stitchInMm, 0.4, lies - lining - 0.4)],
      named: [{ text: "upper", at: [-16, 1.2], of: [-15, -0.3] }, ...name, { text: `fold ${fold}, skived`, at: [-12.5, -5], of: [-fold + 0.4, under] }, { text: "lining, trimmed", at: [-2.5, -5], of: [s.liningTrimMm - 0.6, lies - lining] }],
    };
  };
  const plain = (words: string, more: Partial<Section>): Section => ({
    words,
    leathers: [sheet(farMm, 0, 0, upper), ...(more.leathers ?? [])],
    stitches: more.stitches ?? [],
    named: [{ text: "upper, cut net", at: [-16, 1.6], of: [-15, -0.3] }, ...(more.named ?? [])],
  });
  const under = sheet(farMm, s.liningTrimMm, -upper - 0.15, lining);
  return [
    folded(true),
    folded(false),
    plain("raw", { leathers: [under], stitches: [through(-s.stitchInMm, 0.4, -upper - lining - 0.6)], named: [{ text: "lining, trimmed", at: [-4, -4.6], of: [s.liningTrimMm - 0.6, -upper - lining] }] }),
    bound(s, plain),
    wrapped(s, plain),
    bagged(s),
  ];
}

type Plain = (words: string, more: Partial<Section>) => Section;

/** Grain to grain along the edge, turned over it and down inside. */
function bound(s: PieceSettings, plain: Plain): Section {
  const t = s.bindingThickMm, upper = s.upperThicknessMm, seam = 2.5, r = t / 2 + 0.05, round = (upper + t) / 2 + t + 0.05;
  const above = 0.05 + t / 2, over = above + 2 * r;
  const left = s.bindingBoundMm - 2 * seam - 3 * round;
  const line = [...flat(0.1, -seam, above), ...turn(-seam, above + r, r, -1, -1), ...flat(-seam, 0, over), ...turn(0, over - (over + upper + t / 2 + 0.05) / 2, (over + upper + t / 2 + 0.05) / 2, 1, 1), ...flat(0, -left, -upper - 0.05 - t / 2)];
  const lies = -upper - t - 0.2;
  return plain("bound", {
    leathers: [leather(line, () => t), sheet(farMm, -0.6, lies, s.liningThicknessMm)],
    stitches: [through(-seam + 0.5, over + 0.1, -upper - 0.3)],
    named: [{ text: `strip ${s.bindingBoundMm} wide`, at: [-7, 3.4], of: [-1, over + 0.2] }, { text: "lining", at: [-16, -4.8], of: [-14, lies - s.liningThicknessMm] }],
  });
}

/** Round the edge, its own edges turned in on both sides. */
function wrapped(s: PieceSettings, plain: Plain): Section {
  const t = s.bindingThickMm / 2 + 0.05, upper = s.upperThicknessMm, inMm = 4, seen = (s.bindingWrappedMm - 2 * inMm) / 2 - 0.8, r = t / 2 + 0.05;
  const low = 0.05 + t / 2, high = low + 2 * r, lies = -upper - s.liningThicknessMm - 0.15;
  const big = (2 * high - lies) / 2;
  const line = [
    ...flat(-seen + inMm, -seen, low), ...turn(-seen, low + r, r, -1, -1), ...flat(-seen, 0, high),
    ...turn(0, high - big, big, 1, 1), ...flat(0, -seen, lies - high), ...turn(-seen, lies - low - r, r, -1, -1), ...flat(-seen, -seen + inMm, lies - low),
  ];
  return plain("wrapped", {
    leathers: [sheet(farMm, 0, -upper - 0.15, s.liningThicknessMm), leather(line, () => t)],
    stitches: [through(-seen + 1.5, high + 0.5, lies - high - 0.5)],
    named: [{ text: `strip ${s.bindingWrappedMm} wide`, at: [-7, 3.4], of: [-1, high + 0.2] }, { text: "lining", at: [-16, -4.8], of: [-14, -upper - s.liningThicknessMm] }],
  });
}

/** Upper and lining sewn grain to grain and turned out. */
function bagged(s: PieceSettings): Section {
  const t = skivedMm + 0.1, r = (t + 0.1) / 2, upper = s.upperThicknessMm, lining = s.liningThicknessMm;
  const thick = (whole: number) => (x: number) => (x > -s.toplineBagMm - 1 ? t : x > -s.toplineBagMm - 3 ? t + ((whole - t) * (-s.toplineBagMm - 1 - x)) / 2 : whole);
  const of = thick(upper), mid = [...flat(farMm, -s.toplineBagMm - 3, 0), ...flat(-s.toplineBagMm - 2.9, -r, 0)].map(([x]): Xy => [x, -of(x) / 2]);
  const one = [...mid, ...turn(-r, -t / 2 - r, r, 1, 1), ...flat(-r, -s.toplineBagMm, -t / 2 - 2 * r)];
  const depth = -2 * t - 4 * r - 0.05;
  const inside = thick(lining), low = [...flat(farMm, -s.toplineBagMm - 3, 0), ...flat(-s.toplineBagMm - 2.9, -r - 0.3, 0)].map(([x]): Xy => [x, depth + inside(x) / 2]);
  const two = [...low, ...turn(-r - 0.3, depth + t / 2 + r, r, 1, -1), ...flat(-r - 0.3, -s.toplineBagMm, depth + t / 2 + 2 * r)];
  return {
    words: "bagged",
    leathers: [leather(one, (x, i) => (i < mid.length ? of(x) : t)), leather(two, (x, i) => (i < low.length ? inside(x) : t))],
    stitches: [through(-0.9, -t, depth + t)],
    named: [{ text: "upper", at: [-16, 1.2], of: [-15, -0.3] }, { text: `seam ${s.toplineBagMm} inside`, at: [-9, 2.6], of: [-2, -t - r] }, { text: "lining", at: [-16, -4.8], of: [-14, depth + 0.2] }],
  };
}

export function seamSections(s: PieceSettings): readonly Section[] {
  const t = s.upperThicknessMm, thin = 0.75, end = 11, gap = 0.04;
  const skive = s.skiveSeamMm - s.seamMm;
  /** Turned down at the seam, its allowance rubbed down flat beneath. */
  const bank = (sign: 1 | -1): readonly Xy[] =>
    ([[gap, -0.3], [0.25, 0], [end, 0], [end, -t], [skive + 1.5, -t], [skive, -thin], [thin + gap, -thin], [thin + gap, -thin - gap], [s.seamMm + thin, -thin - gap], [s.seamMm + thin, -2 * thin - gap], [gap, -2 * thin - gap]] as const).map(([x, y]): Xy => [sign * x, y]);
  const closed: Section = {
    words: "closed",
    leathers: [bank(-1), bank(1), sheet(-s.seamTapeMm / 2, s.seamTapeMm / 2, -2 * thin - 0.2, 0.25)],
    stitches: [[[-1.2, -0.8], [1.2, -0.8]]],
    named: [{ text: `seam ${s.seamMm}, opened`, at: [-10, -4.8], of: [-s.seamMm + 0.3, -1.5 * thin] }, { text: `tape ${s.seamTapeMm}`, at: [3, -4.8], of: [4, -2 * thin - 0.35] }],
  };
  const taper = (x: number): number => (x > s.lapUnderMm - s.skiveLapMm ? 0.65 : t);
  const under = [...flat(-end, s.lapUnderMm - s.skiveLapMm - 2, 0), ...flat(s.lapUnderMm - s.skiveLapMm + 0.1, s.lapUnderMm, 0)].map(([x]): Xy => [x, -t - taper(x) / 2]);
  const over = [...flat(0, s.skiveRawMm, 0), ...flat(s.skiveRawMm + 2, end, 0)].map(([x]): Xy => [x, -(x > s.skiveRawMm ? t : 0.8) / 2]);
  const lapped: Section = {
    words: "lapped",
    leathers: [leather(over, (x) => (x > s.skiveRawMm ? t : 0.8)), leather(under.map(([x, y]): Xy => [x, y + 0.05]), taper)],
    stitches: [through(s.stitchInMm, 0.4, -t - 1.2)],
    named: [{ text: "vamp, over", at: [5, 1.8], of: [9, -0.2] }, { text: `quarter, ${s.lapUnderMm} under`, at: [-10, -4.8], of: [-3, -t - 0.8] }],
  };
  const butted: Section = {
    words: "butted",
    leathers: [sheet(-end, -0.03, 0, t), sheet(0.03, end, 0, t)],
    stitches: [through(-1.2, 0.4, -t - 0.4), through(1.2, 0.4, -t - 0.4)],
    named: [{ text: "edge to edge, zigzag", at: [-7, -4.2], of: [-1.2, -t - 0.4] }],
  };
  return [closed, lapped, butted];
}

/** Straight down through all. */
function through(x: number, from: number, to: number): readonly [Xy, Xy] {
  return [[x, from], [x, to]];
}

/** How many times as large sections are drawn. */
const times = 4;

/** Sections side by side in rows of three, as strokes and words. */
export function drawSections(sections: readonly Section[], [fromX, toX]: readonly [number, number]): { readonly strokes: readonly Stroke[]; readonly words: readonly Lettering[]; readonly widthMm: number; readonly heightMm: number } {
  const cell = { width: times * (toX - fromX) + 8, height: 48 }, columns = 3, rows = Math.ceil(sections.length / columns);
  const strokes: Stroke[] = [], words: Lettering[] = [];
  sections.forEach((section, i) => {
    const at = ([x, y]: Xy): Xy => [6 + (i % columns) * cell.width + times * (x - fromX), (rows - 1 - Math.floor(i / columns)) * cell.height + 28 + times * y];
    const stroke = (kind: Stroke["kind"], points: readonly Xy[], closed: boolean): void => void strokes.push({ kind, xy: Float64Array.from(points.map(at).flat()), closed });
    for (const ring of section.leathers) stroke("cut", ring, true);
    for (const thread of section.stitches) stroke("stitch", thread, false);
    for (const { text, at: where, of } of section.named) {
      stroke("leader", [[where[0] + 1.4, where[1] + (of[1] < where[1] ? -0.3 : 1)], of], false);
      const [xMm, yMm] = at(where);
      words.push({ text, xMm, yMm, heightMm: 2.5, angleDeg: 0, bold: false });
    }
    const [xMm] = at([fromX, 0]);
    words.push({ text: section.words, xMm, yMm: at([0, 0])[1] + 15, heightMm: 3.5, angleDeg: 0, bold: true });
  });
  return { strokes, words, widthMm: columns * cell.width + 6, heightMm: rows * cell.height };
}
