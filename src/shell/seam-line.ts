import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { heelBreastX } from "#last/heel-breast.ts";
import type { Last, Point3 } from "#last/last.ts";
import { pointOn } from "#last/surface-curve.ts";
import type { DrawingBoard, DrawnLines } from "#lines/draw.ts";
import { footAtX, halves, type Half } from "#lines/feather.ts";
import { flatOn, type DoubleCurve, type Xy } from "#lines/forme.ts";
import { planeThrough } from "./girths.ts";

/** Where the seams of a cut in panels run, mm; rules with range and reason: src/pieces/rules/seams.ts. */
export interface SeamLineSettings {
  /** How far before the heel breast, along the last's axis, the seam of the inner waist stands on the feather line. */
  readonly innerSeamBeforeBreastMm: number;
  /** How far behind the throat, along the axis, a side seam meets the topline. */
  readonly sideSeamBehindThroatMm: number;
  /** How far behind its upper end, along the axis, it meets the feather line. */
  readonly sideSeamSlantMm: number;
  /** Every seam keeps so far behind the plane of the joint line. */
  readonly seamClearOfJointMm: number;
}

export const seamNames = ["inner waist", "inner side", "outer side"] as const;
export type SeamName = (typeof seamNames)[number];

/** A line along which the upper is opened, from the topline to the feather line of one half. */
export interface SeamLine<Name extends string = string> {
  readonly name: Name;
  readonly half: Half;
  /** A smooth curve on the drawing plane, topline first: x0 y0 … */
  readonly plane: Float64Array;
  /** Running lengths on the last, mm: on the half's topline from the back point, on its feather line from the seat point. */
  readonly toplineMm: number;
  readonly featherMm: number;
}

export interface PlacedSeams {
  readonly lines: readonly SeamLine<SeamName>[];
  readonly findings: readonly Finding[];
}

/** A side seam nearer to the throat than this tears, mm (an early handbook for cordwainers, 1813: 1 to 1½ inches). */
const leastBehindThroatMm = 25;
/** What a quarter must have of topline before the heel breast, or it holds nothing, mm (common practice, no source). */
const leastBeforeBreastMm = 10;
const rounds = 8;

/**
 * The seam of the inner waist: on the feather line by rule, from there upright as seen from the side.
 * @throws Refusal `seam-through-joint` where it would stand nearer to the joint than it may
 */
export function innerSeamLine(board: DrawingBoard, drawn: DrawnLines, { innerSeamBeforeBreastMm, seamClearOfJointMm }: SeamLineSettings): PlacedSeams {
  const breastX = heelBreastX(board.last);
  const x = breastX + innerSeamBeforeBreastMm;
  const line = lineBetweenX(board, drawn, "inner waist", "medial", x, x);
  const nearMm = line ? beforeJoint(board, line) + seamClearOfJointMm : Infinity;
  if (!line || nearMm > 0) throw new Refusal(finding("seam-through-joint", { what: "inner seam", askedMm: innerSeamBeforeBreastMm, from: "before the heel breast", ...(Number.isFinite(nearMm) && { limitMm: Math.floor(innerSeamBeforeBreastMm - nearMm), way: "at most" as const }) }));
  return { lines: [line], findings: [] };
}

/**
 * Both side seams, at equal places along the axis: behind the throat by rule, but where they would come to the joint there as far back
 * as it takes, which is told.
 * @throws Refusal `side-seam-no-room` where no quarter would be left, `seam-through-joint` where none is left behind the joint
 */
export function sideSeamLines(board: DrawingBoard, drawn: DrawnLines, { sideSeamBehindThroatMm: askedMm, sideSeamSlantMm, seamClearOfJointMm }: SeamLineSettings): PlacedSeams {
  const { last } = board;
  const throatX = pointOn(drawn.topline.medial, Infinity)[0], mostMm = throatX - heelBreastX(last) - leastBeforeBreastMm;
  if (!(askedMm >= 0 && askedMm <= mostMm)) throw new Refusal(finding("side-seam-no-room", { askedMm, mostMm: Math.floor(mostMm) }));
  let setMm = askedMm;
  for (let round = 0; round < rounds; round++) {
    const x = throatX - setMm;
    const lines = halves.map((half) => lineBetweenX(board, drawn, half === "medial" ? "inner side" : "outer side", half, x, x - sideSeamSlantMm));
    const [medial, lateral] = lines;
    if (!medial || !lateral || setMm > mostMm) break;
    const nearMm = Math.max(beforeJoint(board, medial), beforeJoint(board, lateral)) + seamClearOfJointMm;
    if (nearMm <= 0) return { lines: [medial, lateral], findings: judgeSides(lateral, { askedMm, setMm, clearMm: seamClearOfJointMm }, board) };
    setMm = Math.ceil(2 * (setMm + nearMm)) / 2;
  }
  throw new Refusal(finding("seam-through-joint", { what: "side seams", askedMm, from: "behind the throat" }));
}

function judgeSides(line: SeamLine, { askedMm, setMm, clearMm }: { readonly askedMm: number; readonly setMm: number; readonly clearMm: number }, { forme }: DrawingBoard): readonly Finding[] {
  const at = forme.toLast([line.plane[0]!, line.plane[1]!]);
  if (setMm > askedMm) return [finding("side-seam-moved", { askedMm, setMm, clearMm }, at)];
  return setMm < leastBehindThroatMm ? [finding("side-seam-near-throat", { setMm, leastMm: leastBehindThroatMm }, at)] : [];
}

/** How far the foremost place of a line lies before the plane of the joint line, behind it < 0, mm. */
function beforeJoint({ last, forme }: DrawingBoard, { plane }: SeamLine): number {
  const ahead = aheadOfJoint(last);
  let most = -Infinity;
  for (let i = 0; i < plane.length; i += 2) {
    const p = forme.toLast([plane[i]!, plane[i + 1]!]);
    if (p) most = Math.max(most, ahead(p));
  }
  return most;
}

/** The joint line is the tape over both joint points and the vamp point: distance before its plane, mm. */
function aheadOfJoint({ landmarks: { jointMedial, jointLateral, vampPoint } }: Last): (p: Point3) => number {
  const { through: [x, y, z], normal: [a, b, c] } = planeThrough(jointMedial, jointLateral, vampPoint);
  const size = (a > 0 ? 1 : -1) * Math.sqrt(a * a + b * b + c * c);
  return (p) => (a * (p[0] - x) + b * (p[1] - y) + c * (p[2] - z)) / size;
}

/** A line from the topline at one place along the axis to the feather line at another; none where either is not reached. */
export function lineBetweenX<Name extends string>({ forme }: DrawingBoard, { topline }: DrawnLines, name: Name, half: Half, toplineX: number, featherX: number): SeamLine<Name> | undefined {
  const top = footAtX(topline[half], toplineX), foot = footAtX(forme.feather[half], featherX);
  if (!top || !foot) return undefined;
  return { name, half, plane: squareFrom(topline[half], top.along, flatOn(forme.feather[half], foot.along)), toplineMm: top.along, featherMm: foot.along };
}

const points = 48;
/** Cosine and sine of the most that a line's first direction turns away from straight to its end: 15 degrees. Farther, and the seam would be seen to bow. */
const mostTurn = [(Math.sqrt(6) + Math.sqrt(2)) / 4, (Math.sqrt(6) - Math.sqrt(2)) / 4] as const;

/** A cubic that leaves a curve of the plane as square as it may, so that the corners are all but square, and ends without bend. */
function squareFrom(curve: DoubleCurve, at: number, to: Xy): Float64Array {
  const from = flatOn(curve, at), before = flatOn(curve, at - 2), after = flatOn(curve, at + 2);
  const chord: Xy = [to[0] - from[0], to[1] - from[1]];
  const length = Math.sqrt(chord[0] ** 2 + chord[1] ** 2), c = unit(chord);
  const across = unit([before[1] - after[1], after[0] - before[0]]);
  const way = across[0] * c[0] + across[1] * c[1] < 0 ? ([-across[0], -across[1]] as const) : across;
  const along = way[0] * c[0] + way[1] * c[1];
  const beside: Xy = [way[0] - along * c[0], way[1] - along * c[1]];
  const n = along >= mostTurn[0] ? way : ([0, 1].map((d) => mostTurn[0] * c[d]! + mostTurn[1] * unit(beside)[d]!) as unknown as Xy);
  const first: Xy = [from[0] + (n[0] * length) / 3, from[1] + (n[1] * length) / 3];
  const second: Xy = [(first[0] + to[0]) / 2, (first[1] + to[1]) / 2];
  const out = new Float64Array(2 * (points + 1));
  for (let i = 0; i <= points; i++) {
    const t = i / points, u = 1 - t;
    for (let d = 0; d < 2; d++) out[2 * i + d] = u * u * u * from[d]! + 3 * u * u * t * first[d]! + 3 * u * t * t * second[d]! + t * t * t * to[d]!;
  }
  return out;
}

const unit = ([x, y]: Xy): Xy => {
  const size = Math.sqrt(x * x + y * y);
  return size > 0 ? [x / size, y / size] : [0, 0];
};
