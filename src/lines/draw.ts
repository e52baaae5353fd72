import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Last, Point3 } from "#last/last.ts";
import { Arcs } from "./arcs.ts";
import { curveLength, curveOf, distanceSquared, pointOn, upTo } from "#last/surface-curve.ts";
import { featherHalf, footAtX, halfSign, type Half } from "./feather.ts";
import { flatOn, formeOf, type DoubleCurve, type Forme, type Xy } from "./forme.ts";
import { heightMark, lowestMark } from "./heights.ts";
import { judgeLines } from "./judge.ts";
import type { HeightMark, Lines, LineRules, LineSettings } from "./lines.ts";
import { halfTopline, liftLine, pointBeforeThroat, bowRadius, type HalfPlan } from "./topline.ts";

/** What is made once per last, so that dragging a line costs little. */
export interface DrawingBoard {
  readonly last: Last;
  readonly arcs: Arcs;
  readonly forme: Forme;
}

export function drawingBoard(last: Last): DrawingBoard {
  const arcs = new Arcs(last);
  return { last, arcs, forme: formeOf(last, arcs) };
}

/** The lines on the last and, for cutting the shell, the same topline halves on the drawing plane. */
export interface DrawnLines {
  readonly lines: Lines;
  readonly topline: Readonly<Record<Half, DoubleCurve>>;
}

const stepMm = 0.75;

/** Draws throat and topline on the last. Refuses values that lie beyond the last; unusual ones become findings. */
export function drawLines(board: DrawingBoard, rules: LineRules, settings: LineSettings): DrawnLines {
  refuseImpossible(board, rules, settings);
  const plans = { medial: planHalf(board, settings, "medial"), lateral: planHalf(board, settings, "lateral") };
  const radius = planeRadius(board, plans, settings);
  const drawn = { medial: drawHalf(board, settings, "medial", radius), lateral: drawHalf(board, settings, "lateral", radius) };
  const topline = { medial: drawn.medial.curve, lateral: drawn.lateral.curve };
  const { last, forme } = board;
  const marks = (half: Half) => [0.25, 0.5, 0.75].map((share) => heightMark(board, half, topline[half], share * flankEnd(topline[half], last)));
  const lines: Omit<Lines, "findings"> = {
    settings,
    toplineMedial: { points: topline.medial.points, arc: topline.medial.arc },
    toplineLateral: { points: topline.lateral.points, arc: topline.lateral.arc },
    centre: upTo(last.centreRidge, settings.throatDepthMm),
    back: upTo(last.backCurve, settings.backHeightMm),
    quarterHeights: { medial: marks("medial"), lateral: marks("lateral") },
    lowestMedial: drawn.medial.lowest,
    lowestLateral: drawn.lateral.lowest,
  };
  const findings: readonly Finding[] = judgeLines(last, rules, lines, forme);
  return { lines: { ...lines, findings }, topline };
}

/** x of the throat above the seat point's: the end of both flanks. */
const flankEnd = (topline: DoubleCurve, last: Last): number => topline.points[topline.points.length - 3]! - last.landmarks.seatPoint[0];

const lowestX = (settings: LineSettings, half: Half, last: Last): number =>
  (half === "medial" ? settings.lowestAtMedial : settings.lowestAtLateral) * (last.landmarks.toePoint[0] - last.landmarks.seatPoint[0]);

const sideHeight = (settings: LineSettings, half: Half): number => (half === "medial" ? settings.sideHeightMedialMm : settings.sideHeightLateralMm);

/**
 * Draws one half so that its lowest place has the asked height. Either side of the asked place the curve may dip a little lower than
 * there; then it is drawn anew, raised by as much, which brings it to a few hundredths in one or two rounds.
 */
function drawHalf(board: DrawingBoard, settings: LineSettings, half: Half, throatRadiusMm: number): { readonly curve: DoubleCurve; readonly lowest: HeightMark } {
  const asked = sideHeight(settings, half);
  let raised = 0;
  for (let round = 0; ; round++) {
    const plan = { ...planHalf(board, settings, half, raised), throatRadiusMm };
    const curve = liftHalf(board, settings, half, halfTopline(plan, stepMm));
    const lowest = lowestMark(board, half, curve);
    const short = asked - lowest.heightMm;
    if (Math.abs(short) < 0.05 || round === 2) return { curve, lowest };
    // A line that is lowest far from the asked place is told as such, not forced.
    raised = Math.min(raised + short, mostRaisedMm);
  }
}

const mostRaisedMm = 2;

function planHalf(board: DrawingBoard, settings: LineSettings, half: Half, raisedMm = 0): HalfPlan {
  const { last, forme } = board;
  const sign = halfSign(last, half);
  const bank = forme.back[half];
  const back = flatOn(bank, settings.backHeightMm);
  const throat = flatOn(forme.centre, settings.throatDepthMm);
  const low = lowestPoint(board, settings, half, raisedMm);
  return {
    back,
    backDirection: square(direction(bank, settings.backHeightMm), sign),
    lowest: low.at,
    lowestDirection: low.direction,
    throat,
    throatDirection: square(direction(forme.centre, settings.throatDepthMm), sign),
    throatRadiusMm: settings.throatRadiusMm,
  };
}

/** The radius to draw on the plane so that the asked one comes out on the last: the plane's scale at the throat is not that of the last. */
function planeRadius(board: DrawingBoard, plans: Readonly<Record<Half, HalfPlan>>, { throatRadiusMm, throatDepthMm }: LineSettings): number {
  const { centreRidge } = board.last;
  const before = pointOn(centreRidge, throatDepthMm - 2), after = pointOn(centreRidge, throatDepthMm + 2);
  const size = Math.sqrt(distanceSquared(before, after));
  const heelward: Point3 = [(after[0] - before[0]) / size, (after[1] - before[1]) / size, (after[2] - before[2]) / size];
  let radius = throatRadiusMm;
  for (let round = 0; round < 3; round++) {
    const near = (half: Half) => pointBeforeThroat(board.forme, halfTopline({ ...plans[half], throatRadiusMm: radius }, stepMm));
    const found = bowRadius(near("medial"), pointOn(centreRidge, throatDepthMm), near("lateral"), heelward);
    if (found === undefined) return radius;
    radius *= Math.min(1.5, Math.max(0.67, throatRadiusMm / found));
  }
  return radius;
}

function liftHalf({ last, forme }: DrawingBoard, settings: LineSettings, half: Half, flat: Float64Array): DoubleCurve {
  const { points, outsideAt } = liftLine(forme, flat);
  if (outsideAt !== undefined)
    throw new Refusal(finding("line-beyond-last", { what: `${half === "medial" ? "inner" : "outer"} half of the topline`, value: settings.backHeightMm, most: forme.ceilingMm, unit: "mm" }));
  points.set(pointOn(last.backCurve, settings.backHeightMm), 0);
  points.set(pointOn(last.centreRidge, settings.throatDepthMm), points.length - 3);
  return { ...curveOf(points), flat };
}

/** The lowest place on the plane, and the direction of equal height there. */
function lowestPoint(board: DrawingBoard, settings: LineSettings, half: Half, raisedMm: number): { readonly at: Xy; readonly direction: Xy } {
  const { last, arcs, forme } = board;
  const feather = featherHalf(last.feather, half);
  const height = sideHeight(settings, half) + raisedMm;
  const x = last.landmarks.seatPoint[0] + lowestX(settings, half, last);
  const at = (dx: number): Xy => {
    const foot = footAtX(feather, x + dx);
    if (!foot) throw new Refusal(finding("line-beyond-last", { what: "lowest place of the topline", value: x, most: last.landmarks.toePoint[0], unit: "mm" }));
    return forme.toFlat(pointOn(arcs.from(foot.foot, height), height));
  };
  // Wide enough not to follow the roughness of a scan.
  const before = at(-10), after = at(10);
  return { at: at(0), direction: unit([after[0] - before[0], after[1] - before[1]]) };
}

/** Direction of a double curve on the plane at a length, over ±2 mm. */
function direction(curve: DoubleCurve, at: number): Xy {
  const a = flatOn(curve, at - 2), b = flatOn(curve, at + 2);
  return unit([b[0] - a[0], b[1] - a[1]]);
}

const unit = ([x, y]: Xy): Xy => {
  const size = Math.sqrt(x * x + y * y);
  return [x / size, y / size];
};

/** Turns a direction by a right angle, to the left for sign +1. */
const square = ([x, y]: Xy, sign: 1 | -1 | number): Xy => [-sign * y, sign * x];

function refuseImpossible({ last, forme }: DrawingBoard, rules: LineRules, settings: LineSettings): void {
  for (const key of Object.keys(rules) as (keyof LineSettings)[])
    if (!(Number.isFinite(settings[key]) && settings[key] > 0)) throw new Refusal(finding("line-not-a-number", { what: rules[key].name }));
  const most: Partial<Record<keyof LineSettings, number>> = {
    throatDepthMm: Math.min(curveLength(forme.centre), curveLength(last.centreRidge)) - 4,
    backHeightMm: Math.min(forme.ceilingMm, curveLength(last.backCurve)) - 4,
    sideHeightMedialMm: forme.ceilingMm - 4,
    sideHeightLateralMm: forme.ceilingMm - 4,
    lowestAtMedial: 0.7,
    lowestAtLateral: 0.7,
    throatRadiusMm: 80,
  };
  for (const [key, limit] of Object.entries(most) as [keyof LineSettings, number][])
    if (settings[key] > limit) throw new Refusal(finding("line-beyond-last", { what: rules[key].name, value: settings[key], most: limit, unit: rules[key].unit }));
  const least: Partial<Record<keyof LineSettings, number>> = { throatDepthMm: 25, backHeightMm: 15, sideHeightMedialMm: 8, sideHeightLateralMm: 8, lowestAtMedial: 0.2, lowestAtLateral: 0.2 };
  for (const [key, limit] of Object.entries(least) as [keyof LineSettings, number][])
    if (settings[key] < limit) throw new Refusal(finding("line-too-small", { what: rules[key].name, value: settings[key], least: limit, unit: rules[key].unit }));
}

