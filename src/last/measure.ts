import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { Sectioner } from "#mesh/section.ts";
import { centreCurves, type CentreCurves } from "./centre-curves.ts";
import { closedArc, pointAtIndex } from "./closed-curve.ts";
import { planLength, tapeGirth } from "./girth.ts";
import { medialSign, type FeatherLine, type Landmarks, type Last, type Measures, type Point3, type Side, type SurfaceCurve } from "./last.ts";
import { pointFindings } from "./nominal-size.ts";
import { onSaidAxis } from "./said-axis.ts";
import { SaidLandmarks } from "./said-landmarks.ts";
import { parabolaTop, sidePoints, type SidePoints } from "./side-points.ts";
import { curveLength, pointOn } from "./surface-curve.ts";
import type { ToMeasure } from "./to-measure.ts";
import { cross, scale, sub, unit } from "./vector.ts";

/**
 * Landmarks, centre curves and measures of a last. Definitions and expected error: docs/method/last.md.
 * @throws Refusal when a landmark does not exist on this shape
 */
export function measureLast(given: ToMeasure): Last {
  const what = onSaidAxis(given);
  const { mesh, feather, side } = what;
  const noiseMm = what.noiseMm ?? 0;
  const said = new SaidLandmarks(what.said);
  const cutter = new Sectioner(mesh);
  const seatPoint = pointAtIndex(feather.points, 0);
  const toePoint = pointAtIndex(feather.points, feather.toeIndex);
  for (const [name, foundAt] of [["seatPoint", 0], ["toePoint", given.feather.toeIndex]] as const) {
    said.onRing(name, feather.points);
    // Before she turned the axis: in the frame as it was found.
    const placed = given.said?.[name];
    if (placed) said.besideFound(name, placed, pointAtIndex(given.feather.points, foundAt));
  }
  const sides = overruled(sidePoints(feather.points, toePoint[0], medialSign(side), 0.15 + 12 * noiseMm), said, feather, side);
  const curves = centreCurves(cutter, seatPoint, toePoint, noiseMm);
  const top = topPoints(curves, sides, said);
  const joint = jointPlane(sides, said.has("vampPoint") ? top.vampPoint : undefined);
  const halves = featherHalves(feather);
  const girthOn = (s: number): number => tapeGirth(cutter, pointOn(curves.centreRidge, s), ridgeDirection(curves, s));
  const { centreRidge, backCurve, bottomCentre } = curves;
  const low = lowPoints(curves, toePoint[0], noiseMm, said);
  const landmarks: Landmarks = { toePoint, seatPoint, ...sides, vampPoint: top.vampPoint, waistPoint: top.waistPoint, instepPoint: top.instepPoint, ...low };
  const measures: Measures = {
    stickLength: planLength(mesh),
    lastLength: curveLength(bottomCentre),
    jointGirth: tapeGirth(cutter, joint.point, joint.normal),
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
  const findings = [...what.findings, ...curves.findings, ...said.findings, ...pointFindings({ feather, landmarks, measures })];
  return { name: what.name, source: what.source, side, mesh, placement: what.placement, feather, landmarks, placed: said.names, measures, centreRidge, backCurve, bottomCentre, findings };
}

/** Joint and seat points as found, but for those that the maker placed. */
function overruled(found: SidePoints, said: SaidLandmarks, { points }: FeatherLine, side: Side): SidePoints {
  const one = (name: keyof SidePoints): Point3 => {
    const at = said.onRing(name, points);
    return at === undefined ? found[name] : pointAtIndex(points, at);
  };
  const sides: SidePoints = { jointMedial: one("jointMedial"), jointLateral: one("jointLateral"), seatMedial: one("seatMedial"), seatLateral: one("seatLateral") };
  for (const pair of [["jointMedial", "jointLateral"], ["seatMedial", "seatLateral"]] as const)
    said.besideFoundPair(pair, [sides[pair[0]], sides[pair[1]]], [found[pair[0]], found[pair[1]]], side);
  return sides;
}

interface Plane {
  readonly point: Point3;
  readonly normal: Point3;
}

/** Upright through both joint points; where the maker has placed the vamp point, through that as well, for there her tape lies. */
function jointPlane({ jointMedial: a, jointLateral: b }: SidePoints, vamp: Point3 | undefined): Plane {
  const n: Point3 = unit(vamp ? cross(sub(b, a), sub(vamp, a)) : [b[1] - a[1], a[0] - b[0], 0]);
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

/** Where a landmark lies on its curve, mm from the start: where the maker placed it, or else where it is found. Far apart, that is said. */
function placedOn(said: SaidLandmarks, name: keyof Landmarks, curve: SurfaceCurve, find: () => number): number {
  const placed = said.onCurve(name, curve);
  if (placed === undefined) return find();
  const found = foundOr(find);
  if (found !== undefined && found <= curveLength(curve)) said.besideFound(name, pointOn(curve, placed), pointOn(curve, found));
  return placed;
}

/** Undefined where it cannot be found: then the maker's own place stands alone. */
function foundOr(find: () => number): number | undefined {
  try {
    return find();
  } catch (error) {
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}

/** Vamp point: ridge on the joint plane. Instep point: a quarter of the last length behind it. Waist point: half way. */
function topPoints({ centreRidge, bottomCentre }: CentreCurves, sides: SidePoints, said: SaidLandmarks): TopPoints {
  const vampAt = placedOn(said, "vampPoint", centreRidge, () => crossing(centreRidge, jointPlane(sides, undefined)));
  const instepAt = placedOn(said, "instepPoint", centreRidge, () => vampAt + curveLength(bottomCentre) / 4);
  const total = curveLength(centreRidge);
  if (instepAt > total && said.has("vampPoint") && !said.has("instepPoint")) throw new Refusal(finding("vamp-point-too-high", { leftMm: total - vampAt, neededMm: instepAt - vampAt }, pointOn(centreRidge, vampAt)));
  if (instepAt > total) throw new Refusal(finding("not-a-last", { why: `its ridge from the toe upward is only ${total.toFixed(0)} mm long and ends before the instep` }));
  const waistAt = placedOn(said, "waistPoint", centreRidge, () => (vampAt + instepAt) / 2);
  const at = (s: number): Point3 => pointOn(centreRidge, s);
  if (waistAt < vampAt || instepAt < waistAt) said.findings.push(finding("landmarks-out-of-order", {}, at(waistAt)));
  return { vampAt, waistAt, instepAt, vampPoint: at(vampAt), waistPoint: at(waistAt), instepPoint: at(instepAt) };
}

/** Counter point: a fifth of the last length up the back. Tread point: where the bottom, under the joints, comes lowest. */
function lowPoints({ backCurve, bottomCentre }: CentreCurves, toeX: number, noiseMm: number, said: SaidLandmarks): Pick<Landmarks, "counterPoint" | "treadPoint"> {
  const counterAt = placedOn(said, "counterPoint", backCurve, () => curveLength(bottomCentre) / 5);
  const treadAt = placedOn(said, "treadPoint", bottomCentre, () => lowestAt(bottomCentre, [0.5 * toeX, 0.93 * toeX], 0.15 + 12 * noiseMm));
  return { counterPoint: pointOn(backCurve, counterAt), treadPoint: pointOn(bottomCentre, treadAt) };
}

/** The place of least z with x in a range, by the parabola through all points `within` mm of the least: the bottom is nearly level there. */
function lowestAt({ points, arc }: CentreCurves["bottomCentre"], [fromX, toX]: readonly [number, number], within: number): number {
  const z = (i: number): number => points[3 * i + 2]!;
  const inRange = (i: number): boolean => points[3 * i]! >= fromX && points[3 * i]! <= toX;
  let best = -1;
  for (let i = 0; i < arc.length; i++) if (inRange(i) && (best < 0 || z(i) < z(best))) best = i;
  if (best < 1 || best > arc.length - 2) throw new Refusal(finding("not-a-last", { why: "its bottom does not reach under the joints" }));
  let [first, last] = [best - 1, best + 1];
  while (first > 0 && inRange(first - 1) && z(first - 1) < z(best) + within) first--;
  while (last < arc.length - 1 && inRange(last + 1) && z(last + 1) < z(best) + within) last++;
  // Points lie at even steps of the curve.
  const top = best + parabolaTop(first - best, last - best, (k) => -z(best + k));
  return arc[0]! + (top * curveLength({ points, arc })) / (arc.length - 1);
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

