import { leastSquares } from "#solve/least-squares.ts";
import { homographyOf } from "./homography.ts";
import { toPicture, toPlane, type Placing } from "./placing.ts";
import type { SeenCorner } from "./see-card.ts";

/** How the right sheet lies to the left one: turned about the origin, then moved; zero when joined without error. */
export interface SheetJoint {
  readonly dxMm: number;
  readonly dyMm: number;
  readonly turn: number;
}

export interface Fit {
  readonly placing: Placing;
  readonly joint: SheetJoint;
  /** What is seen less what is fitted, px, x0 y0 x1 y1 …, for all corners handed in, held-out ones too. */
  readonly errors: Float64Array;
  /** True for corners that had no part in the fit. */
  readonly heldOut: readonly boolean[];
  /** Root mean square of the fitted corners' distances without the few that lie far off, px. */
  readonly rmsPx: number;
}

/** Plane units in which the fit is done, mm, so that all unknowns are of like size. */
const unitMm = 100;

/**
 * Lens, perspective and the joint of the two sheets at once, from all corners but every fourth, by least squares in the picture
 * with weights that fade for corners far off (Tukey's biweight). Unknowns: homography (8), k1, k2, and how the right sheet lies.
 */
export function fitPlacing(corners: readonly SeenCorner[], width: number, height: number): Fit {
  const heldOut = corners.map((_, i) => i % 4 === 2);
  const used = corners.filter((_, i) => !heldOut[i]);
  const frame = { centrePx: [(width - 1) / 2, (height - 1) / 2] as const, radiusPx: Math.sqrt(width * width + height * height) / 2 };
  const problem = {
    start: startOf(used, frame),
    // The last three in hundredths of the unit and radian: 1 mm, 0.01.
    scales: [1, 1, 1, 1, 1, 1, 0.3, 0.3, 0.1, 0.1, 0.01, 0.01, 0.01],
    residuals: 2 * used.length,
    residualsInto: (x: Float64Array, out: Float64Array) => errorsInto(used, placingOf(x, frame), jointOf(x), out),
  };
  let x = leastSquares(problem);
  const errors = new Float64Array(2 * used.length);
  let weights: Float64Array = new Float64Array(2 * used.length).fill(1);
  for (let round = 0; round < 4; round++) {
    problem.residualsInto(x, errors);
    weights = fadingWeights(errors);
    x = leastSquares({ ...problem, start: x, weights });
  }
  problem.residualsInto(x, errors);
  let sum = 0, count = 0;
  for (let i = 0; i < errors.length; i += 2) {
    if (weights[i]! === 0) continue;
    sum += errors[i]! ** 2 + errors[i + 1]! ** 2;
    count++;
  }
  const all = new Float64Array(2 * corners.length);
  errorsInto(corners, placingOf(x, frame), jointOf(x), all);
  return { placing: placingOf(x, frame), joint: jointOf(x), errors: all, heldOut, rmsPx: Math.sqrt(sum / Math.max(1, count)) };
}

/** Where a printed corner lies on the plane, the right sheet as it was joined. */
export function onPlane({ half, xMm, yMm }: Pick<SeenCorner, "half" | "xMm" | "yMm">, { dxMm, dyMm, turn }: SheetJoint): [number, number] {
  if (half === "left") return [xMm, yMm];
  // A turn of at most a few degrees, by tangent of the half angle.
  const t = turn / 2, s = 1 + t * t;
  const c = (1 - t * t) / s, n = (2 * t) / s;
  return [c * xMm - n * yMm + dxMm, n * xMm + c * yMm + dyMm];
}

type Frame = Pick<Placing, "centrePx" | "radiusPx">;

function startOf(used: readonly SeenCorner[], { centrePx, radiusPx }: Frame): Float64Array {
  const left = used.filter((c) => c.half === "left");
  const plane = (list: readonly SeenCorner[]) => list.flatMap((c) => [c.xMm / unitMm, c.yMm / unitMm]);
  const seen = (list: readonly SeenCorner[]) => list.flatMap((c) => [(c.xPx - centrePx[0]) / radiusPx, (c.yPx - centrePx[1]) / radiusPx]);
  const h = homographyOf(plane(left), seen(left));
  const x = new Float64Array(13);
  x.set(h.subarray(0, 8));
  const placing = placingOf(x, { centrePx, radiusPx });
  // The right sheet's mean offset and turn as the left sheet's homography sees it.
  const right = used.filter((c) => c.half === "right");
  const n = right.length;
  const seenAt = right.map((c) => toPlane(placing, c.xPx, c.yPx));
  const mean = (f: (c: SeenCorner, i: number) => number): number => right.reduce((s, c, i) => s + f(c, i), 0) / n;
  const [ax, ay] = [mean((c) => c.xMm), mean((c) => c.yMm)];
  const [bx, by] = [mean((_, i) => seenAt[i]![0]), mean((_, i) => seenAt[i]![1])];
  const dot = mean((c, i) => (c.xMm - ax) * (seenAt[i]![0] - bx) + (c.yMm - ay) * (seenAt[i]![1] - by));
  const cross = mean((c, i) => (c.xMm - ax) * (seenAt[i]![1] - by) - (c.yMm - ay) * (seenAt[i]![0] - bx));
  x[12] = cross / dot;
  const moved = onPlane({ half: "right", xMm: ax, yMm: ay }, { dxMm: 0, dyMm: 0, turn: x[12] });
  x[10] = (bx - moved[0]) / unitMm;
  x[11] = (by - moved[1]) / unitMm;
  return x;
}

function placingOf(x: Float64Array, { centrePx, radiusPx }: Frame): Placing {
  const homography = Float64Array.of(x[0]! / unitMm, x[1]! / unitMm, x[2]!, x[3]! / unitMm, x[4]! / unitMm, x[5]!, x[6]! / unitMm, x[7]! / unitMm, 1);
  return { homography, k1: x[8]!, k2: x[9]!, centrePx, radiusPx };
}

const jointOf = (x: Float64Array): SheetJoint => ({ dxMm: x[10]! * unitMm, dyMm: x[11]! * unitMm, turn: x[12]! });

function errorsInto(corners: readonly SeenCorner[], placing: Placing, joint: SheetJoint, out: Float64Array): void {
  corners.forEach((corner, i) => {
    const [x, y] = onPlane(corner, joint);
    const [px, py] = toPicture(placing, x, y);
    out[2 * i] = corner.xPx - px;
    out[2 * i + 1] = corner.yPx - py;
  });
}

/** Tukey's biweight at 4.7 robust standard deviations (Beaton and Tukey 1974), one weight a corner. */
function fadingWeights(errors: Float64Array): Float64Array {
  const far = Float64Array.from({ length: errors.length / 2 }, (_, i) => Math.sqrt(errors[2 * i]! ** 2 + errors[2 * i + 1]! ** 2));
  const median = far.slice().sort()[far.length >> 1]!;
  // Median of a Rayleigh distribution: 1.1774 standard deviations. Never below what a corner can be found to.
  const reach = 4.685 * Math.max(0.03, median / 1.1774);
  return Float64Array.from(errors, (_, k) => {
    const t = far[k >> 1]! / reach;
    return t < 1 ? (1 - t * t) ** 2 : 0;
  });
}
