import { listNames, shapedLists } from "./loft-lists.ts";
import { backSpans, combStart, drawnSpans, form, heelCurve, toePlans, toeWall, type DrawnProfile, type LoftNumbers } from "./loft-numbers.ts";
import { splineControls, splinePlace, splineValue, type SplinePlace } from "./loft-spline.ts";

/** Everything of the form that depends on the place along the length alone. */
export interface Column {
  readonly x: number;
  /** Half width before and its square's factor for the rounded ends. */
  readonly half: number;
  readonly ends: number;
  readonly bottomLean: number;
  readonly ridgeLean: number;
  /** Height of the ridge above the feather line. */
  readonly ridge: number;
  readonly square: number;
  readonly standOut: number;
  readonly standOutAt: number;
  /** Height of the feather line above the ground where it has no tilt. */
  readonly feather: number;
  readonly tilt: number;
  /** Bulge of the bottom, as curvature: drop = curve · (half² − offset²). */
  readonly curve: number;
  readonly back: number;
  readonly toe: number;
}

const count = listNames.length;
/** Share of what is added to the middle of the bottom that the ridge follows. */
const ridgeFollows = 0.5;

/**
 * A last as two smooth functions over its side view: the middle c and the square of the half breadth S at (x, w), x from the seat
 * point to the toe point, w the height above the feather line. The surface is y = c ± √S. Where S falls to zero (ridge, toe, back)
 * both sides meet with one tangent and one curvature, so there is no seam to smooth over. Right last: y is positive on the inside.
 */
export class LoftShape {
  readonly numbers: LoftNumbers;
  /** Controls of all lists, side by side: one knot after another, `count` numbers each. */
  readonly #controls: Float64Array;
  readonly #heelEnd: number;
  readonly #toeEnd: number;
  readonly #toeSlope: number;
  readonly #toeTurn: number;
  #bulge: number | undefined;
  readonly #combLevel: number;
  /** x at which the ridge meets the comb. */
  readonly combFront: number;

  constructor(numbers: LoftNumbers) {
    this.numbers = numbers;
    const lists = shapedLists(numbers);
    this.#controls = interleaved(listNames.map((name) => splineControls(lists[name])));
    const plan = toePlans[numbers.toe];
    const heelHalf = lists.halfWidth[0]!;
    const toeHalf = lists.halfWidth[form.spans]!;
    this.#heelEnd = 1.5 * heelHalf;
    this.#toeEnd = plan.endLength * numbers.ballScale;
    this.#toeTurn = plan.turn;
    this.#toeSlope = (2 * plan.tipRadius * numbers.ballScale * this.#toeEnd) / (toeHalf * toeHalf);
    const { profile, lengthMm } = numbers;
    this.combFront = profile ? this.#meeting(profile) : combStart * lengthMm;
    const front = this.column(this.combFront);
    this.#combLevel = profile ? profile.combHeightMm : front.ridge + front.feather;
  }

  /** Height of the flat comb above the ground; level unless it was drawn otherwise. */
  combAt(x: number): number {
    return this.#combLevel + (this.numbers.profile?.combSlope ?? 0) * x;
  }

  /** Where the ridge, rising from the toe, comes up to a drawn comb; by halving. */
  #meeting({ combHeightMm, combSlope }: DrawnProfile): number {
    let [below, above] = [0.7 * this.numbers.lengthMm, 0.25 * this.numbers.lengthMm];
    for (let k = 0; k < 30; k++) {
      const x = (below + above) / 2;
      const { ridge, feather } = this.column(x);
      if (ridge + feather < combHeightMm + combSlope * x) below = x;
      else above = x;
    }
    return (below + above) / 2;
  }

  column(x: number): Column {
    const { lengthMm, plan, profile } = this.numbers;
    const share = x / lengthMm;
    const place = splinePlace(form.spans, share);
    const fine = plan || profile ? splinePlace(drawnSpans, share) : undefined;
    const drawn = (controls: Float64Array | undefined): number => (controls && fine ? splineValue(controls, fine) : 0);
    const half = Math.max(1, this.#list(0, place) + drawn(plan?.half));
    const lean = drawn(plan?.lean);
    const fromToe = Math.max(0, lengthMm - x);
    const ends = rounded(x / this.#heelEnd, 3, 3) * rounded(fromToe / this.#toeEnd, this.#toeSlope, this.#toeTurn);
    const nose = rounded(fromToe / toeWall.noseLength, (2 * toeWall.nose * toeWall.noseLength) / (form.ridge[form.spans] * form.ridge[form.spans]), 3);
    return {
      x,
      half,
      ends,
      bottomLean: this.#list(1, place) + lean,
      ridgeLean: this.#list(2, place) + lean * ridgeFollows,
      ridge: Math.max(1, this.#list(3, place) + drawn(profile?.ridge)) * Math.sqrt(nose),
      square: this.#list(4, place),
      standOut: this.#list(5, place),
      standOutAt: this.#list(6, place),
      feather: this.#list(7, place) + drawn(profile?.feather),
      tilt: this.#list(8, place),
      curve: this.#list(9, place) / (half * half),
      back: fadeOut(share / heelCurve.reach),
      toe: fadeOut((1 - share) / toeWall.reach),
    };
  }

  #list(list: number, { first, a, b, c, d }: SplinePlace): number {
    const controls = this.#controls;
    const k = first * count + list;
    return a * controls[k]! + b * controls[k + count]! + c * controls[k + 2 * count]! + d * controls[k + 3 * count]!;
  }

  /** Middle and half width of the feather line in plan. */
  outline({ half, ends, bottomLean }: Column): { readonly middle: number; readonly half: number } {
    return { middle: bottomLean, half: half * Math.sqrt(ends) };
  }

  /** Height w above the feather line at which the wall ends: at the ridge or at the comb. */
  top(column: Column): number {
    return Math.min(column.ridge, this.combAt(column.x) - column.feather);
  }

  /** Point of the wall at height w over the feather line, on the inside (+1) or outside (−1), written to `out` at 3 · `at`. */
  wallInto(out: Float64Array, at: number, column: Column, w: number, side: 1 | -1): void {
    const s = column.ridge > 0 ? Math.min(1, w / column.ridge) : 1;
    const s2 = s * s;
    const fall = Math.max(0, 1 - s2 * (1 - column.square + column.square * s2));
    const breadth = (column.half + column.standOut * swell(w / column.standOutAt)) * Math.sqrt(column.ends * fall);
    const middle = column.bottomLean + (column.ridgeLean - column.bottomLean) * s2 * (3 - 2 * s);
    const { backScale } = this.numbers;
    const level = Math.max(0, 1 - w / (45 * backScale));
    out[3 * at] = column.x + column.back * this.#backShift(w) + column.toe * (this.numbers.profile?.toeOverhangMm ?? toeWall.overhang) * swell(w / toeWall.overhangAt);
    out[3 * at + 1] = middle + side * breadth;
    out[3 * at + 2] = w + column.feather + column.tilt * side * breadth * level * level * level;
  }

  /** Point of the bottom at y, which lies between the two feather lines of its column. */
  bottomInto(out: Float64Array, at: number, column: Column, y: number): void {
    const { middle, half } = this.outline(column);
    const offset = y - middle;
    out[3 * at] = column.x;
    out[3 * at + 1] = y;
    out[3 * at + 2] = column.feather + column.tilt * offset - column.curve * Math.max(0, half * half - offset * offset);
  }

  #backShift(w: number): number {
    const { backScale, profile } = this.numbers;
    const { bulge, bulgeAt, tuck } = heelCurve;
    const usual = backScale * (tuck * (w / backScale) * (w / backScale) - bulge * swell(w / (bulgeAt * backScale)));
    if (!profile) return usual;
    const { back, backHeightMm } = profile;
    return usual + splineValue(back, splinePlace(backSpans, w / backHeightMm)) - splineValue(back, splinePlace(backSpans, 0));
  }

  /** How far the back lies before the seat point at height w over it. */
  backAt(w: number): number {
    return this.#backShift(w);
  }

  /** How far the heel stands out behind the seat point. */
  get heelBulge(): number {
    if (this.#bulge === undefined) {
      this.#bulge = 0;
      for (let w = 0; w < 60; w += 0.25) this.#bulge = Math.max(this.#bulge, -this.#backShift(w));
    }
    return this.#bulge;
  }
}

function interleaved(lists: readonly Float64Array[]): Float64Array {
  const knots = lists[0]!.length;
  const out = new Float64Array(knots * count);
  lists.forEach((list, k) => list.forEach((v, i) => (out[i * count + k] = v)));
  return out;
}

/** Rises from 0 at s = 0 with the given slope to 1 at s = 1 and beyond, with curvature continuous. */
function rounded(s: number, slope: number, turn: number): number {
  if (s >= 1) return 1;
  const u = 1 - s;
  let power = u * u * u;
  for (let k = 3; k < turn; k++) power *= u;
  return 1 - power * (1 + (turn - slope) * s);
}

/** Rises from 0 to 1 at t = 1 and sinks slowly after it. */
const swell = (t: number): number => (2 * t) / (1 + t * t);

/** 1 at t = 0, 0 from t = 1 on, flat at both ends. */
function fadeOut(t: number): number {
  if (t >= 1) return 0;
  return 1 - t * t * t * (10 - 15 * t + 6 * t * t);
}
