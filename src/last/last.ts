import type { Finding } from "#base/findings.ts";
import type { Mesh } from "#mesh/mesh.ts";

export type Side = "left" | "right";
export type Point3 = readonly [number, number, number];

/**
 * How the file's own coordinates relate to the last's frame: file = unitPerMm · (rotation · p + translationMm).
 * `rotation` is row-major 3×3 and proper (determinant +1).
 */
export interface Placement {
  readonly unit: "m" | "dm" | "cm" | "mm" | "in";
  readonly unitPerMm: number;
  readonly rotation: readonly number[];
  readonly translationMm: Point3;
}

/**
 * The feather line: closed polyline x0 y0 z0 …, evenly spaced, first point (the seat point) not repeated, running over the
 * medial side to the toe point and back over the lateral side. `toeIndex` is the place of the toe point among
 * the points, and may lie between two of them.
 */
export interface FeatherLine {
  readonly points: Float64Array;
  readonly toeIndex: number;
  /** 0 … 1 at each point: how sharp the edge was there. */
  readonly confidence: Float64Array;
}

/** An open polyline on the surface with its running length: points x0 y0 z0 …, arc[i] mm from the first point. */
export interface SurfaceCurve {
  readonly points: Float64Array;
  readonly arc: Float64Array;
}

/** Named points in the last's frame, mm. Definitions: docs/method/last.md. */
export interface Landmarks {
  readonly toePoint: Point3;
  readonly seatPoint: Point3;
  readonly jointMedial: Point3;
  readonly jointLateral: Point3;
  readonly seatMedial: Point3;
  readonly seatLateral: Point3;
  readonly vampPoint: Point3;
  readonly waistPoint: Point3;
  readonly instepPoint: Point3;
  /** On the back curve, a fifth of the last length up from the seat point. */
  readonly counterPoint: Point3;
  /** Where the forepart's bottom touches the ground. */
  readonly treadPoint: Point3;
}

/** All in mm. Definitions: docs/method/last.md. */
export interface Measures {
  readonly stickLength: number;
  readonly lastLength: number;
  readonly jointGirth: number;
  readonly waistGirth: number;
  readonly instepGirth: number;
  readonly heelGirth: number;
  readonly ballWidth: number;
  readonly seatWidth: number;
  readonly heelHeight: number;
  readonly toeSpring: number;
  readonly featherLength: number;
  readonly featherMedial: number;
  readonly featherLateral: number;
  /** Along the centre ridge from toe point to vamp point. */
  readonly vampPointFromToe: number;
}

/**
 * One last in its own frame (mm): origin below the seat point on the ground, +x to the toe point, +z up as it stands at its own
 * heel pitch with its lowest point on z = 0, +y to the left, so medial is +y on a right last and −y on a left one.
 * The mesh is oriented outward, has no holes above the feather line, and is even enough to measure on.
 */
export interface Last {
  readonly name: string;
  readonly source: "scan" | "measures";
  readonly side: Side;
  readonly mesh: Mesh;
  readonly placement: Placement;
  readonly feather: FeatherLine;
  readonly landmarks: Landmarks;
  /** The landmarks that the maker placed herself; the others were found. */
  readonly placed: readonly (keyof Landmarks)[];
  readonly measures: Measures;
  /** Section with y = 0 from the toe point up over toe, vamp and instep to the comb. */
  readonly centreRidge: SurfaceCurve;
  /** Section with y = 0 from the seat point up the back to the comb. */
  readonly backCurve: SurfaceCurve;
  /** Section with y = 0 along the bottom from the seat point to the toe point. */
  readonly bottomCentre: SurfaceCurve;
  readonly findings: readonly Finding[];
}

/** +1 where medial is +y (right last), −1 on a left one. */
export const medialSign = (side: Side): 1 | -1 => (side === "right" ? 1 : -1);
