import type { Profile } from "./outline-profile.ts";
import { backSpans, drawnSpans, toeWall, type DrawnPlan, type DrawnProfile, type LoftNumbers } from "./loft-numbers.ts";
import { standOutBetween } from "./loft-lists.ts";
import { lengthMet, widthsMet, widthsOf } from "./loft-plan.ts";
import { LoftShape, type Column } from "./loft-shape.ts";
import { lowestOf, planPointInto } from "./loft-silhouette.ts";
import { splineControls, splinePlace, splineValue } from "./loft-spline.ts";
import type { LastMeasurements } from "./measured.ts";

/** Outlines laid in the frame of the last, but for x: 0 at the heel end. */
export interface Drawing {
  readonly plan?: Profile;
  readonly profile?: Profile;
  /** Points of the back: heights over the seat point and x from the heel end. */
  readonly back?: { readonly heights: Float64Array; readonly x: Float64Array };
  /** How far the form is to stay outside the lines, mm: what a pencil may slip, spent where girths could not be met otherwise. */
  readonly ease?: Ease;
}

/** Outside the ridge at joints and waist, outside the plan on each side at joints and waist; mm. */
export type Ease = readonly [ridgeJoint: number, ridgeWaist: number, planJoint: number, planWaist: number];

/** Where ease at joints and waist bears. */
const atJoints = splineControls([0, 0, 0, 0, 0, 0.2, 0.7, 1, 0.7, 0.2, 0]);
const atWaist = splineControls([0, 0, 0, 0.3, 0.8, 1, 0.4, 0, 0, 0, 0]);

function easeAt(joint: number, waist: number, share: number): number {
  const place = splinePlace(10, share);
  return joint * splineValue(atJoints, place) + waist * splineValue(atWaist, place);
}

/**
 * One or more rounds in which the form comes nearer to drawn outlines: each adds to its splines the mean of what is left, weighted by
 * their basis (progressive-iterative least squares: Deng and Lin, Computer-Aided Design 47, 2014). Length and widths are met anew.
 */
export function drawnMet(numbers: LoftNumbers, m: LastMeasurements, drawing: Drawing, rounds: number): LoftNumbers {
  let now = numbers;
  for (let round = 0; round < rounds; round++) {
    if (drawing.profile) now = profileNearer(now, drawing);
    if (drawing.plan) now = planNearer(now, m, drawing.plan, drawing.ease);
    else now = widthsMet(now, m);
    now = lengthMet(now, m);
  }
  return now;
}

export const stillPlan = (): DrawnPlan => ({ half: controls(drawnSpans), lean: controls(drawnSpans), standOutMm: [0, 0] });

const controls = (spans: number): Float64Array => new Float64Array(spans + 3);

/** Gathers what a spline should move by. */
class Nudge {
  readonly #spans: number;
  readonly #sum: Float64Array;
  readonly #weight: Float64Array;

  constructor(spans: number) {
    this.#spans = spans;
    this.#sum = controls(spans);
    this.#weight = controls(spans);
  }

  /** `bearing`: what a unit of the spline moves there; `left`: what is left to move. */
  add(share: number, left: number, bearing = 1): void {
    const { first, a, b, c, d } = splinePlace(this.#spans, share);
    [a, b, c, d].forEach((v, k) => {
      this.#sum[first + k]! += v * bearing * left;
      this.#weight[first + k]! += v * bearing * bearing;
    });
  }

  moved(spline: Float64Array): Float64Array {
    return spline.map((v, i) => v + (this.#weight[i]! > 1e-6 ? this.#sum[i]! / this.#weight[i]! : 0));
  }
}

/** Columns nearer to each other toward both ends, the very ends left out. */
function* columns(shape: LoftShape, count: number): Generator<Column> {
  for (let i = 1; i < count; i++) {
    const q = i / count;
    yield shape.column(shape.numbers.lengthMm * q * q * (3 - 2 * q));
  }
}

function planNearer(numbers: LoftNumbers, m: LastMeasurements, drawn: Profile, ease?: Ease): LoftNumbers {
  const shape = new LoftShape(numbers);
  const plan = numbers.plan ?? stillPlan();
  const { ball, seat } = widthsOf(shape);
  const narrower = [(seat - m.seatWidthMm) / 2, (ball - m.ballWidthMm) / 2] as const;
  const half = new Nudge(drawnSpans);
  const lean = new Nudge(drawnSpans);
  const [p, q] = [new Float64Array(2), new Float64Array(2)];
  for (const column of columns(shape, 120)) {
    planPointInto(p, shape, column, 1);
    planPointInto(q, shape, column, -1);
    const up = drawn.highAt(p[0]! + shape.heelBulge) - p[1]!;
    const down = drawn.lowAt(q[0]! + shape.heelBulge) - q[1]!;
    const share = column.x / numbers.lengthMm;
    const bearing = Math.sqrt(column.ends);
    const eased = ease ? easeAt(ease[2], ease[3], share) : 0;
    half.add(share, (up - down) / 2 + eased - bearing * standOutBetween(narrower, share), bearing);
    lean.add(share, (up + down) / 2);
  }
  const standOutMm = [plan.standOutMm[0] + narrower[0], plan.standOutMm[1] + narrower[1]] as const;
  return { ...numbers, plan: { half: half.moved(plan.half), lean: lean.moved(plan.lean), standOutMm } };
}

function profileNearer(numbers: LoftNumbers, drawing: Drawing): LoftNumbers {
  const drawn = drawing.profile!;
  const profile = backNearer(numbers, drawing);
  const shape = new LoftShape({ ...numbers, profile });
  const bottom = new Nudge(drawnSpans);
  const ridge = new Nudge(drawnSpans);
  const p = new Float64Array(3);
  const front = splineValue(profile.ridge, splinePlace(drawnSpans, shape.combFront / numbers.lengthMm));
  for (const column of columns(shape, 120)) {
    const share = column.x / numbers.lengthMm;
    const under = share > 0.04 && share < 0.97 ? drawn.lowAt(column.x + shape.heelBulge) - lowestOf(shape, column) : 0;
    bottom.add(share, under);
    if (column.x < shape.combFront) {
      // Behind the comb's front there is no ridge to be seen: what was found there goes on level.
      ridge.add(share, front - splineValue(profile.ridge, splinePlace(drawnSpans, share)));
      continue;
    }
    if (column.ridge < 1.3 * toeWall.overhangAt) continue;
    shape.wallInto(p, 0, column, column.ridge, 1);
    const bearing = column.ridge / (column.ridge + 12);
    const eased = drawing.ease ? easeAt(drawing.ease[0], drawing.ease[1], share) : 0;
    ridge.add(share, bearing * (eased + drawn.highAt(p[0]! + shape.heelBulge) - p[2]! - under), bearing);
  }
  return { ...numbers, profile: { ...profile, ridge: ridge.moved(profile.ridge), feather: endsKept(bottom.moved(profile.feather)) } };
}

function backNearer(numbers: LoftNumbers, { back: drawn }: Drawing): DrawnProfile {
  const profile = numbers.profile!;
  if (!drawn) return profile;
  const shape = new LoftShape(numbers);
  const back = new Nudge(backSpans);
  drawn.heights.forEach((w, i) => back.add(w / profile.backHeightMm, drawn.x[i]! - shape.heelBulge - shape.backAt(w)));
  return { ...profile, back: back.moved(profile.back) };
}

/** The feather line keeps its height at seat and toe point, where it was measured. */
function endsKept(spline: Float64Array): Float64Array {
  const out = spline.slice();
  const n = out.length;
  out[1] = -(out[0]! + out[2]!) / 4;
  out[n - 2] = -(out[n - 1]! + out[n - 3]!) / 4;
  return out;
}

