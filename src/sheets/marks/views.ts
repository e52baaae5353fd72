import type { Last, Point3 } from "#last/last.ts";
import { featherHalf, type Half } from "#lines/feather.ts";
import type { HeightMark, Lines } from "#lines/lines.ts";
import { textWidth } from "../lettering.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { half as halfMm } from "./strips.ts";
import { quarterWords, sideWords, type TapeMarks } from "./tape-marks.ts";

/** The last from the outside or the inside, with its topline half and the lengths written where they are taken. */
export function inkSideView(ink: PageInk, last: Last, lines: Lines, marks: TapeMarks, half: Half, left: number, bottom: number, width: number): void {
  const { x0, scale } = sideScale(last, width);
  // The toe points right when the side that is nearer to us lies on the right of the last's way forward.
  const toeRight = (last.side === "right") === (half === "lateral");
  const at = ([x, , z]: Point3): readonly [number, number] => [toeRight ? left + scale * (x - x0) : left + width - scale * (x - x0), bottom + scale * z];
  const curve = (points: Float64Array): number[] => {
    const out: number[] = [];
    const n = points.length / 3;
    const every = Math.max(1, Math.floor(n / 80));
    for (let i = 0; i < n; i += every) out.push(...at([points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!]));
    out.push(...at([points[3 * n - 3]!, points[3 * n - 2]!, points[3 * n - 1]!]));
    return out;
  };
  ink.style(0.25);
  ink.stroke(curve(last.bottomCentre.points));
  ink.stroke(curve(last.centreRidge.points));
  ink.stroke(curve(last.backCurve.points));
  ink.stroke([...curve(last.centreRidge.points).slice(-2), ...curve(last.backCurve.points).slice(-2)]);
  ink.style(0.18, [1.5, 1]);
  ink.stroke(curve(featherHalf(last.feather, half).points));
  ink.style(0.5);
  ink.stroke(curve((half === "medial" ? lines.toplineMedial : lines.toplineLateral).points));
  const written = marks.heights[half];
  const foot = bottom + scale * Math.min(6, ...lines.quarterHeights[half].map((m) => m.foot[2]));
  const lowest = half === "medial" ? lines.lowestMedial : lines.lowestLateral;
  const heightLine = (m: HeightMark, dashMm: readonly number[]) => {
    ink.style(0.18, dashMm);
    ink.line(...at(m.foot), ...at(m.at));
  };
  lines.quarterHeights[half].forEach((m, i) => {
    const mark = written.find((t) => t.tick === quarterWords[i])!;
    heightLine(m, []);
    const text = halfMm(mark.lengthMm), x = at(m.at)[0];
    const toLow = at(lowest.at)[0] - x;
    // The number stands to the right of its line, or to the left where the line of the lowest place would run through it.
    const aside = toLow > 0 && toLow < textWidth(text, 2.2) + 2;
    const from = at(m.foot)[1], high = at(m.at)[1] - from;
    ink.text(text, aside ? x - 0.8 - textWidth(text, 2.2) : x + 0.8, from + (aside ? 0.22 : 0.55) * high - 1, 2.2);
    ink.text(mark.tick, at(m.foot)[0] - 1.6, foot - 4, 1.8);
  });
  // The lowest place often lies close to a quarter: its words stand a row lower.
  const low = `low ${halfMm(lowest.heightMm)}`;
  heightLine(lowest, [0.8, 0.8]);
  ink.line(at(lowest.foot)[0], at(lowest.foot)[1], at(lowest.foot)[0], foot - 4.8);
  ink.text(low, at(lowest.foot)[0] - textWidth(low, 2.2) / 2, foot - 7.6, 2.2);
  const n = lines.back.arc.length;
  const backPoint = at([lines.back.points[3 * n - 3]!, lines.back.points[3 * n - 2]!, lines.back.points[3 * n - 1]!]);
  const k = lines.centre.arc.length;
  const throat = at([lines.centre.points[3 * k - 3]!, lines.centre.points[3 * k - 2]!, lines.centre.points[3 * k - 1]!]);
  ink.style(0.35);
  ink.stroke(curve(lines.centre.points));
  ink.stroke(curve(lines.back.points));
  dot(ink, backPoint);
  dot(ink, throat);
  const back = `back ${halfMm(marks.back.lengthMm)}`, depth = `throat ${halfMm(marks.throat.lengthMm)}`;
  // Above the topline there is room: at the heel within the last, over the toe beside it.
  ink.text(back, toeRight ? backPoint[0] + 2 : backPoint[0] - 2 - textWidth(back, 2.2), backPoint[1] + 1.2, 2.2);
  ink.text(depth, toeRight ? throat[0] + 1.5 : throat[0] - 1.5 - textWidth(depth, 2.2), throat[1] + 3.2, 2.2);
  ink.text(`${sideWords[half]} of the ${last.side} last`, left + width / 2 - textWidth(`${sideWords[half]} of the ${last.side} last`, 2.5, true) / 2, foot - 12, 2.5, { bold: true });
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

/** The last from above: feather line, topline, joint points and the places of the heights along the feather line. */
export function inkTopView(ink: PageInk, last: Last, lines: Lines, left: number, middle: number, width: number): void {
  const toe = last.landmarks.toePoint, seat = last.landmarks.seatPoint;
  const scale = width / (toe[0] - seat[0]);
  const at = ([x, y]: Point3): readonly [number, number] => [left + scale * (x - seat[0]), middle + scale * y];
  const curve = (points: Float64Array): number[] => {
    const out: number[] = [];
    for (let i = 0; i < points.length; i += 3) out.push(...at([points[i]!, points[i + 1]!, points[i + 2]!]));
    return out;
  };
  ink.style(0.25);
  ink.stroke(curve(last.feather.points), true);
  ink.style(0.5);
  ink.stroke(curve(lines.toplineMedial.points));
  ink.stroke(curve(lines.toplineLateral.points));
  ink.style(0.18, [4, 1, 0.6, 1]);
  ink.line(...at(seat), ...at(toe));
  ink.style(0.18);
  const joints = [at(last.landmarks.jointMedial), at(last.landmarks.jointLateral)] as const;
  ink.line(...joints[0], ...joints[1]);
  joints.forEach((p) => dot(ink, p));
  for (const half of ["medial", "lateral"] as const) {
    const up = (last.side === "right") === (half === "medial") ? 1 : -1;
    const name = (text: string, p: readonly [number, number]) => ink.text(text, p[0] - textWidth(text, 1.8) / 2, up > 0 ? p[1] + 1.6 : p[1] - 3.2, 1.8);
    lines.quarterHeights[half].forEach((m, i) => {
      const p = at(m.foot);
      ink.line(p[0], p[1] - 1, p[0], p[1] + 1);
      name(quarterWords[i]!, p);
    });
    const low = at((half === "medial" ? lines.lowestMedial : lines.lowestLateral).foot);
    ink.line(low[0], low[1] - 1, low[0], low[1] + 1);
    // A row farther out than the quarters, which may lie close.
    ink.line(low[0], low[1], low[0], low[1] + 4 * up);
    ink.text("low", low[0] - textWidth("low", 1.8) / 2, up > 0 ? low[1] + 4.6 : low[1] - 6.2, 1.8);
    name("joint", up > 0 === (joints[0][1] > middle) ? joints[0] : joints[1]);
    ink.text(sideWords[half].toLowerCase(), left + 0.12 * width, middle + up * 4 - 1, 2.2);
  }
  ink.text("seat", at(seat)[0] - 1.5 - textWidth("seat", 2.2), middle - 1, 2.2);
  ink.text("toe", at(toe)[0] + 1.5, middle - 1, 2.2);
}

const dot = (ink: PageInk, [x, y]: readonly [number, number]): void => {
  ink.style(0.35);
  ink.stroke([x - 0.8, y, x, y + 0.8, x + 0.8, y, x, y - 0.8], true);
};

/** Every third number from `first` on: x, y or z of points. */
function every3(points: Float64Array, first: 0 | 1 | 2): number[] {
  const out: number[] = [];
  for (let i = first; i < points.length; i += 3) out.push(points[i]!);
  return out;
}
