import type { ToeShape } from "./measured.ts";

/**
 * The numbers that set one lofted last apart from another; mm unless said. The plan ones are worked out from length and widths,
 * `rise` and `fullness` are what the girths are met with.
 */
export interface LoftNumbers {
  readonly toe: ToeShape;
  /** x of the toe point. */
  readonly lengthMm: number;
  /** Factors on the widths of forepart and seat. */
  readonly ballScale: number;
  readonly seatScale: number;
  readonly heelHeightMm: number;
  readonly toeSpringMm: number;
  /** How far the tread is let down so that the last stands on the ground. */
  readonly treadMm: number;
  /** Factor on all upright measures of the back part. */
  readonly backScale: number;
  /** Factors on the height of the ridge at joints, waist and instep. */
  readonly rise: readonly [number, number, number];
  /** What the walls stand out more than usual at waist, instep and heel. */
  readonly fullnessMm: readonly [number, number, number];
  /** What is added to the half width of the bottom at the waist; where the plan is drawn the walls stand out as much less. */
  readonly shankMm: number;
  /** What is added to the squareness of the sections at joints, waist, heel and cone. */
  readonly squareness: readonly [number, number, number, number];
  readonly plan?: DrawnPlan;
  readonly profile?: DrawnProfile;
}

/** What makes the form follow an outline drawn round the bottom: controls of splines on `drawnSpans` equal spans from seat to toe point. */
export interface DrawnPlan {
  /** Added to the half width and to the middle of every section, mm. */
  readonly half: Float64Array;
  readonly lean: Float64Array;
  /** What the walls stand out more than usual at seat and ball. */
  readonly standOutMm: readonly [number, number];
}

/** What makes the form follow an outline drawn round the last on its side; controls as in {@link DrawnPlan}. */
export interface DrawnProfile {
  /** Added to the height of the ridge and of the feather line, mm. */
  readonly ridge: Float64Array;
  readonly feather: Float64Array;
  /** Added to the heel curve: `backSpans` equal spans from the seat point up to `backHeightMm`. */
  readonly back: Float64Array;
  readonly backHeightMm: number;
  /** The comb, straight from the side: height over the ground above the seat point, and rise toward the toe (mm a mm). */
  readonly combHeightMm: number;
  readonly combSlope: number;
  readonly toeOverhangMm: number;
}

export const drawnSpans = 40;
export const backSpans = 12;

/**
 * The invented form: one number at each tenth of the length from seat point to toe point, for a last of 250 mm, ball 76 and seat
 * 52 mm wide. Our own design by eye within the proportions of the trade; no last was copied.
 */
export const form = {
  spans: 10,
  /** Half width of the bottom before the two ends are rounded off. */
  halfWidth: [25.6, 26, 26.3, 24.7, 21.8, 24.3, 34.8],
  /** How far the middle of the bottom lies toward the inside. */
  bottomLean: [0, 0, -0.3, -1.6, -3.7, -5, -4.6, -2.3, 0.2, 0.9, 0],
  /** How far the ridge lies toward the inside. */
  ridgeLean: [0, 0, 0.2, 0.9, 2.1, 3.3, 4.1, 3.9, 2.4, 0.7, 0],
  /** Height of the ridge above the feather line; behind the cone it is the ridge there would be without a comb. */
  ridge: [97, 96.5, 95.5, 91.5, 84.4, 73.6, 60.6, 48, 37.2, 28.2, 22],
  /** 0: sections are elliptical (exponent 2), 1: fuller (exponent 4). */
  square: [0.5, 0.5, 0.46, 0.38, 0.28, 0.2, 0.22, 0.32, 0.34, 0.3, 0.24],
  /** How far the wall stands out over the feather line, and the height at which it does so most. */
  standOut: [2.8, 3.2, 3.1, 2.4, 2, 2.1, 2.6, 2.5, 2.2, 1.9, 1.6],
  standOutAt: [15, 15, 17, 20, 22, 20, 15, 12, 10, 9, 8],
  /** Share of heel height, then of toe spring, that the feather line has; then how much the let-down of the tread moves it. */
  heelShare: [1, 1, 0.98, 0.88, 0.66, 0.36, 0.12, 0.01, 0, 0, 0],
  springShare: [0, 0, 0, 0, 0, 0, 0, 0.02, 0.16, 0.52, 1],
  treadShare: [0, 0, 0, 0.05, 0.3, 0.65, 0.95, 1, 0.9, 0.45, 0],
  /** Hollow of the waist seen from the side. */
  arch: [0, 0, 0, 0.5, 1.8, 2.2, 1, 0.1, 0, 0, 0],
  /** Slope across: the inside of the waist lies higher. */
  tilt: [0, 0, 0.01, 0.035, 0.06, 0.05, 0.02, 0, 0, 0, 0],
  /** How far the bottom bulges down in its middle. */
  bottomBulge: [2.2, 2.2, 2, 1.4, 0.9, 0.9, 1.5, 2.2, 2.2, 1.6, 1],
} as const;

/** Heel curve: x behind the seat point = −bulge · 2t / (1 + t²) + tuck · height², t = height / bulgeAt. Invented. */
export const heelCurve = { bulge: 5, bulgeAt: 18.5, tuck: 0.0017, reach: 0.36 } as const;

/** The toe wall overhangs the feather line as the sides do; `nose` is its rounding seen from the side. */
export const toeWall = { overhang: 1.6, overhangAt: 8, reach: 0.16, nose: 17, noseLength: 38 } as const;

/** Where the ridge meets the comb, as a share of the length: the comb is level with the ridge there. */
export const combStart = 0.46;

/**
 * A toe in plan: half widths at 0.7, 0.8, 0.9 and 1.0 of the length before rounding, length of the rounded end, radius at the tip (mm for a
 * ball 76 wide) and how suddenly the end turns into the side.
 */
export interface ToePlan {
  readonly halfWidth: readonly [number, number, number, number];
  readonly endLength: number;
  readonly tipRadius: number;
  readonly turn: number;
}

export const toePlans: Readonly<Record<ToeShape, ToePlan>> = {
  "broad round": { halfWidth: [39, 36.5, 34.6, 33.5], endLength: 52, tipRadius: 34, turn: 3 },
  round: { halfWidth: [38.6, 36.1, 32.8, 30.5], endLength: 64, tipRadius: 25, turn: 3 },
  almond: { halfWidth: [38.7, 38, 33.8, 29], endLength: 84, tipRadius: 13.5, turn: 3 },
  square: { halfWidth: [38.6, 36, 32.4, 26.5], endLength: 32, tipRadius: 66, turn: 6 },
  "narrow square": { halfWidth: [38.8, 37.6, 31.2, 19.5], endLength: 26, tipRadius: 48, turn: 6 },
  pointed: { halfWidth: [39.2, 43.4, 36.4, 27.5], endLength: 108, tipRadius: 5.5, turn: 3 },
};
