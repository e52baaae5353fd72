import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { Sectioner } from "#mesh/section.ts";
import { centreCurves, type CentreCurves } from "./centre-curves.ts";
import { closedArc, pointAtIndex } from "./closed-curve.ts";
import { planLength, tapeGirth } from "./girth.ts";
import { medialSign, type FeatherLine, type Landmarks, type Last, type Measures, type Placement, type Point3, type Side } from "./last.ts";
import { pointOn } from "./surface-curve.ts";
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
  const sides = sidePoints(feather.points, toePoint[0], medialSign(side), 0.15 + 12 * (what.noiseMm ?? 0));
  const curves = centreCurves(cutter, seatPoint, toePoint, what.noiseMm ?? 0);
  const joint = verticalPlane(sides.jointMedial, sides.jointLateral);
  const top = topPoints(curves, joint);
  const halves = featherHalves(feather);
  const girthOn = (s: number): number => tapeGirth(cutter, pointOn(curves.centreRidge, s), ridgeDirection(curves, s));
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
function sidePoints(points: Float64Array, toeX: number, medial: 1 | -1, within: number): SidePoints {
  const joint = (sign: number): Point3 => farthestOut(points, [0.5 * toeX, 0.93 * toeX], sign, within);
  const seat = (sign: number): Point3 => farthestOut(points, [-Infinity, 0.25 * toeX], sign, within);
  return { jointMedial: joint(medial), jointLateral: joint(-medial), seatMedial: seat(medial), seatLateral: seat(-medial) };
}

/**
 * The point of greatest sign · y with x in a range. The line runs nearly along the axis there, so the place along it is taken from
 * the parabola through all points `within` mm of the greatest, not from one of them: on a rough scan that one may lie 5 mm off.
 */
function farthestOut(points: Float64Array, [fromX, toX]: readonly [number, number], sign: number, within: number): Point3 {
  const n = points.length / 3;
  const y = (i: number): number => sign * points[3 * ((i + n) % n) + 1]!;
  const x = (i: number): number => points[3 * ((i + n) % n)]!;
  let best = -1;
  for (let i = 0; i < n; i++) if (x(i) >= fromX && x(i) <= toX && (best < 0 || y(i) > y(best))) best = i;
  if (best < 0) throw new Refusal(finding("not-a-last", { why: "its bottom has no width where the joints should be" }));
  // A parabola takes three points.
  let [first, last] = [best - 1, best + 1];
  while (best - first < n / 8 && y(first - 1) > y(best) - within) first--;
  while (last - best < n / 8 && y(last + 1) > y(best) - within) last++;
  const top = parabolaTop(first - best, last - best, (k) => y(best + k));
  const p = pointAtIndex(points, (best + top + n) % n);
  return [Math.max(fromX, Math.min(toX, p[0])), p[1], p[2]];
}

/** Where the least-squares parabola through (k, value(k)), k = from … to, is greatest; 0 where it has no top in the range. */
function parabolaTop(from: number, to: number, value: (k: number) => number): number {
  const middle = (from + to) / 2;
  const half = Math.max(1, (to - from) / 2);
  // On even steps 1, t and t² − mean(t²) are square to each other, so each factor is one division.
  let tt = 0;
  for (let k = from; k <= to; k++) tt += ((k - middle) / half) ** 2;
  const mean = tt / (to - from + 1);
  let [slope, bend, qq] = [0, 0, 0];
  for (let k = from; k <= to; k++) {
    const t = (k - middle) / half;
    const q = t * t - mean;
    slope += t * value(k);
    bend += q * value(k);
    qq += q * q;
  }
  if (!(bend < 0) || qq === 0) return 0;
  const top = middle - (half * (slope / tt)) / (2 * (bend / qq));
  return Math.max(from, Math.min(to, top));
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
  const at = (s: number): Point3 => pointOn(centreRidge, s);
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
  return unit(sub(pointOn(centreRidge, s + 10), pointOn(centreRidge, s - 10)));
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

