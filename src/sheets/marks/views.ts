import type { Gauges } from "#lasting/gauges.ts";
import { markOf, marksOf, type GaugeMark } from "#lasting/gauges.ts";
import type { Last, Point3 } from "#last/last.ts";
import { featherHalf, type Half } from "#lines/feather.ts";
import type { Lines } from "#lines/lines.ts";
import { textWidth } from "../lettering.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { half as halfMm, spread } from "./strips.ts";
import { sideWords } from "./tape-marks.ts";

type Xy = readonly [number, number];
export interface Viewed {
  readonly last: Last;
  readonly lines: Lines;
  readonly gauges: Gauges;
}
const letterMm = 2.5;
const numberMm = 2.2;

/** The last from the outside or the inside, with its topline half, every mark by its letter and the lengths written where they are taken. */
export function inkSideView(ink: PageInk, { last, lines, gauges }: Viewed, half: Half, left: number, bottom: number, width: number): void {
  const { x0, scale } = sideScale(last, width);
  // The toe points right when the side that is nearer to us lies on the right of the last's way forward.
  const toeRight = (last.side === "right") === (half === "lateral");
  const at = ([x, , z]: Point3): Xy => [toeRight ? left + scale * (x - x0) : left + width - scale * (x - x0), bottom + scale * z];
  const curve = (points: Float64Array): number[] => thinned(points).flatMap((p) => at(p));
  ink.style(0.25);
  for (const { points } of [last.bottomCentre, last.centreRidge, last.backCurve]) ink.stroke(curve(points));
  ink.stroke([...curve(last.centreRidge.points).slice(-2), ...curve(last.backCurve.points).slice(-2)]);
  ink.style(0.18, [1.5, 1]);
  ink.stroke(curve(featherHalf(last.feather, half).points));
  ink.style(0.5);
  ink.stroke(curve((half === "medial" ? lines.toplineMedial : lines.toplineLateral).points));
  ink.style(0.35);
  ink.stroke(curve(lines.centre.points));
  ink.stroke(curve(lines.back.points));
  const marks = marksOf(gauges, half);
  const foot = bottom + scale * Math.min(6, ...marks.map((m) => (m.foot ?? m.at)[2])) - 1;
  inkHeights(ink, marks, at);
  inkFeet(ink, marks.filter((m) => m.letter !== "F" && m.letter !== "H"), at, foot, [left, left + width]);
  inkLowest(ink, marks.find((m) => m.letter === "F")!, at, foot);
  const line = marks.find((m) => m.letter === "H");
  if (line?.way) {
    ink.style(0.18, [2, 0.8, 0.4, 0.8]);
    ink.stroke(curve(line.way));
    const [x, y] = at(pointHalfWay(line.way));
    const text = `H ${halfMm(line.lengthMm!)}`;
    // Towards the toe the wall below the vamp is free of other lines.
    ink.text(text, toeRight ? x + 1.2 : x - 1.2 - textWidth(text, numberMm), y - 1.5, numberMm);
  }
  inkCentre(ink, gauges, at, toeRight);
  const words = `${sideWords[half]} of the ${last.side} last`;
  ink.text(words, left + width / 2 - textWidth(words, 2.5, true) / 2, foot - 12.5, 2.5, { bold: true });
}

/** Heights as thin lines with their number beside them. */
function inkHeights(ink: PageInk, marks: readonly GaugeMark[], at: (p: Point3) => Xy): void {
  const low = marks.find((m) => m.letter === "F")!;
  for (const m of marks) {
    if (!"CDE".includes(m.letter)) continue;
    ink.style(0.18);
    ink.line(...at(m.foot!), ...at(m.at));
    const text = halfMm(m.lengthMm!), x = at(m.at)[0], size = textWidth(text, numberMm);
    const toLow = at(low.at)[0] - x;
    // The number stands to the right of its line, or to the left where the line of the lowest place would run through it.
    const aside = toLow > 0 && toLow < size + 2;
    const from = at(m.foot!)[1], high = at(m.at)[1] - from;
    ink.text(text, aside ? x - 0.8 - size : x + 0.8, from + (aside ? 0.22 : 0.55) * high - 1, numberMm);
  }
}

/** Letters of what lies on the feather line in one row below, spread where they would meet. */
function inkFeet(ink: PageInk, marks: readonly GaugeMark[], at: (p: Point3) => Xy, foot: number, [from, to]: readonly [number, number]): void {
  const feet = marks.map((m) => at(m.foot ?? m.at));
  const middles = spread(feet.map(([x]) => x), feet.map(() => 3.4), from, to);
  marks.forEach((m, i) => {
    const [x, y] = feet[i]!;
    ink.style(0.18);
    ink.stroke([x, y + 0.8, x, y - 0.8, middles[i]!, foot - 0.8]);
    ink.text(m.letter, middles[i]! - textWidth(m.letter, letterMm, true) / 2, foot - 3.6, letterMm, { bold: true });
  });
}

/** The lowest place often lies close to a quarter: its words stand a row lower. */
function inkLowest(ink: PageInk, low: GaugeMark, at: (p: Point3) => Xy, foot: number): void {
  const text = `F ${halfMm(low.lengthMm!)}`, x = at(low.foot!)[0];
  ink.style(0.18, [0.8, 0.8]);
  ink.line(...at(low.foot!), ...at(low.at));
  ink.line(x, at(low.foot!)[1], x, foot - 4.6);
  ink.text(text, x - textWidth(text, letterMm, true) / 2, foot - 7.6, letterMm, { bold: true });
}

/** What lies on the centre: throat and back with their lengths, stiffener, puff and notches by their letters. */
function inkCentre(ink: PageInk, gauges: Gauges, at: (p: Point3) => Xy, toeRight: boolean): void {
  const way = toeRight ? 1 : -1;
  const put = (key: string, dx: number, dy: number, withLength: boolean): void => {
    const mark = markOf(gauges, key);
    if (!mark) return;
    const [x, y] = at(mark.at);
    dot(ink, [x, y]);
    const text = withLength ? `${mark.letter} ${halfMm(mark.lengthMm!)}` : mark.letter;
    const size = textWidth(text, letterMm, true);
    ink.text(text, way * dx > 0 ? x + Math.abs(dx) : x - Math.abs(dx) - size, y + dy, letterMm, { bold: true });
  };
  put("throat", 1.2, 2.2, true);
  put("back", 2, 1.4, true);
  put("stiffener-top", 1.6, -1.8, false);
  put("puff", 1.2, 1.6, false);
  put("toe-notch", 1.6, -1, false);
  put("seat-notch", -1.6, -2.4, false);
}

/** How high the side view is at a width, mm. */
export function sideViewHeight(last: Last, width: number): number {
  return sideScale(last, width).scale * Math.max(...every3(last.centreRidge.points, 2), ...every3(last.backCurve.points, 2));
}

/** How high the top view is at a width, mm. */
export function topViewHeight({ feather, landmarks }: Last, width: number): number {
  const ys = every3(feather.points, 1);
  return ((Math.max(...ys) - Math.min(...ys)) * width) / (landmarks.toePoint[0] - landmarks.seatPoint[0]);
}

function sideScale(last: Last, width: number): { readonly x0: number; readonly scale: number } {
  const x0 = Math.min(...every3(last.backCurve.points, 0));
  const x1 = Math.max(...every3(last.centreRidge.points, 0), ...every3(last.backCurve.points, 0));
  return { x0, scale: width / (x1 - x0) };
}

/** The last from above: feather line, topline, the marks' places outside it by their letters and the drafts inside it by their numbers. */
export function inkTopView(ink: PageInk, { last, lines, gauges }: Viewed, left: number, middle: number, width: number): void {
  const toe = last.landmarks.toePoint, seat = last.landmarks.seatPoint;
  const scale = width / (toe[0] - seat[0]);
  const at = ([x, y]: Point3): Xy => [left + scale * (x - seat[0]), middle + scale * y];
  const curve = (points: Float64Array): number[] => thinned(points).flatMap((p) => at(p));
  ink.style(0.25);
  ink.stroke(curve(last.feather.points), true);
  ink.style(0.5);
  ink.stroke(curve(lines.toplineMedial.points));
  ink.stroke(curve(lines.toplineLateral.points));
  ink.style(0.18, [4, 1, 0.6, 1]);
  ink.line(...at(seat), ...at(toe));
  for (const half of ["medial", "lateral"] as const) {
    const up = (last.side === "right") === (half === "medial") ? 1 : -1;
    const marks = marksOf(gauges, half).filter((m) => m.letter !== "H");
    const feet = marks.map((m) => at(m.foot ?? m.at));
    const middles = spread(feet.map(([x]) => x), feet.map(() => 3.6), left, left + width);
    marks.forEach((m, i) => {
      const [x, y] = feet[i]!;
      ink.style(0.18);
      ink.stroke([x, y - 0.8 * up, x, y + 0.8 * up, middles[i]!, y + 2 * up]);
      ink.text(m.letter, middles[i]! - textWidth(m.letter, letterMm, true) / 2, up > 0 ? y + 2.6 : y - 2.6 - letterMm, letterMm, { bold: true });
    });
    const way = marksOf(gauges, half).find((m) => m.way)?.way;
    ink.style(0.18, [2, 0.8, 0.4, 0.8]);
    if (way) ink.stroke(curve(way));
    const word = sideWords[half].toLowerCase();
    ink.text(word, left + 0.3 * width, middle + up * 4 - 1, 2.2);
  }
  inkDrafts(ink, gauges, at, middle);
  ink.text("P", at(seat)[0] - 1.5 - textWidth("P", letterMm, true), middle - 1.2, letterMm, { bold: true });
  ink.text("N", at(toe)[0] + 1.5, middle - 1.2, letterMm, { bold: true });
}

/** Each draft's number inside the feather line with a short line where the pincers bite. */
function inkDrafts(ink: PageInk, { drafts }: Gauges, at: (p: Point3) => Xy, middle: number): void {
  for (const d of drafts) {
    const [x, y] = at(d.at);
    const text = String(d.number), size = textWidth(text, letterMm);
    const inward = Math.abs(y - middle) < 1 ? 0 : y > middle ? -1 : 1;
    // On the centre the number stands beside its end, along the last.
    const along = inward !== 0 ? 0 : d.alongMm === 0 ? 1 : -1;
    ink.style(0.35);
    ink.line(x + along * 1, y + inward * 1, x + along * 2.6, y + inward * 2.6);
    ink.text(text, x + (along === 0 ? 2.4 : along * 5) - size / 2, y + inward * 4.2 - letterMm / 2 + (along === 0 ? 0 : 2.4), letterMm);
  }
}

const dot = (ink: PageInk, [x, y]: Xy): void => {
  ink.style(0.35);
  ink.stroke([x - 0.7, y, x, y + 0.7, x + 0.7, y, x, y - 0.7], true);
};

/** About a hundred points of a curve, its ends kept. */
function thinned(points: Float64Array): readonly Point3[] {
  const n = points.length / 3, every = Math.max(1, Math.floor(n / 100));
  const at = (i: number): Point3 => [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!];
  const out: Point3[] = [];
  for (let i = 0; i < n - 1; i += every) out.push(at(i));
  out.push(at(n - 1));
  return out;
}

const pointHalfWay = (way: Float64Array): Point3 => {
  const i = 3 * Math.floor(way.length / 6);
  return [way[i]!, way[i + 1]!, way[i + 2]!];
};

/** Every third number from `first` on: x, y or z of points. */
function every3(points: Float64Array, first: 0 | 1 | 2): number[] {
  const out: number[] = [];
  for (let i = first; i < points.length; i += 3) out.push(points[i]!);
  return out;
}
