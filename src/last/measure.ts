import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { Sectioner } from "#mesh/section.ts";
import { centreCurves, type CentreCurves } from "./centre-curves.ts";
import { pointAlong } from "./centre-section.ts";
import { closedArc, pointAtIndex } from "./closed-curve.ts";
import { planLength, tapeGirth } from "./girth.ts";
import { medialSign, type FeatherLine, type Landmarks, type Last, type Measures, type Placement, type Point3, type Side } from "./last.ts";
import { scale, sub, unit } from "./vector.ts";

/** What is measured: a mesh in the last's frame (mm) and its feather line, which starts at the seat point, medial side first. */
export interface ToMeasure {
  readonly name: string;
  readonly source: Last["source"];
  readonly side: Side;
  readonly mesh: Mesh;
  readonly placement: Placement;
  readonly feather: FeatherLine;
  /** Roughness of the surface, mm; 0 on a made one. */
  readonly noiseMm?: number;
  readonly findings: readonly Finding[];
}

/**
 * Landmarks, centre curves and measures of a last. Definitions and expected error: docs/method/last.md.
 * @throws Refusal when a landmark does not exist on this shape
 */
export function measureLast(what: ToMeasure): Last {
  const { mesh, feather, side } = what;
  const cutter = new Sectioner(mesh);
  const seatPoint = pointAtIndex(feather.points, 0);
  const toePoint = pointAtIndex(feather.points, feather.toeIndex);
  const sides = sidePoints(feather.points, toePoint[0], medialSign(side));
  const curves = centreCurves(cutter, seatPoint, toePoint, what.noiseMm ?? 0);
  const joint = verticalPlane(sides.jointMedial, sides.jointLateral);
  const top = topPoints(curves, joint);
  const halves = featherHalves(feather);
  const girthOn = (s: number): number => tapeGirth(cutter, pointAlong(curves.centreRidge, s), ridgeDirection(curves, s));
  const landmarks: Landmarks = { toePoint, seatPoint, ...sides, vampPoint: top.vampPoint, waistPoint: top.waistPoint, instepPoint: top.instepPoint };
  const measures: Measures = {
    stickLength: planLength(mesh),
    lastLength: curves.bottomCentre.arc[curves.bottomCentre.arc.length - 1]!,
    jointGirth: tapeGirth(cutter, sides.jointMedial, joint.normal),
    waistGirth: girthOn(top.waistAt),
    instepGirth: girthOn(top.instepAt),
    heelGirth: tapeGirth(cutter, seatPoint, heelNormal(seatPoint, top.instepPoint)),
    ballWidth: Math.abs(sides.jointMedial[1] - sides.jointLateral[1]),
    seatWidth: Math.abs(sides.seatMedial[1] - sides.seatLateral[1]),
    heelHeight: seatPoint[2],
    toeSpring: toePoint[2],
    featherLength: halves.medial + halves.lateral,
    featherMedial: halves.medial,
    featherLateral: halves.lateral,
    vampPointFromToe: top.vampAt,
  };
  const { centreRidge, backCurve, bottomCentre } = curves;
  const findings = [...what.findings, ...curves.findings];
  return { name: what.name, source: what.source, side, mesh, placement: what.placement, feather, landmarks, measures, centreRidge, backCurve, bottomCentre, findings };
}

type SidePoints = Pick<Landmarks, "jointMedial" | "jointLateral" | "seatMedial" | "seatLateral">;

/** Feather points farthest from the axis: the joints between 50 and 93 % of the toe point's x, the seat before 25 %. */
function sidePoints(points: Float64Array, toeX: number, medial: 1 | -1): SidePoints {
  return {
    jointMedial: farthestOut(points, 0.5 * toeX, 0.93 * toeX, medial),
    jointLateral: farthestOut(points, 0.5 * toeX, 0.93 * toeX, medial === 1 ? -1 : 1),
    seatMedial: farthestOut(points, -Infinity, 0.25 * toeX, medial),
    seatLateral: farthestOut(points, -Infinity, 0.25 * toeX, medial === 1 ? -1 : 1),
  };
}

/** The point of greatest sign · y with x in a range, between points by the parabola through three. */
function farthestOut(points: Float64Array, fromX: number, toX: number, sign: 1 | -1): Point3 {
  const n = points.length / 3;
  const y = (i: number): number => sign * points[3 * ((i + n) % n) + 1]!;
  let best = -1;
  for (let i = 0; i < n; i++) {
    const x = points[3 * i]!;
    if (x >= fromX && x <= toX && (best < 0 || y(i) > y(best))) best = i;
  }
  if (best < 0) throw new Refusal(finding("not-a-last", { why: "its bottom has no width where the joints should be" }));
  const bend = y(best - 1) - 2 * y(best) + y(best + 1);
  const shift = bend < 0 ? (0.5 * (y(best - 1) - y(best + 1))) / bend : 0;
  const index = best + Math.max(-1, Math.min(1, shift));
  const p = pointAtIndex(points, (index + n) % n);
  return [Math.max(fromX, Math.min(toX, p[0])), p[1], p[2]];
}

interface Plane {
  readonly point: Point3;
  readonly normal: Point3;
}

/** The upright plane through two points, its normal toward the toe. */
function verticalPlane(a: Point3, b: Point3): Plane {
  const n: Point3 = unit([b[1] - a[1], a[0] - b[0], 0]);
  return { point: a, normal: n[0] < 0 ? scale(n, -1) : n };
}

interface TopPoints {
  readonly vampAt: number;
  readonly waistAt: number;
  readonly instepAt: number;
  readonly vampPoint: Point3;
  readonly waistPoint: Point3;
  readonly instepPoint: Point3;
}

/** Vamp point: ridge on the joint plane. Instep point: a quarter of the last length behind it. Waist point: half way. */
function topPoints({ centreRidge, bottomCentre }: CentreCurves, joint: Plane): TopPoints {
  const vampAt = crossing(centreRidge, joint);
  const total = centreRidge.arc[centreRidge.arc.length - 1]!;
  const instepAt = vampAt + bottomCentre.arc[bottomCentre.arc.length - 1]! / 4;
  if (instepAt > total) throw new Refusal(finding("not-a-last", { why: `its ridge from the toe upward is only ${total.toFixed(0)} mm long and ends before the instep` }));
  const waistAt = (vampAt + instepAt) / 2;
  const at = (s: number): Point3 => pointAlong(centreRidge, s);
  return { vampAt, waistAt, instepAt, vampPoint: at(vampAt), waistPoint: at(waistAt), instepPoint: at(instepAt) };
}

/** Running length at which the ridge, coming from the toe, first passes behind a plane. */
function crossing({ points, arc }: CentreCurves["centreRidge"], { point, normal }: Plane): number {
  const side = (i: number): number => normal[0] * (points[3 * i]! - point[0]) + normal[1] * (points[3 * i + 1]! - point[1]) + normal[2] * (points[3 * i + 2]! - point[2]);
  for (let i = 1; i < arc.length; i++) {
    const [a, b] = [side(i - 1), side(i)];
    if (a > 0 && b <= 0) return arc[i - 1]! + ((arc[i]! - arc[i - 1]!) * a) / (a - b);
  }
  throw new Refusal(finding("not-a-last", { why: "its ridge does not pass over the joints" }));
}

/** Direction of the ridge as a tape square to it would feel it: the chord from 10 mm before to 10 mm behind. */
function ridgeDirection({ centreRidge }: CentreCurves, s: number): Point3 {
  return unit(sub(pointAlong(centreRidge, s + 10), pointAlong(centreRidge, s - 10)));
}

/** Normal of the plane through seat and instep point, parallel to y. */
function heelNormal(seat: Point3, instep: Point3): Point3 {
  const d = sub(instep, seat);
  return unit([-d[2], 0, d[0]]);
}

/** Length of the feather line from seat to toe point on each side. */
function featherHalves({ points, toeIndex }: FeatherLine): { medial: number; lateral: number } {
  const arc = closedArc(points);
  const i = Math.floor(toeIndex);
  const medial = arc[i]! + (toeIndex - i) * (arc[i + 1]! - arc[i]!);
  return { medial, lateral: arc[arc.length - 1]! - medial };
}

